// Which reasons are offered, and what of them is sent.
import { expect, test } from 'vitest';
import { reasonsTyped, usual } from './misses';

test('what was given stands first, and nothing twice', () => {
  expect(usual(['skip'], ['late', 'skip'])).toEqual(['skip', 'late', 'too high', 'too low', 'feet']);
  expect(usual(['a', 'b', 'c', 'd', 'e', 'f', 'g'], ['h'])).toHaveLength(7);
});

test('only what has a number is sent; nonsense goes to the core, which refuses it in words', () => {
  const rows = (late: string) => [
    { reason: 'late', times: late },
    { reason: 'feet', times: '' },
  ];
  expect(reasonsTyped(rows(' 2 '), '', '')).toEqual([{ reason: 'late', times: 2 }]);
  expect(reasonsTyped(rows('x'), 'wind', '1')).toEqual([
    { reason: 'late', times: 0 },
    { reason: 'wind', times: 1 },
  ]);
  expect(reasonsTyped([], '', '3')).toEqual([{ reason: '', times: 3 }]);
});
