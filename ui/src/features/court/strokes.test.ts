// Pencil strokes: one a try, none on another, the first ones told apart.
import { expect, test } from 'vitest';
import { room, ROW, strokes, strokeWords } from './strokes';

test('a made try is longer than a missed one', () => {
  const [made, missed] = strokes([true, false], 0);
  expect((made?.y2 ?? 0) - (made?.y1 ?? 0)).toBeGreaterThan((missed?.y2 ?? 0) - (missed?.y1 ?? 0));
});

test('strokes stand in fives and in the room they are given', () => {
  const all = strokes(Array<boolean>(ROW * 2).fill(true), 0);
  expect((all[5]?.x1 ?? 0) - (all[4]?.x1 ?? 0)).toBeGreaterThan((all[4]?.x1 ?? 0) - (all[3]?.x1 ?? 0));
  const { width, height } = room(all.length);
  expect(Math.max(...all.map((s) => s.x2))).toBeLessThan(width);
  expect(Math.max(...all.map((s) => s.y2))).toBeLessThanOrEqual(height);
});

test('the words count what counts', () => {
  expect(strokeWords([true, false, true, true, false], 3)).toBe('1 made of 2, first 3 not counted');
  expect(strokeWords([], 3)).toBe('0 made of 0');
});
