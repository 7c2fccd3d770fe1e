// Effort in the words of its scale.
import { expect, test } from 'vitest';
import { effortWords, efforts, ratedWords, readEffort } from './effort';

// Foster et al. 2001, J Strength Cond Res 15:109, the table of the modified scale.
test('the words of the scale', () => {
  expect(efforts).toHaveLength(11);
  expect([0, 2, 3, 5, 6, 7, 10].map(effortWords)).toEqual([
    '0, rest',
    '2, easy',
    '3, moderate',
    '5, hard',
    '6',
    '7, very hard',
    '10, maximal',
  ]);
});

test('nothing chosen is not asked, 0 is rest', () => {
  expect(readEffort('')).toBeNull();
  expect(readEffort('0')).toBe(0);
});

test('who rated what', () => {
  expect(ratedWords([{ name: 'Ana', effort: null }])).toBe('');
  expect(ratedWords([{ name: 'Ana', effort: 0 }])).toBe('effort 0, rest');
  expect(
    ratedWords([
      { name: 'Ana', effort: 6 },
      { name: 'Ben', effort: null },
      { name: 'Cleo', effort: 5 },
    ]),
  ).toBe('effort Ana 6; Cleo 5, hard');
});
