// A wish as typed, and as it is sent.
import { expect, test } from 'vitest';
import { emptyShared, toTyped, toWish } from './wish';

const WISH = {
  lessons: 5,
  minutes: 90,
  per_day: 2,
  rest: 60,
  arrives: '14:00',
  leaves: '',
  earliest: '09:00',
  latest: '18:00',
  best_from: '',
  best_to: '',
  court: null,
  weight: 2,
  note: 'late flight',
  shared: [
    { lessons: 2, with: ['visit of Ben'] },
    { lessons: 1, with: ['visit of Ben', 'visit of Cleo'] },
  ],
};

test('a wish that is opened and written down again is the same', () => {
  expect(toWish(toTyped(WISH))).toEqual(WISH);
});

test('a new wish is an hour once a day; what is no number is sent to be refused', () => {
  const typed = toTyped(null);
  expect(toWish(typed)).toMatchObject({ lessons: 0, minutes: 60, per_day: 1, rest: 0, weight: 1 });
  expect(toWish({ ...typed, lessons: 'five', rest: '1.5' })).toMatchObject({ lessons: -1, rest: -1 });
  const row = { ...emptyShared(), lessons: '', with: { a: true, b: false } };
  expect(toWish({ ...typed, shared: [row] }).shared).toEqual([{ lessons: -1, with: ['a'] }]);
});
