// What the field in the head offers for what was typed, and how the arrow keys step through it.
import { expect, test } from 'vitest';
import { offers, stepped } from './offers';

const screens = [{ words: 'People', kind: 'go to', href: '#/people' }];

test('nothing typed offers nothing', () => {
  expect(offers('  ', [], screens)).toEqual([]);
});

test('names come before acts and screens', () => {
  const found = [
    { kind: 'student' as const, id: '1', name: 'Peo Ple', of: '' },
    { kind: 'goal' as const, id: '2', name: 'Lob serve', of: 'Ana' },
  ];
  expect(offers('peo', found, screens)).toEqual([
    { words: 'Peo Ple', kind: 'student', href: '#/people/1' },
    { words: 'Lob serve', kind: 'goal, Ana', href: '#/goals/2' },
    { words: 'People', kind: 'go to', href: '#/people' },
  ]);
  expect(offers('add STUD', [], screens).map((o) => o.href)).toEqual(['#/people/new']);
});

test('steps go round', () => {
  expect([stepped(-1, 1, 3), stepped(-1, -1, 3), stepped(2, 1, 3), stepped(0, -1, 3)]).toEqual([0, 2, 0, 2]);
  expect(stepped(1, 1, 0)).toBe(-1);
});
