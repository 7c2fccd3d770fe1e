// Rows put in order by hand: one moves by one, and none moves out.
import { expect, test } from 'vitest';
import { moved } from './order';

test('a row moves by one, none moves out, and what was there stays as it was', () => {
  const rows = [1, 2, 3].map((key) => ({ key }));
  const keys = (key: number, by: number) => moved(rows, key, by).map((row) => row.key);
  expect([keys(3, -1), keys(1, -1), keys(1, 1), keys(3, 1), keys(9, 1)]).toEqual([
    [1, 3, 2],
    [1, 2, 3],
    [2, 1, 3],
    [1, 2, 3],
    [1, 2, 3],
  ]);
  expect(rows.map((row) => row.key)).toEqual([1, 2, 3]);
});
