// Spans that are offered, across ends of months and years.
import { expect, test } from 'vitest';
import { monthsBack, seenHref, seenWords, spans } from './spans';

test('a span of months begins on the day after the same day', () => {
  expect(monthsBack('2026-07-10', 12)).toBe('2025-07-11');
  expect(monthsBack('2026-02-10', 3)).toBe('2025-11-11');
  expect(monthsBack('2026-05-31', 3), 'the end of a shorter month').toBe('2026-03-01');
  expect(monthsBack('2028-02-29', 12)).toBe('2027-03-01');
  expect(monthsBack('2026-12-31', 12)).toBe('2026-01-01');
});

test('four spans are offered', () => {
  expect(spans('2026-07-10').map((s) => `${s.words}: ${s.from} ${s.to}`)).toEqual([
    'Twelve months: 2025-07-11 2026-07-10',
    'Three months: 2026-04-11 2026-07-10',
    '2026: 2026-01-01 2026-07-10',
    '2025: 2025-01-01 2025-12-31',
  ]);
  expect(spans('')).toEqual([]);
});

test('what was seen leads to the visit, else to the student', () => {
  expect(seenHref({ visit: 'v', student: 's' })).toBe('#/visits/v');
  expect(seenHref({ visit: null, student: 's' })).toBe('#/people/s');
  expect(seenWords({ times: 1, students: 1, name: 'Ana' })).toBe('once, at Ana');
  expect(seenWords({ times: 5, students: 3, name: 'Ana' })).toBe('5 times, at 3 students, last at Ana');
});
