// Words that are drawn: broken where they must be, never on top of each other.
import { expect, test } from 'vitest';
import { spread, widthOf, wrapped } from './fit';

test('words are broken between words, long ones inside, and what does not fit ends in an ellipsis', () => {
  expect(wrapped('one two three', 45, 2, 10)).toEqual(['one two', 'three']);
  expect(wrapped('x'.repeat(30), 63, 2, 10)).toEqual(['xxxxxxxxxx', 'xxxxxxxx…']);
  expect(wrapped('', 60, 2, 10)).toEqual([]);
  for (const line of wrapped('WWWWWWWWWWWW MMMMMMMMMMMMMM iiiiiiiiiiiiiiiiii', 100, 9, 10)) {
    expect(widthOf(line, 10)).toBeLessThanOrEqual(100);
  }
});

test('an accent stays on its letter where a word is broken', () => {
  const accented = 'e\u0301'.repeat(20);
  const lines = wrapped(accented, 60, 9, 10);
  expect(lines.join('')).toBe(accented);
  for (const line of lines) expect(line.startsWith('e')).toBe(true);
});

test('a script that fills squares is as wide as it is high', () => {
  expect(widthOf('練習', 10)).toBe(20);
  expect(widthOf('Wm', 10)).toBeLessThan(20);
});

const apart = (xs: number[], widths: number[], gap: number) =>
  xs.slice(1).every((x, i) => x - (xs[i] ?? 0) >= ((widths[i] ?? 0) + (widths[i + 1] ?? 0)) / 2 + gap - 1e-9);

test('labels that have room stay where they are', () => {
  expect(
    spread(
      [
        { x: 0, width: 30 },
        { x: 100, width: 30 },
      ],
      6,
    ),
  ).toEqual([0, 100]);
});

test('labels that would meet share the way they are moved', () => {
  expect(
    spread(
      [
        { x: 90, width: 30 },
        { x: 110, width: 30 },
      ],
      6,
    ),
  ).toEqual([82, 118]);
});

test('no two labels meet, wherever they would like to be, and the bounds hold while there is room', () => {
  // A fixed little generator: the same labels in every run.
  let seed = 7;
  const next = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
  for (let round = 0; round < 500; round++) {
    const labels = Array.from({ length: 1 + Math.floor(next() * 9) }, () => ({
      x: 300 + next() * 700,
      width: 20 + next() * 40,
    })).sort((a, b) => a.x - b.x);
    const widths = labels.map((l) => l.width);
    const xs = spread(labels, 6, 290, 1010);
    expect(apart(xs, widths, 6)).toBe(true);
    expect((xs[0] ?? 0) - (widths[0] ?? 0) / 2).toBeGreaterThanOrEqual(290 - 1e-9);
    expect((xs.at(-1) ?? 0) + (widths.at(-1) ?? 0) / 2).toBeLessThanOrEqual(1010 + 1e-9);
  }
});
