// What is known of a student beside the goals, by keyboard: the sport and what a change of it means, the division,
// the hours of a usual week, and dated facts that are written down, corrected and taken away.
import { returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, stillThere, tabTo, test, use, write } from './story.mjs';

test('a sport, a division and the hours of a usual week', async ({ page, openFile, bridge, refusal }) => {
  const { student, lob } = await openFile(async (act) => {
    const made = await returningStudent(act);
    await act('goals.set', {
      student: made.student,
      title: 'Z serve',
      skill: 'z-serve',
      condition: 'fed',
      counts: 'result',
      need: 8,
      of: 10,
    });
    return made;
  }, '#/people');
  expect(lob).toBeTruthy();
  await page.goto(bridge.address + `#/people/${student}/edit`);
  await arrived(page, 'Change a student');
  const sport = page.getByLabel('Sport', { exact: true });
  await tabTo(page, sport);
  await expect(sport).toHaveValue('racquetball');
  const division = page.getByLabel(/^Division or level/);
  const offered = () =>
    division.evaluate((node) => [...node.list.options].map((option) => option.value).slice(0, 3));
  await expect.poll(offered, { message: 'the list of the pack is offered' }).toEqual(['Open', 'Elite', 'A']);
  await page.keyboard.type('Squash');
  await expect(sport).toHaveValue('squash');
  await expect(page.getByText('“Z serve” names a skill of the sport before.')).toBeVisible();
  await expect.poll(offered).not.toContain('Elite');
  await write(page, division, 'The third team of the club');
  const hours = page.getByLabel(/^Hours on court/);
  await write(page, hours, 'some');
  await refusal(() => page.keyboard.press('Enter'));
  await expect(hours, 'what is wrong has the focus').toBeFocused();
  await expect(hours, 'what was typed is kept').toHaveValue('some');
  await expect(page.getByText('it can be 0 to 168 hours').first()).toBeVisible();
  await write(page, hours, '4,5');
  await page.keyboard.press('Enter');
  await arrived(page, 'Zoë Łukasiewicz');
  await expect(
    page.getByText('Squash · The third team of the club · 4 h 30 min on court in a usual week'),
  ).toBeVisible();
  const { profile } = await bridge.act('students.show', { student });
  expect(profile).toMatchObject({
    sport: 'squash',
    division: 'The third team of the club',
    usual_minutes: 270,
  });
});

test('facts stand with their day, the newest of each kind first', async ({ page, openFile, bridge }) => {
  const { student } = await openFile(returningStudent, ({ student }) => `#/people/${student}`);
  const write_down = page.getByRole('button', { name: 'Write a fact down' });
  const add = async (kind, words, day) => {
    await use(page, write_down);
    await choose(page, page.getByRole('group', { name: 'About' }), kind);
    await write(page, page.getByLabel('The fact'), words);
    if (day) await write(page, page.getByLabel('Since, or when'), day);
    await use(page, page.getByRole('button', { name: 'Write it down' }));
    await expect(page.getByText('Written down.')).toBeVisible();
    await expect(write_down).toBeFocused();
  };
  await add('Playing history', 'Began at school', '1.9.2019');
  await add('Equipment', 'Racquet of 175 g', '5 jan 2025');
  await add('Equipment', 'Racquet of 160 g');
  const rows = page.getByRole('list', { name: 'Background' }).getByRole('listitem');
  await expect(rows.nth(0)).toContainText('Racquet of 160 g');
  await expect(rows.nth(1)).toContainText('Began at school');
  await use(page, page.getByRole('button', { name: 'And 1 from before' }));
  await expect(rows).toHaveCount(3);
  await expect(rows.nth(1)).toContainText('5 January 2025');
  await use(page, rows.nth(1).getByRole('button', { name: /^Correct/ }));
  await write(page, page.getByLabel('The fact'), 'Racquet of 170 g');
  await use(page, page.getByRole('button', { name: 'Save' }));
  await expect(rows.nth(1)).toContainText('Racquet of 170 g');
  await use(page, rows.nth(1).getByRole('button', { name: /^Correct/ }));
  await use(page, page.getByRole('button', { name: 'Take it away' }));
  await expect(page.getByText('Taken away.')).toBeVisible();
  await expect(rows).toHaveCount(2);
  await stillThere(page);
  expect((await bridge.act('students.facts', { student })).map((f) => f.words)).toEqual([
    'Racquet of 160 g',
    'Began at school',
  ]);
});
