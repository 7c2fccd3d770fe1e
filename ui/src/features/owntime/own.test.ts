// The coach's own time as typed, and as it is sent.
import { expect, test } from 'vitest';
import { toBusy, toOwn, toTyped, toTypedBusy } from './own';

const OWN = {
  hours: [{ weekdays: [1, 2], opens: '09:00', closes: '18:00', first: '', last: '' }],
  day_limit: 300,
  week_limit: 1200,
  longest_run: 0,
  meal_starts: '12:30',
  meal_ends: '13:15',
  meal_minutes: 30,
  travel: 20,
  ways: [{ one: 'a', other: 'b', minutes: 35 }],
};

test('a week that is opened and kept again is the same', () => {
  expect(toOwn(toTyped(OWN))).toEqual(OWN);
});

test('what is no number is sent to be refused', () => {
  const typed = toTyped(OWN);
  typed.day_limit = 'all day';
  typed.ways = typed.ways.map((way) => ({ ...way, minutes: '' }));
  expect(toOwn(typed)).toMatchObject({ day_limit: -1, ways: [{ minutes: -1 }] });
});

test('the days on which it does not take place are typed in one line', () => {
  const typed = { ...toTypedBusy(null), what: 'League night', except: '2026-03-10, 2026-03-17' };
  const busy = toBusy(typed);
  expect(busy.except).toEqual(['2026-03-10', '2026-03-17']);
  expect(toTypedBusy(busy)).toEqual(typed);
});
