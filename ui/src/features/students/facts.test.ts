// Of each kind the newest stands first, the others on request.
import { expect, test } from 'vitest';
import type { Fact } from '../../ipc';
import { newest } from './facts';

const fact = (id: string, kind: Fact['kind']): Fact => ({
  id,
  student: 's',
  kind,
  day: '2026-03-01',
  words: id,
});

test('one of each kind, the first of its kind', () => {
  const facts = [
    fact('new racquet', 'equipment'),
    fact('old racquet', 'equipment'),
    fact('B', 'level'),
    fact('school', 'history'),
  ];
  expect(newest(facts, false).map((f) => f.id)).toEqual(['new racquet', 'B', 'school']);
  expect(newest(facts, true)).toHaveLength(4);
  expect(newest([], false)).toEqual([]);
});
