// Courts that lessons need, in words.
import { expect, test } from 'vitest';
import type { CourtNeeded } from '../../ipc';
import { courtWords, moreWords, toAskNow } from './words';

function court(change: Partial<CourtNeeded>): CourtNeeded {
  return {
    state: 'to_ask',
    lesson: 'l',
    visit: 'v',
    student: 's',
    names: 'Ana',
    booking: null,
    facility: 'f',
    place: 'Harbour Hall',
    court: 'c',
    court_name: 'Court 1',
    day: '2026-03-10',
    starts: '09:00',
    ends: '10:00',
    ask_from: null,
    open: true,
    cost: '18.00 EUR',
    free_until: null,
    words: ['It can be asked for from Tuesday 3 March 2026, 07:00.'],
    against: [],
    ...change,
  };
}

test('a court in words', () => {
  expect(courtWords(court({}))).toBe('Tue 10 Mar, 9:00 – 10:00 · Court 1, Harbour Hall');
  expect(courtWords(court({ court_name: '' }))).toBe('Tue 10 Mar, 9:00 – 10:00 · any court, Harbour Hall');
  expect(moreWords(court({}))).toBe('Ana · 18.00 EUR. It can be asked for from Tuesday 3 March 2026, 07:00.');
});

test('only what can be asked for now is asked for, facility by facility', () => {
  const all = [
    court({ lesson: 'a' }),
    court({ lesson: 'b', open: false }),
    court({ lesson: 'c', state: 'asked' }),
    court({ lesson: 'd', facility: 'g', place: 'Ropewalk' }),
    court({ lesson: 'e' }),
  ];
  expect(toAskNow(all).map((p) => [p.place, p.courts.map((c) => c.lesson)])).toEqual([
    ['Harbour Hall', ['a', 'e']],
    ['Ropewalk', ['d']],
  ]);
});
