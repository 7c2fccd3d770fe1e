// The words of the week and the trip.
import { expect, test } from 'vitest';
import {
  hoursWords,
  lessonState,
  lessonTime,
  lessonWhere,
  takenWords,
  teachingWords,
  wayWords,
  zoneWords,
} from './words';

const lesson = { starts: '09:00', ends: '10:00', which: 'once', zone: 'America/New_York' } as const;

test('a time names its zone only where there are several', () => {
  expect(lessonTime(lesson, ['America/New_York'])).toBe('9:00 – 10:00');
  expect(lessonTime(lesson, ['America/New_York', 'Europe/Lisbon'])).toBe('9:00 – 10:00, New York time');
  expect(lessonTime({ ...lesson, which: 'second' }, [])).toBe(
    '9:00 – 10:00 (the second time the clock shows it)',
  );
  expect(zoneWords('UTC')).toBe('UTC time');
  expect(hoursWords({ from: '20:00', to: '00:00' })).toBe('20:00 – midnight');
});

test('a lesson says where it is and how it stands', () => {
  expect(lessonWhere({ minutes: 90, court_name: '', place: 'Hall' })).toBe('1 h 30 min · Hall');
  expect(lessonWhere({ minutes: 60, court_name: 'Court 1', place: 'Hall' })).toBe('1 h · Court 1, Hall');
  const state = (
    state: Parameters<typeof lessonState>[0]['state'],
    offer: 'offered' | 'agreed' | null,
    off = false,
  ) => lessonState({ state, offer, visit_off: off });
  expect(state('planned', null)).toBe('to come');
  expect(state('planned', 'offered')).toBe('to come, offered, no answer yet');
  expect(state('planned', 'agreed', true)).toBe('to come, agreed, its visit was called off');
  expect(state('given', 'offered', true)).toBe('given');
  expect(state('called_off', 'offered')).toBe('called off');
});

test('the coach’s day', () => {
  expect(takenWords({ what: 'Dentist', from: null, to: null })).toBe('Dentist, all day');
  expect(takenWords({ what: 'League', from: '18:00', to: '22:00' })).toBe('League, 18:00 – 22:00');
  const way = { from: 'A', to: 'B', minutes: 45, between: 30 };
  expect(wayWords(way)).toEqual({ words: 'A to B: 45 min, but only 30 min between', late: true });
  expect(wayWords({ ...way, between: 45 })).toEqual({ words: 'A to B: 45 min, 45 min between', late: false });
  expect(wayWords({ ...way, minutes: null })).toEqual({ words: 'A to B: 30 min between', late: false });
  const teaching = (minutes: number, limit: number | null, lessons = 1) =>
    teachingWords({ minutes, limit, lessons });
  expect(teaching(120, 360)).toEqual({ words: '2 h of at most 6 h', late: false });
  expect(teaching(390, 360)).toEqual({
    words: '6 h 30 min of at most 6 h, 30 min over the limit',
    late: true,
  });
  expect(teaching(90, null)).toEqual({ words: '1 h 30 min of lessons', late: false });
  expect(teaching(0, 360, 0).words).toBe('');
});
