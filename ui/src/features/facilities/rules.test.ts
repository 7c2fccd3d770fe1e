// A facility's rules: what is typed comes back as it was kept, and stands on the page in words.
import { expect, test } from 'vitest';
import { cardWords } from './card';
import { empty, rulesWords, toRules, toTyped } from './rules';

const KEPT = {
  currency: 'EUR',
  books_as: 'guest',
  hours: [
    { weekdays: [1, 2, 3, 4, 5], opens: '07:00', closes: '00:00', first: '', last: '' },
    { weekdays: [], opens: '09:00', closes: '18:00', first: '2027-07-01', last: '2027-08-31' },
  ],
  closures: [
    {
      court: 'c1',
      weekdays: [2],
      starts: '19:00',
      ends: '22:00',
      first: '',
      last: '',
      reason: 'league',
    },
    {
      court: null,
      weekdays: [],
      starts: '',
      ends: '',
      first: '2026-12-25',
      last: '2026-12-25',
      reason: '',
    },
  ],
  rates: [{ who: 'guest', ground: 'indoor', weekdays: [6, 7], starts: '', ends: '', hour: '31.00' }],
  ahead: [{ who: '', ground: '', amount: 7, unit: 'days' as const, opens: '07:30' }],
  release: [
    { ground: '', hours: 24, counted: 'elapsed' as const, later: 'fee' as const, fee: '12.00' },
    { ground: 'outdoor', hours: 2, counted: 'wall' as const, later: 'full' as const, fee: '' },
  ],
  grid: 30,
  shortest: 60,
  longest: 0,
  day_limit: 0,
  week_limit: 0,
  day_bookings: 1,
  apart: true,
  one_by_one: false,
  people: 4,
  booking_fee: '',
  guest_fee: '5.00',
  grace: 10,
  weather_free: false,
  youngest: 0,
  needs: 'eye protection',
  source: 'the notice at the desk',
  source_seen: '2026-11-02',
};

test('rules that are opened and kept again are the same', () => {
  expect(toRules(toTyped(KEPT))).toEqual(KEPT);
});

test('no number is no rule; what is no number is sent to be refused, nothing typed is lost', () => {
  const typed = toTyped({});
  expect(toRules(typed)).toMatchObject({ grid: 0, hours: [], currency: '' });
  typed.grid = 'half an hour';
  typed.people = ' 4 ';
  typed.ahead = [empty.ahead()];
  typed.release = [{ ...empty.release(), hours: '0' }];
  expect(toRules(typed)).toMatchObject({
    grid: -1,
    people: 4,
    ahead: [{ amount: -1, unit: 'days' }],
    release: [{ hours: 0 }],
  });
  expect(typed.grid).toBe('half an hour');
});

test('rules in words, in the order of the form', () => {
  expect(rulesWords(KEPT, new Map([['c1', 'Court 1']])).map((s) => [s.about, s.words])).toEqual([
    ['open', 'Mon to Fri, 07:00 to midnight'],
    ['open', 'every day, 09:00 to 18:00, from Thursday 1 July 2027 to Tuesday 31 August 2027'],
    ['not to be had', 'Court 1, Tue, 19:00 to 22:00, league'],
    ['not to be had', 'on Friday 25 December 2026'],
    ['an hour', '31.00 EUR, for guest, on indoor courts, Sat, Sun'],
    ['to ask for', '7 days ahead, from 07:30'],
    ['to give back', 'until 24 hours before, later 12.00 EUR'],
    ['to give back', 'until 2 hours before by the clock, later the whole price, on outdoor courts'],
    [
      'bookings',
      'every 30 minutes, at least 60 minutes, 1 booking a day, no two in a row, at most 4 people on a court',
    ],
    ['besides', '5.00 EUR a guest, lost when 10 minutes late, eye protection'],
    ['read', 'the notice at the desk, on Monday 2 November 2026'],
  ]);
  expect(rulesWords({}, new Map())).toEqual([]);
});

test('the card says only what is written on it', () => {
  const none = {
    desk: '',
    desk_phone: '',
    desk_email: '',
    entrance: '',
    phone: '',
    defibrillator: '',
    first_aid: '',
    hospital: '',
    seen: '',
  };
  expect(cardWords(none)).toEqual([]);
  expect(cardWords({ ...none, desk: 'Bea', desk_phone: '555 0100', seen: '2026-11-02' })).toEqual([
    { about: 'desk', words: 'Bea, 555 0100' },
    { about: 'looked', words: 'on Monday 2 November 2026' },
  ]);
});
