// Days of the week in words.
import { expect, test } from 'vitest';
import { weekdayWords } from './weekdays';

test.each([
  [[], 'every day'],
  [[1, 2, 3, 4, 5, 6, 7], 'every day'],
  [[1, 2, 3, 4, 5], 'Mon to Fri'],
  [[2, 4], 'Tue, Thu'],
  [[6, 7], 'Sat, Sun'],
  [[1, 3, 4, 5, 7], 'Mon, Wed to Fri, Sun'],
])('%j is %s', (days, words) => {
  expect(weekdayWords(days)).toBe(words);
});
