// A lesson plan being typed: what is sent, how its minutes add up, and lines that move.
import { expect, test } from 'vitest';
import type { DrillLine, Listed } from '../../ipc';
import {
  alike,
  drillOptions,
  drillWords,
  goalOptions,
  minutesWords,
  newLine,
  toLines,
  toTyped,
} from './lines';

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

test('plans are alike by what they say, not by their keys', () => {
  expect(alike([newLine()], [newLine()])).toBe(true);
  expect(alike([newLine()], [{ ...newLine(), words: 'Serves' }])).toBe(false);
});

test('goals worked on are offered, and one that is over where a line is for it', () => {
  const goal = (id: string, state: string) => ({ goal: { id, title: id }, state }) as Listed;
  const theirs = [{ name: 'Ana', goals: [goal('lob', 'met'), goal('pinch', 'closed')], drills: [] }];
  expect(goalOptions(theirs, [])).toEqual([{ value: 'lob', words: 'lob' }]);
  const both = [...theirs, { name: 'Ben', goals: [goal('drive', 'set_aside')], drills: [] }];
  const lines = [
    { ...newLine(), goal: 'pinch' },
    { ...newLine(), goal: 'drive' },
  ];
  expect(goalOptions(both, lines).map((o) => [o.value, o.group])).toEqual([
    ['lob', 'Ana'],
    ['pinch', 'Ana'],
    ['drive', 'Ben'],
  ]);
});

test('a drill is offered once, the coach’s own first', () => {
  const drill = (id: string, own: boolean) => ({ id, name: id, own }) as DrillLine;
  const drills = [drill('wall', false), drill('mine', true)];
  const one = { name: '', goals: [], drills };
  expect(drillOptions([one, one]).map((o) => o.value)).toEqual(['mine', 'wall']);
});

test('a drill is told in one paragraph', () => {
  const drill = { purpose: 'Depth.', layout: '', steps: ['Fed.', 'From a rally'] } as unknown as DrillLine;
  expect(drillWords(drill)).toBe('Depth. Harder: Fed; From a rally.');
  expect(drillWords({ ...drill, steps: [] })).toBe('Depth.');
  expect(drillWords(undefined)).toBe('');
});
