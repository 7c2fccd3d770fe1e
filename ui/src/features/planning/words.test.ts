// A plan in words, and what differs between two.
import { expect, test } from 'vitest';
import type { PlanMade, PlannedLesson } from '../../ipc';
import { byPerson, comesTo, differs, freeByDay, nameOf, whenOf, whereOf } from './words';

function line(name: string, day: string, starts: string, court = 'Court 1'): PlannedLesson {
  return {
    place: { visit: `visit of ${name}`, with: [], court, day, starts },
    lesson: null,
    locked: false,
    students: [name],
    name,
    ends: starts.replace(/^(\d\d)/, (h) => String(Number(h) + 1).padStart(2, '0')),
    facility: 'f',
    facility_name: 'Harbour Hall',
    court_name: court,
    cost: '18.00 EUR',
    ask_words: '',
    why: '',
    against: [],
  };
}

function plan(lines: PlannedLesson[]): PlanMade {
  return {
    proven: true,
    lines,
    missing: [{ visit: 'v', with: [], name: 'Zoë', lessons: 2, why: [] }],
    cost: [],
    days: 1,
    trips: 1,
    sums: [0, 0, 0, 0],
    mind: [],
    free: [
      { day: '2026-03-10', from: '09:00', to: '11:00' },
      { day: '2026-03-10', from: '20:00', to: '00:00' },
    ],
  };
}

test('people are rows, each with their lessons in time', () => {
  const lines = [
    line('Ben', '2026-03-10', '09:00'),
    line('Ana', '2026-03-10', '10:00'),
    line('Ben', '2026-03-11', '09:00'),
  ];
  expect(byPerson(lines).map((p) => [p.name, p.lines.length])).toEqual([
    ['Ana', 1],
    ['Ben', 2],
  ]);
  expect(whenOf(line('Ana', '2026-03-10', '09:00'))).toBe('Tue 10 Mar, 9:00 – 10:00');
  expect(whereOf(line('Ana', '2026-03-10', '09:00'))).toBe('Court 1, Harbour Hall · 18.00 EUR');
});

test('those who share lessons are a row of their own, and said to share', () => {
  const own = line('Ana', '2026-03-10', '09:00');
  const both = { ...own, name: 'Ana and Ben', place: { ...own.place, with: ['visit of Ben'] } };
  expect(byPerson([both, own, both]).map((p) => [p.name, p.visit, p.lines.length])).toEqual([
    ['Ana', 'visit of Ana', 1],
    ['Ana and Ben, shared', 'visit of Ana', 2],
  ]);
  expect(nameOf('Ana', [])).toBe('Ana');
});

test('what a plan comes to, its free hours, and where two differ', () => {
  const a = plan([line('Ana', '2026-03-10', '09:00'), line('Ben', '2026-03-10', '10:00')]);
  const b = plan([line('Ana', '2026-03-10', '09:00'), line('Ben', '2026-03-10', '10:00', 'Court 2')]);
  expect(comesTo(a).map((c) => c.words)).toEqual(['2', '2', '1', '1', 'not known']);
  expect(freeByDay(a.free)).toEqual([{ day: '2026-03-10', words: '9:00 – 11:00, 20:00 – midnight' }]);
  expect(differs(a, a)).toEqual([]);
  expect(differs(a, b)).toEqual([
    'Only now: Ben, Tue 10 Mar, 10:00 – 11:00, Court 1',
    'Only aside: Ben, Tue 10 Mar, 10:00 – 11:00, Court 2',
  ]);
});
