// Levels: the newest of each skill, their words, and what is read of what was typed.
import { expect, test } from 'vitest';
import type { Assessment, Level } from '../../ipc';
import { chosen, levelWords, newest, number, seconds } from './levels';

const level = (skill: string, of: number, before: Level['before'] = null) =>
  ({ skill, level: of, before }) as Level;
const assessment = (day: string, sport: string, ...levels: Level[]) =>
  ({ id: `of ${day}`, day, sport, levels }) as Assessment;

test('the newest level of each skill of a sport counts', () => {
  const found = newest(
    [
      assessment('2026-04-01', 'squash', level('lob', 4), level('nick', 1)),
      assessment('2026-03-01', 'padel', level('lob', 3)),
      assessment('2026-01-01', 'padel', level('lob', 1), level('drive', 2)),
    ],
    'padel',
  );
  expect(found.map((s) => [s.level.skill, s.level.level, s.day])).toEqual([
    ['lob', 3, '2026-03-01'],
    ['drive', 2, '2026-01-01'],
  ]);
});

test('a level says how it was before', () => {
  expect(levelWords(level('lob', 3))).toBe('3');
  expect(levelWords(level('lob', 3, [2, '2026-01-10']))).toMatch(/^3, before 2 on 10 January/);
  expect(levelWords(level('lob', 3, [3, '2026-01-10']))).toMatch(/^3, as on 10 January/);
});

test('only what was chosen is sent', () => {
  expect(chosen({ lob: '3', drive: '', wall: '0' })).toEqual([
    { skill: 'lob', level: 3 },
    { skill: 'wall', level: 0 },
  ]);
});

test('numbers and times are read, nonsense is left to be refused', () => {
  expect([number(' 12 '), number('x'), number(undefined), number('-3')]).toEqual([12, -1, -1, -1]);
  expect([seconds('3:45'), seconds('24'), seconds('3:75'), seconds('')]).toEqual([225, 24, -1, -1]);
});
