// How many of what, in words: one, many, and words that do not take an s.
import { expect, test } from 'vitest';
import { counted } from './counted';

test('one and many', () => {
  expect(counted(1, 'day')).toBe('1 day');
  expect(counted(0, 'day')).toBe('0 days');
  expect(counted(2, 'facility', 'facilities')).toBe('2 facilities');
});
