// The week: the arrow keys find the next cell with something in it, and days find their week.
import { expect, test } from 'vitest';
import { inTownHref, mondayOf, stepTo, weekHref } from './week';

const filled = [
  [true, false, true],
  [false, false, false],
  [true, true, false],
];

test.each([
  [[0, 0], 'ArrowRight', [0, 2]],
  [[0, 2], 'ArrowLeft', [0, 0]],
  [[0, 0], 'ArrowDown', [2, 0]],
  [[2, 1], 'ArrowUp', null],
  [[0, 2], 'ArrowRight', null],
  [[2, 1], 'ArrowRight', null],
  [[2, 0], 'ArrowUp', [0, 0]],
  [[0, 0], 'Enter', null],
] as const)('from %j by %s', (at, key, to) => {
  expect(stepTo(filled, at, key)).toEqual(to);
});

test('a week begins on Monday, also over the end of a year and of a February', () => {
  expect(mondayOf('2026-03-09')).toBe('2026-03-09');
  expect(mondayOf('2026-03-15')).toBe('2026-03-09');
  expect(mondayOf('2027-01-01')).toBe('2026-12-28');
  expect(mondayOf('2028-03-01')).toBe('2028-02-28');
  expect(weekHref('2026-03-12')).toBe('#/week/2026-03-09');
});

test('who is in town without a lesson leads to the plan while there is something to plan', () => {
  const cell = { visit: 'v', days: { first: '2026-03-09', last: '2026-03-11' }, day: '2026-03-10' };
  expect(inTownHref(cell, '2026-03-10')).toBe('#/plan/2026-03-09/2026-03-11');
  expect(inTownHref(cell, '2026-03-11')).toBe('#/visits/v');
});
