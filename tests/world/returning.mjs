// A returning student: one goal met at the last visit, one still worked on, and days agreed from today.

import { readyForCourt } from './ready.mjs';

/** The date so many days from today, on this machine’s own calendar. */
export const day = (offset) => {
  const at = new Date(Date.now() + offset * 86_400_000);
  return `${at.getFullYear()}-${String(at.getMonth() + 1).padStart(2, '0')}-${String(at.getDate()).padStart(2, '0')}`;
};

/** Fills a new coach file; gives the ids a story needs. */
export async function returningStudent(act) {
  await act('settings.change', { name: 'Robin Hale', closing: 'See you on court,' });
  const hall = await act('facilities.add', { name: 'Harbour Hall', town: 'Saltmere', zone: 'Europe/Dublin' });
  const courts = (await act('facilities.add_court', { facility: hall.id, name: 'Court 2' })).courts;
  const student = await act('students.add', {
    name: 'Zoë Łukasiewicz',
    hand: 'left',
    wants: 'A serve that holds.',
  });
  await readyForCourt(act, student.id);
  const visit = (first, last) =>
    act('visits.plan', {
      student: student.id,
      facility: hall.id,
      first_day: day(first),
      last_day: day(last),
    });
  const before = await visit(-60, -57);
  await act('visits.open', { visit: before.id });
  const goal = (title, condition, cue) =>
    act('goals.set', {
      student: student.id,
      visit: before.id,
      title,
      condition,
      counts: 'result',
      need: 8,
      of: 10,
      cue,
      day: day(-60),
    });
  const lob = (await goal('Lob serve', 'fed', 'Lift, don’t push')).goal;
  const wall = (await goal('Backhand off the back wall', 'live', 'Feet with the ball')).goal;
  const tested = (id, made) =>
    act('goals.enter_total', { goal: id, visit: before.id, kind: 'end_test', made, tries: 10 });
  await tested(lob.id, 8);
  await tested(wall.id, 4);
  await act('visits.close', { visit: before.id });
  const now = await visit(0, 2);
  await act('lessons.plan', {
    visits: [now.id],
    facility: hall.id,
    court: courts[0].id,
    day: day(0),
    starts: '09:30',
    minutes: 60,
  });
  return { student: student.id, visit: now.id, lob: lob.id, wall: wall.id };
}
