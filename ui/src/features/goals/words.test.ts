// Numbers of goals in words.
import { expect, test } from 'vitest';
import { changeWords, percent, rangeWords } from './words';

test('a chance that is not quite none or all is not told as none or all', () => {
  expect(percent(0)).toBe('0 %');
  expect(percent(0.004)).toBe('under 1 %');
  expect(percent(0.678)).toBe('68 %');
  expect(percent(0.996)).toBe('over 99 %');
  expect(percent(1)).toBe('100 %');
});

test('a range is told as a rough one', () => {
  expect(rangeWords({ low: 0.4902, high: 0.9433 })).toBe('roughly 49 to 94 %');
});

test('a change names what it is measured from, and a fall has a minus', () => {
  const since = {
    before: { made: 8, tries: 10 },
    visit: 'v',
    day: '2026-03-03',
    change: -0.4,
    low: -0.68,
    high: 0.02,
    word: 'leaning down' as const,
  };
  expect(changeWords(since)).toBe(
    'Change since 8 of 10 on 3 March 2026: −40 points, roughly −68 to 2; leaning down.',
  );
});
