// Date words, with the edges: month and year ends, leap days, one day, and text that is no date.
import { describe, expect, test } from 'vitest';
import {
  addDays,
  addMonths,
  age,
  away,
  dayAndMonth,
  daysBetween,
  daysIn,
  late,
  longDay,
  monthAndYear,
  monthMark,
  readDate,
  readTypedDate,
  shortDay,
  span,
  weekday,
} from './dates';

test('only a real day written in full is a date', () => {
  expect(readDate('2026-03-12')?.toString()).toBe('2026-03-12');
  expect(readDate('2028-02-29')?.toString()).toBe('2028-02-29');
  for (const text of [
    '',
    '2026-02-29',
    '2026-02-31',
    '2026-13-01',
    '2026-3-12',
    '12 March',
    '2026-03-12T10:00',
  ])
    expect(readDate(text), text).toBeNull();
});

describe('a date as it is typed', () => {
  test.each([
    '12.3.2026',
    '12/3/2026',
    '12/03/2026',
    '12-3-2026',
    '12 3 2026',
    '12. 3. 2026',
    '12032026',
    '12 March 2026',
    '12 mar 2026',
    '12th March, 2026',
    '12mar2026',
    'March 12, 2026',
    'mar 12 2026',
    '2026-03-12',
    '2026/3/12',
    ' 12.3.2026 ',
  ])('%s', (typed) => {
    expect(readTypedDate(typed)).toBe('2026-03-12');
  });
  test('is read in the order in which its writer puts the parts', () => {
    expect(readTypedDate('3/12/2026')).toBe('2026-12-03');
    expect(readTypedDate('3/12/2026', 'month first')).toBe('2026-03-12');
    expect(readTypedDate('03122026', 'month first')).toBe('2026-03-12');
    expect(readTypedDate('12 March 2026', 'month first')).toBe('2026-03-12');
    expect(readTypedDate('2026-03-12', 'month first')).toBe('2026-03-12');
  });
  test.each([
    '',
    '12',
    '12.3.',
    '12.3.26',
    '31.4.2026',
    '29.2.2026',
    '0.1.2026',
    '12.13.2026',
    '12 ma 2026',
    '20260312',
    'soon',
  ])('%s is no date', (typed) => {
    expect(readTypedDate(typed)).toBeNull();
  });
  test('without a year it is the first such day from a given one on, and nothing without one', () => {
    expect(readTypedDate('12.3', 'day first', '2026-03-12')).toBe('2026-03-12');
    expect(readTypedDate('11 March', 'day first', '2026-03-12')).toBe('2027-03-11');
    expect(readTypedDate('29 feb', 'day first', '2026-03-12')).toBe('2028-02-29');
    expect(readTypedDate('29 feb', 'day first', '2096-03-01')).toBe('2104-02-29');
    expect(readTypedDate('30 feb', 'day first', '2026-03-12')).toBeNull();
    expect(readTypedDate('12.3')).toBeNull();
  });
  test('what the words say is read as the same day', () => {
    for (const date of ['2026-03-12', '2028-02-29', '1964-05-02', '2026-12-31'])
      expect(readTypedDate(dayAndMonth(date))).toBe(date);
  });
});

test('the day of the week', () => {
  // RFC 5322, appendix A.1.1: "Date: Fri, 21 Nov 1997". The others: Python's datetime.
  expect(weekday('1997-11-21')).toBe('Friday');
  expect(weekday('2000-01-01')).toBe('Saturday');
  expect(weekday('2026-03-12')).toBe('Thursday');
  expect(weekday('2028-02-29')).toBe('Tuesday');
  expect(weekday('1899-12-31')).toBe('Sunday');
});

test('a day in words carries its year only when it is another year', () => {
  expect(longDay('2026-03-12', '2026-01-01')).toBe('Thursday 12 March');
  expect(longDay('2027-03-12', '2026-12-31')).toBe('Friday 12 March 2027');
  expect(longDay('2026-03-12')).toBe('Thursday 12 March 2026');
  expect(dayAndMonth('2026-06-01', '2026-03-12')).toBe('1 June');
  expect(shortDay('2026-03-12')).toBe('Thu 12 Mar');
  expect(monthMark('2025-11-25')).toBe('Nov 25');
  expect(monthMark('2009-06-01')).toBe('Jun 09');
  expect(monthAndYear('2024-06-30')).toBe('June 2024');
});

describe('a run of days', () => {
  test.each([
    ['2026-03-11', '2026-03-14', '11 – 14 March'],
    ['2026-02-28', '2026-03-03', '28 February – 3 March'],
    ['2026-12-30', '2027-01-02', '30 December 2026 – 2 January 2027'],
    ['2026-03-12', '2026-03-12', '12 March'],
    ['2027-03-11', '2027-03-14', '11 – 14 March 2027'],
    ['2025-02-28', '2025-03-03', '28 February – 3 March 2025'],
  ])('%s to %s', (from, to, words) => {
    expect(span(from, to, '2026-03-12')).toBe(words);
  });
  test('cannot end before it starts', () => {
    expect(() => span('2026-03-14', '2026-03-11')).toThrow(RangeError);
  });
  test('counts both ends', () => {
    expect(daysIn('2026-03-11', '2026-03-14')).toBe(4);
    expect(daysIn('2028-02-28', '2028-03-01')).toBe(3);
  });
});

describe('how far away', () => {
  test.each([
    ['2026-03-12', 'today'],
    ['2026-03-13', 'tomorrow'],
    ['2026-03-11', 'yesterday'],
    ['2026-03-15', 'in 3 days'],
    ['2026-03-25', 'in 13 days'],
    ['2026-03-26', 'in 2 weeks'],
    ['2026-01-08', '9 weeks ago'],
    ['2026-05-21', 'in 2 months'],
    ['2026-09-11', 'in 5 months'],
    ['2026-09-12', 'in 6 months'],
    ['2024-06-12', '21 months ago'],
    ['2024-03-12', '2 years ago'],
  ])('%s', (day, words) => {
    expect(away(day, '2026-03-12')).toBe(words);
  });
});

test('lateness begins the day after', () => {
  expect(late('2026-03-12', '2026-03-12')).toBeNull();
  expect(late('2026-03-13', '2026-03-12')).toBeNull();
  expect(late('2026-03-11', '2026-03-12')).toBe('1 day late');
  expect(late('2026-02-27', '2026-03-02')).toBe('3 days late');
});

test('days are added over month, year and leap day', () => {
  expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
  expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
  // Six months from the end of August end with February, as civil calendars count.
  expect(addMonths('2026-08-31', 6)).toBe('2027-02-28');
  expect(addDays('2027-01-01', -1)).toBe('2026-12-31');
  expect(daysBetween('2026-12-31', '2027-01-02')).toBe(2);
  expect(daysBetween('2027-01-02', '2026-12-31')).toBe(-2);
});

test('age turns on the birthday', () => {
  expect(age('2010-03-12', '2028-03-11')).toBe(17);
  expect(age('2010-03-12', '2028-03-12')).toBe(18);
  // Born on a leap day: in a common year the year counts from 1 March here. Common practice, laws differ.
  expect(age('2008-02-29', '2026-02-28')).toBe(17);
  expect(age('2008-02-29', '2026-03-01')).toBe(18);
});
