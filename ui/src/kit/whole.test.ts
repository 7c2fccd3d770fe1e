// Whole numbers as they are typed.
import { expect, test } from 'vitest';
import { readWhole, typedWhole } from './whole';

test.each([
  ['', 0],
  [' 30 ', 30],
  ['0', 0],
  ['1.5', -1],
  ['half', -1],
  ['-2', -1],
  ['1234567', -1],
])('“%s” is %s', (typed, number) => {
  expect(readWhole(typed)).toBe(number);
});

test('an empty field can be a number that is missing, and none is left empty', () => {
  expect(readWhole(' ', -1)).toBe(-1);
  expect([typedWhole(0), typedWhole(undefined), typedWhole(45)]).toEqual(['', '', '45']);
});
