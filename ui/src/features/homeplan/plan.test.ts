// A plan goes into the editor and out again unchanged; numbers are read as people type them.
import { expect, test } from 'vitest';
import type { HomePlan, ProposedLine } from '../../ipc';
import { open, proposed, readCount, toInput, toTyped } from './plan';

const plan: HomePlan = {
  id: 'p',
  student: 's',
  visit: 'v',
  when: '2 – 4 March 2026',
  warm_up: 'Rope',
  note: 'Rest on Sunday.',
  lines: [
    {
      id: 'l',
      goal: 'g',
      title: 'Lob serve',
      what: 'Lob',
      amount: 20,
      unit: 'minutes',
      a_week: 3,
      words: 'Lob: 20 minutes, three times a week',
      told: 'twice',
      told_on: '2026-05-01',
    },
  ],
};
const lob: ProposedLine = {
  goal: 'g',
  title: 'Lob serve',
  what: 'Lob serve',
  amount: 10,
  unit: 'tries',
  a_week: 3,
  why: '',
};

test('a plan comes back as it was, each line as the line it was', () => {
  expect(toInput('v', toTyped(plan, ''))).toEqual({
    visit: 'v',
    warm_up: 'Rope',
    note: 'Rest on Sunday.',
    lines: [{ line: 'l', goal: 'g', what: 'Lob', amount: 20, unit: 'minutes', a_week: 3 }],
  });
});

test('a new plan begins with the standing warm-up', () => {
  expect(toTyped(null, 'Rope')).toEqual({ warm_up: 'Rope', note: '', lines: [] });
});

test('numbers are read as they are typed', () => {
  for (const [typed, n] of [
    ['20', 20],
    [' 7 ', 7],
    ['10,000', 10_000],
    ['10 000', 10_000],
    ['10.000', 10_000],
    ['1,000,000', 1_000_000],
    ['2.5', 0],
    ['a few', 0],
    ['', 0],
    ['-3', 0],
  ] as const) {
    expect(readCount(typed), typed).toBe(n);
  }
});

test('a goal is proposed until a line works for it', () => {
  expect(open([lob], [])).toEqual([lob]);
  expect(open([lob], [proposed(lob)])).toEqual([]);
  expect(proposed(lob)).toMatchObject({ what: 'Lob serve', amount: '10', a_week: '3', line: null });
});
