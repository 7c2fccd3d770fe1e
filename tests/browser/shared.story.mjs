// A shared lesson by keyboard: two students with their own goals on one court, one key between them.
import { readyForCourt } from '../world/ready.mjs';
import { day, returningStudent } from '../world/returning.mjs';
import { arrived, expect, noFindings, stillThere, test, use } from './story.mjs';

/** Zoë comes back; Ines is here for the first time and shares her lesson. */
async function two(act) {
  const zoe = await returningStudent(act);
  await act('visits.open', { visit: zoe.visit });
  const [hall] = await act('facilities.list', {});
  const ines = (await act('students.add', { name: 'Ines Okafor' })).id;
  await readyForCourt(act, ines);
  const visit = await act('visits.plan', {
    student: ines,
    facility: hall.id,
    first_day: day(0),
    last_day: day(1),
  });
  await act('visits.open', { visit: visit.id });
  const set = (title, of) =>
    act('goals.set', {
      student: ines,
      visit: visit.id,
      title,
      condition: 'fed',
      counts: 'result',
      need: of - 2,
      of,
    });
  const drop = (await set('Drop from mid-court', 10)).goal.id;
  const lesson = await act('lessons.plan', {
    visits: [zoe.visit, visit.id],
    facility: hall.id,
    day: day(0),
    starts: '11:00',
    minutes: 90,
  });
  return { zoe, ines: { student: ines, visit: visit.id, drop }, lesson: lesson.id };
}

/** Of each block of a goal: its kind, its lesson, its tries. */
const blocks = async (bridge, goal) =>
  (await bridge.act('goals.show', { goal })).blocks.map((b) => [
    b.kind,
    b.lesson,
    b.tries.map((made) => (made ? '+' : '-')).join(''),
  ]);

test('two students share a lesson, and each keeps a record of their own', async ({
  page,
  openFile,
  bridge,
}) => {
  const { zoe, ines, lesson } = await openFile(two, '#/');
  await use(page, page.getByRole('link', { name: /^Record ?: Ines Okafor and/ }));
  /** All is there: the goal that comes first, and the way to the other. */
  const ready = async (whose, first, other) => {
    await arrived(page, whose);
    await expect(page.getByRole('button', { name: new RegExp(`^made ?: ${first}`) })).toBeEnabled();
    await expect(page.getByRole('link', { name: `To ${other}` })).toBeVisible();
  };
  const zoeThere = () => ready('Zoë Łukasiewicz', 'Lob serve', 'Ines Okafor');
  const inesThere = () => ready('Ines Okafor', 'Drop from mid-court', 'Zoë Łukasiewicz');
  await inesThere();
  await page.keyboard.press('o');
  await zoeThere();

  // Turn by turn, without waiting for what was touched to be written.
  await page.keyboard.type('11o');
  await inesThere();
  await page.keyboard.type('12o');
  await zoeThere();
  await page.keyboard.type('24o');
  await inesThere();
  await page.keyboard.type('1');
  await expect.poll(() => blocks(bridge, ines.drop)).toEqual([['practice', lesson, '+-+']]);
  const before = ['end_test', null, ''];
  await expect.poll(() => blocks(bridge, zoe.lob)).toEqual([before, ['retest', lesson, '++-']]);
  await expect.poll(() => blocks(bridge, zoe.wall)).toEqual([before, ['retest', lesson, '-']]);
  await noFindings(page);

  // Undo takes back this student's touch, not the other's.
  await page.keyboard.press('u');
  await expect(page.getByText('One touch taken back: Drop from mid-court')).toBeVisible();
  await expect.poll(() => blocks(bridge, ines.drop)).toEqual([['practice', lesson, '+-']]);

  // The way by a link is as short, and the lesson ends for both.
  await use(page, page.getByRole('link', { name: 'To Zoë Łukasiewicz' }));
  await arrived(page, 'Zoë Łukasiewicz');
  await use(page, page.getByRole('button', { name: 'End the lesson' }));
  const dialog = page.getByRole('dialog');
  await use(page, dialog.getByRole('button', { name: 'End the lesson' }));
  await arrived(page, 'Zoë Łukasiewicz');
  await stillThere(page);
  const shown = await bridge.act('lessons.show', { lesson });
  expect(shown.state).toBe('given');
  expect(shown.students.map((s) => s.name).sort()).toEqual(['Ines Okafor', 'Zoë Łukasiewicz']);
  for (const [goal, made, tries] of [
    [zoe.lob, 0, 0],
    [ines.drop, 1, 2],
  ]) {
    const [last] = (await bridge.act('goals.show', { goal })).blocks.slice(-1);
    expect(last.ended, 'the lesson ended each student’s blocks').toBe(true);
    expect([last.count.made, last.count.tries], 'the first three tries of a retest are not counted').toEqual([
      made,
      tries,
    ]);
  }
});
