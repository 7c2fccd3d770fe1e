// Times as they are typed, and what is refused.
import { expect, test } from 'vitest';
import { lengthWords, readTime, timeSpan, timeWords } from './times';

test.each([
  ['9', '09:00'],
  ['09', '09:00'],
  ['930', '09:30'],
  ['0930', '09:30'],
  ['9:30', '09:30'],
  ['09:30', '09:30'],
  ['9.30', '09:30'],
  ['9 30', '09:30'],
  [' 17:05 ', '17:05'],
  ['0', '00:00'],
  ['23:59', '23:59'],
  ['2359', '23:59'],
])('%s is read as %s', (typed, time) => {
  expect(readTime(typed)).toBe(time);
});

test.each(['', '24', '24:00', '9:3', '960', '9:60', '12345', 'nine', '9:30:00', '-9', '9h'])(
  '%s is no time of day',
  (typed) => {
    expect(readTime(typed)).toBeNull();
  },
);

test('times in words', () => {
  expect(timeWords('09:30')).toBe('9:30');
  expect(timeWords('00:05')).toBe('0:05');
  expect(timeWords('14:30')).toBe('14:30');
  expect(timeSpan('09:30', '10:30')).toBe('9:30 – 10:30');
});

test('lengths in words', () => {
  expect(lengthWords(45)).toBe('45 min');
  expect(lengthWords(60)).toBe('1 h');
  expect(lengthWords(90)).toBe('1 h 30 min');
  expect(lengthWords(0)).toBe('0 min');
});
