// The words beside the count.
import { expect, test } from 'vitest';
import { hint } from './hint';

const block = (counted: number, uncounted = 0) => ({
  uncounted,
  tries: Array<boolean>(counted + uncounted).fill(true),
  count: { tries: counted },
});

test.each([
  [0, 10, ''],
  [5, 10, ''],
  [10, 10, 'all 10 tried: end the block'],
  [12, 10, 'all 10 tried: end the block'],
  [9, 20, ''],
  [10, 20, '10 of 20 tried: a pause'],
  [11, 20, ''],
  [20, 20, 'all 20 tried: end the block'],
])('after %i counted tries of %i', (counted, of, words) => {
  expect(hint(block(counted), of)).toBe(words);
});

test('a retest says throughout that its first tries are not counted', () => {
  expect(hint(block(0, 3), 10)).toBe('first 3 not counted');
  expect(hint(block(10, 3), 10)).toBe('first 3 not counted · all 10 tried: end the block');
});
