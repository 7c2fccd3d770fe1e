// Hours go into the field and out again unchanged.
import { expect, test } from 'vitest';
import { hoursTyped, readHours } from './hours';

test('hours are read as people write them', () => {
  for (const [typed, minutes] of [
    ['4', 240],
    ['4.5', 270],
    ['4,5', 270],
    ['4:30', 270],
    ['4 h', 240],
    ['1 hour', 60],
    ['90 min', 90],
    ['0', 0],
    ['0.25', 15],
  ] as const) {
    expect(readHours(typed), typed).toBe(minutes);
  }
});

test('nothing typed is not known; what cannot be read is left for the core to refuse', () => {
  expect(readHours(' ')).toBeNull();
  for (const typed of ['some', '-3', '4:75', '1e3']) expect(readHours(typed), typed).toBe(-1);
});

test('what stands in the field is read as it was', () => {
  for (const minutes of [0, 45, 60, 210, 250, 10080]) expect(readHours(hoursTyped(minutes))).toBe(minutes);
  expect(hoursTyped(null)).toBe('');
});
