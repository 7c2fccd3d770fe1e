// A lesson plan being typed: what is sent, how its minutes add up, and lines that move.
import { expect, test } from 'vitest';
import { minutesWords, moved, newLine, toLines, toTyped } from './lines';

test('what was kept comes back as it was', () => {
  const lines = [{ minutes: 5, drill: '', goal: 'g', words: 'Retest' }];
  expect(toLines(toTyped(lines))).toEqual(lines);
  expect(toLines([{ ...newLine(), minutes: 'x', goal: '' }])[0]).toMatchObject({ minutes: 0, goal: null });
});

test('the minutes say how they stand to the lesson’s', () => {
  const of = (...minutes: string[]) => minutes.map((m) => ({ ...newLine(), minutes: m }));
  expect(minutesWords(of('20', '25'), 60)).toBe('45 of 60 minutes planned');
  expect(minutesWords(of('40', '25'), 60)).toBe('65 of 60 minutes planned, 5 too many');
  expect(minutesWords([], 60)).toBe('0 of 60 minutes planned');
});

test('a line moves by one, and none moves out', () => {
  const lines = [1, 2, 3].map((key) => ({ key }));
  const keys = (key: number, by: number) => moved(lines, key, by).map((l) => l.key);
  expect([keys(3, -1), keys(1, -1), keys(1, 1), keys(9, 1)]).toEqual([
    [1, 3, 2],
    [1, 2, 3],
    [2, 1, 3],
    [1, 2, 3],
  ]);
});
