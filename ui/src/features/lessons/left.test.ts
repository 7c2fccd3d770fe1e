// The minutes left, whatever the clock of this machine does.
import { expect, test } from 'vitest';
import { begins, leftWords } from './left';

const lesson = {
  day: '2026-11-25',
  starts: '09:30',
  which: 'once' as const,
  minutes: 60,
  zone: 'Europe/Lisbon',
};
// Lisbon is on UTC in November (tz database, Europe/Lisbon).
const at = (time: string) => Date.parse(`2026-11-25T${time}Z`);

test.each([
  ['08:29:00', ''],
  ['08:30:00', 'begins in 60 min'],
  ['09:29:30', 'begins in 1 min'],
  ['09:30:00', '60 min left'],
  ['10:06:00', '24 min left'],
  ['10:29:59', '1 min left'],
  ['10:30:00', 'time is up'],
  ['10:35:10', '5 min over'],
  ['11:31:00', ''],
])('at %s it says “%s”', (time, words) => {
  expect(leftWords(lesson, at(time))).toBe(words);
});

test('the time is on the facility’s clock', () => {
  // Denver is seven hours behind UTC in November (tz database, America/Denver).
  expect(begins({ ...lesson, zone: 'America/Denver' })).toBe(at('16:30:00'));
});

test('the two hours of the night the clocks go back are told apart', () => {
  // Summer time in Lisbon ends on 25 October 2026 at 02:00, which is 01:00 again (tz database).
  const night = { ...lesson, day: '2026-10-25', starts: '01:30' };
  expect(begins({ ...night, which: 'first' })).toBe(Date.parse('2026-10-25T00:30:00Z'));
  expect(begins({ ...night, which: 'second' })).toBe(Date.parse('2026-10-25T01:30:00Z'));
});

test('a zone nobody knows says nothing rather than something wrong', () => {
  expect(leftWords({ ...lesson, zone: 'Nowhere/At_All' }, at('10:00:00'))).toBe('');
});
