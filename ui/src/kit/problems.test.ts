// Problems of a refused form: by field, in order, and nothing lost.
import { expect, test } from 'vitest';
import { details, inFormOrder, isTrouble, toTrouble, wordsFor, type Problem } from './problems';

const problems: Problem[] = [
  { field: 'zone', code: 'unknown', words: 'No such time zone.' },
  { field: 'name', code: 'missing', words: 'A name is needed.' },
  { field: 'rows[2].rate', code: 'negative', words: 'A rate cannot be negative.' },
  { field: 'name', code: 'long', words: 'Keep it under 80 letters.' },
];

test('a field is told all of its own problems and no other', () => {
  expect(wordsFor(problems, 'name')).toBe('A name is needed. Keep it under 80 letters.');
  expect(wordsFor(problems, 'rows[2].rate')).toBe('A rate cannot be negative.');
  expect(wordsFor(problems, 'town')).toBeNull();
});

test('problems follow the form, and those of no field there come last', () => {
  expect(inFormOrder(problems, ['name', 'town', 'zone']).map((p) => p.field)).toEqual([
    'name',
    'name',
    'zone',
    'rows[2].rate',
  ]);
});

test('anything thrown that is not in words is a fault', () => {
  expect(isTrouble(new Error('x'))).toBe(false);
  expect(isTrouble(null)).toBe(false);
  expect(toTrouble(new Error('x is undefined'))).toMatchObject({ code: 'fault', words: 'x is undefined' });
  expect(toTrouble('text').words).toBe('text');
  const trouble = { code: 'refused', title: 't', words: 'w', way_out: 'o', problems };
  expect(toTrouble(trouble)).toBe(trouble);
});

test('the details to copy carry the reference and every problem', () => {
  const text = details({
    code: 'storage',
    title: 'T',
    words: 'W',
    way_out: 'O',
    problems: problems.slice(0, 1),
    details: 'r-7',
  });
  expect(text).toBe('T\nW\ncode: storage\ndetails: r-7\nzone (unknown): No such time zone.');
});
