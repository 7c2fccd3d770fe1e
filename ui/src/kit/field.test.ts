// What a control is described by.
import { expect, test } from 'vitest';
import { describedBy } from './field.svelte';

test('a control is described by what there is, the hint first', () => {
  expect(describedBy('f', 'Hint.', 'Wrong.')).toBe('f-hint f-problem');
  expect(describedBy('f', undefined, 'Wrong.')).toBe('f-problem');
  expect(describedBy('f', 'Hint.', null)).toBe('f-hint');
  expect(describedBy('f', '', null)).toBeUndefined();
});
