// The keys of goals on court: no key belongs to two touches.
import { expect, test } from 'vitest';
import { secondKeys } from './keys';

test('figures for the tries with the second fact, letters for those without', () => {
  expect(secondKeys(1, 0)).toEqual(['1', '2']);
  expect(secondKeys(1, 1)).toEqual(['q', 'w']);
  expect(secondKeys(5, 1)).toEqual(['z', 'x']);
});

test('no key is given twice, and none is one of the court’s own', () => {
  const all = [1, 3, 5, 7].flatMap((first) => [...secondKeys(first, 0), ...secondKeys(first, 1)]);
  expect(new Set(all).size).toBe(all.length);
  for (const own of ['u', 't', 'n', 's']) expect(all).not.toContain(own);
});
