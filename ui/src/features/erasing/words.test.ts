// Where mentions lead, and what is said after an erasing.
import { describe, expect, test } from 'vitest';
import { addressOf, doneWords, nameOf, papersWords } from './words';

describe('erasing in words', () => {
  test('a row leads to its screen, what has none leads nowhere', () => {
    expect(addressOf({ to: 'lesson', id: '7' })).toBe('#/lessons/7');
    expect(addressOf({ to: 'facility', id: '7' })).toBe('#/places/7');
    expect(addressOf({ to: 'setting', id: '7' })).toBeUndefined();
    expect(addressOf(null)).toBeUndefined();
  });

  test('a file is named without its folders, on every system', () => {
    expect(nameOf('/a/b/Season.carryover')).toBe('Season.carryover');
    expect(nameOf('C:\\a\\Season.carryover')).toBe('Season.carryover');
    expect(nameOf('Season')).toBe('Season');
  });

  test('what is left to do stands after what was done', () => {
    expect(doneWords('It is erased.', [])).toBe('It is erased.');
    expect(doneWords('It is erased.', ['Look there.'])).toBe('It is erased. Look there.');
    expect(papersWords([])).toBe('');
    expect(papersWords(['a'])).toBe(
      '1 document with the name lies on this machine. Delete what you do not need.',
    );
    expect(papersWords(['a', 'b'])).toMatch(/^2 documents with the name lie/);
  });
});
