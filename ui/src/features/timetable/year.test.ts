// The year: figures in words, and their addresses.
import { expect, test } from 'vitest';
import {
  countedHref,
  countedWhat,
  kindsOf,
  lessonFigures,
  MONTH_HEADS,
  monthWords,
  visitFigures,
  wholeIn,
} from './year';

const figures = { held: 2, agreed: 0, expected: 1, given: 4, to_come: 3, missed: 0 };

test('only what there is stands in a cell, each kind in its word', () => {
  expect(visitFigures(figures).map((f) => f.words)).toEqual(['2 held', '1 expected']);
  expect(lessonFigures(figures)).toEqual([
    { what: 'given', words: '4 given' },
    { what: 'to_come', words: '3 to come' },
  ]);
  expect(visitFigures({ ...figures, held: 0, expected: 0 })).toEqual([]);
});

test('a row stands where there is something to count', () => {
  expect(kindsOf(figures).map((k) => k.words)).toEqual(['visits', 'lessons']);
  expect(kindsOf({ ...figures, given: 0, to_come: 0 }).map((k) => k.words)).toEqual(['visits']);
});

test('a figure leads to what it counts', () => {
  expect(countedHref(2026, 'given', 3, 'ana')).toBe('#/year/2026/3/ana/given');
  expect(countedHref(2026, 'to_come')).toBe('#/year/2026/all/all/to_come');
  expect([countedWhat('given'), countedWhat('toString'), countedWhat('lots')]).toEqual(['given', null, null]);
  expect([wholeIn('2026'), wholeIn('all'), wholeIn('20x6'), wholeIn('')]).toEqual([2026, null, null, null]);
});

test('months have their names', () => {
  expect(MONTH_HEADS[0]).toBe('Jan');
  expect(MONTH_HEADS).toHaveLength(12);
  expect(monthWords(2028, 2)).toBe('February 2028');
});
