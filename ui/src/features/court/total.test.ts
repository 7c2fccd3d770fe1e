// Totals as they are typed.
import { expect, test } from 'vitest';
import { readTotal } from './total';

test.each([
  ['7 of 10', 7, 10],
  ['7/10', 7, 10],
  [' 7 10 ', 7, 10],
  ['0 out of 5', 0, 5],
  ['7Of10', 7, 10],
])('%s', (typed, made, tries) => {
  expect(readTotal(typed)).toEqual({ made, tries });
});

test.each(['', '7', '80%', 'seven of ten', '7 of', '-1/10', '7.5/10'])('%s is none', (typed) => {
  expect(readTotal(typed)).toBeNull();
});
