// Minutes as they are typed.
import { expect, test } from 'vitest';
import { readMinutes } from './minutes';

test.each([
  ['60', 60],
  [' 45 min', 45],
  ['90 minutes', 90],
  ['0', 0],
])('%s', (typed, minutes) => {
  expect(readMinutes(typed)).toBe(minutes);
});

test.each(['', 'an hour', '-5', '7.5', '1:30', '12345'])('%s is none', (typed) => {
  expect(readMinutes(typed)).toBeNull();
});
