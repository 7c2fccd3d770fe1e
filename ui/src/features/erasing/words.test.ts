// Where mentions lead, and what is said after an erasing.
import { describe, expect, test } from 'vitest';
import { addressOf, doneWords, nameOf, overAt, overWords, papersWords, untilWords } from './words';

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

  test('what is over says whose it is, until when it was kept, and where it is looked at', () => {
    const due = {
      kept: 'health',
      student: '7',
      incident: null,
      name: 'Ana Reis',
      until: '2027-03-12',
      why: 'Kept for 12 months.',
    } as const;
    expect(overWords(due)).toBe('Health answers: Ana Reis');
    expect(untilWords(due)).toBe('Health answers: until 12 March 2027. Kept for 12 months.');
    expect(overAt(due)).toBe('#/people/7/record');
    expect(overAt({ ...due, kept: 'report', incident: '9' })).toBe('#/incidents/9');
    expect(overAt({ ...due, kept: 'accounts', student: null })).toBe('#/coach');
  });
});
