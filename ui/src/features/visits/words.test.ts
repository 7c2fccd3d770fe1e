// Months as runs of days.
import { expect, test } from 'vitest';
import { dayToPlan, daysOfMonth, monthsFrom } from './words';

test('a month has its own number of days', () => {
  expect(daysOfMonth('2028-02')).toEqual({ from: '2028-02-01', to: '2028-02-29' });
  expect(daysOfMonth('2026-12')).toEqual({ from: '2026-12-01', to: '2026-12-31' });
  expect(daysOfMonth('2026-13')).toBeNull();
});

test('months go on over the year', () => {
  expect(monthsFrom('2026-11-25', 3)).toEqual(['2026-11', '2026-12', '2027-01']);
});

test.each([
  ['2026-03-10', '2026-03-11'],
  ['2026-03-11', '2026-03-11'],
  ['2026-03-15', '2026-03-15'],
  ['2026-03-16', '2026-03-11'],
])('on %s a lesson is planned for %s', (today, day) => {
  expect(dayToPlan({ days: { first: '2026-03-11', last: '2026-03-15' } }, today)).toBe(day);
});

test('a visit without days has no day to plan', () => {
  expect(dayToPlan({ days: null }, '2026-03-11')).toBe('');
});
