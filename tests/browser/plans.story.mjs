// A lesson's plan and its court card by keyboard: proposed, put in order, refused in words at the line that is wrong,
// kept and used as a template; and a card typed in at once.
import { day, returningStudent } from '../world/returning.mjs';
import { arrived, expect, noFindings, stillThere, tabTo, test, use, write } from './story.mjs';

/** The returning student's first lesson, with the visit started or not yet. */
const made = (started) => async (act) => {
  const world = await returningStudent(act);
  if (started) await act('visits.open', { visit: world.visit });
  const [lesson] = await act('lessons.list', { visit: world.visit });
  return { ...world, lesson: lesson.id, facility: lesson.facility };
};

const field = (page, name, nth) => page.getByLabel(name).nth(nth);

test('a lesson is planned before the visit, from its goals', async ({ page, openFile, bridge, refusal }) => {
  const { lesson, lob, wall } = await openFile(made(false), '#/');
  await use(page, page.getByRole('link', { name: /^Plan.*Zoë/ }));
  await arrived(page, 'Lesson');
  await expect(page.getByText('0 of 60 minutes planned')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Propose' }));
  await expect(field(page, 'Minutes', 0), 'the first line that came has the focus').toBeFocused();
  await expect(page.getByText('60 of 60 minutes planned')).toBeVisible();
  await expect(field(page, 'What is done', 1)).toHaveValue('Retest: Lob serve');
  await expect(field(page, /^Goal/, 1), 'a goal of a visit still to come can be seen').toHaveValue(lob);

  await use(page, page.getByRole('button', { name: /^Up.*Retest: Lob serve$/ }));
  await stillThere(page);
  await expect(field(page, 'What is done', 0)).toHaveValue('Retest: Lob serve');
  await write(page, field(page, 'Minutes', 0), 'ten');
  await refusal(() => use(page, page.getByRole('button', { name: 'Keep the plan' })));
  await expect(field(page, 'Minutes', 0), 'the line that moved is the one that is wrong').toBeFocused();
  await expect(field(page, 'Minutes', 0), 'nothing typed is lost').toHaveValue('ten');
  await expect(field(page, 'Minutes', 0)).toHaveAttribute('aria-invalid', 'true');
  await expect(field(page, 'Minutes', 1)).not.toHaveAttribute('aria-invalid', 'true');
  await noFindings(page);
  await write(page, field(page, 'Minutes', 0), '10');
  await use(page, page.getByRole('button', { name: /^Leave out.*Warm-up$/ }));
  await stillThere(page);
  await use(page, page.getByRole('button', { name: 'Add a line' }));
  await expect(page.getByLabel('Minutes').last()).toBeFocused();
  await write(page, page.getByLabel('What is done').last(), 'Cool down, talk it over');
  const drill = page.getByLabel(/^Drill/).last();
  await tabTo(page, drill);
  await page.keyboard.press('ArrowDown');
  await expect(drill, 'a drill can be chosen with the arrows').not.toHaveValue('');
  await use(page, page.getByRole('button', { name: 'Keep the plan' }));
  await expect(page.getByText('Lesson plan kept.')).toBeVisible();
  const kept = (await bridge.act('lessons.plan_lines', { lesson })).lines;
  expect(kept.map((l) => [l.words, l.goal])).toEqual([
    ['Retest: Lob serve', lob],
    ['Retest: Backhand off the back wall', wall],
    ['Lob serve', lob],
    ['Backhand off the back wall', wall],
    ['End test: Lob serve', lob],
    ['End test: Backhand off the back wall', wall],
    ['Cool down, talk it over', null],
  ]);
  await expect(page.getByText(/^\d+ of 60 minutes planned/)).toHaveText(
    new RegExp(`^${kept.reduce((sum, l) => sum + l.minutes, 0)} of 60 `),
  );
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByLabel('Minutes'), 'taken back, nothing is planned').toHaveCount(0);
  expect((await bridge.act('lessons.plan_lines', { lesson })).lines).toEqual([]);
});

test('a plan is kept as a template and used at another lesson', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { lesson, visit, facility } = await openFile(made(true), ({ lesson }) => `#/lessons/${lesson}`);
  await use(page, page.getByRole('button', { name: 'A drill of your own' }));
  const dialog = page.getByRole('dialog');
  await refusal(() => use(page, dialog.getByRole('button', { name: 'Add the drill' })));
  await expect(dialog.getByLabel('Name')).toBeFocused();
  await page.keyboard.type('Two corners');
  await use(page, dialog.getByRole('button', { name: 'Add the drill' }));
  await expect(page.getByText('Drill added: Two corners')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Propose' }));
  const drill = field(page, /^Drill/, 0);
  await tabTo(page, drill);
  await page.keyboard.type('Two c');
  await expect(drill.locator('option:checked')).toHaveText('Two corners');
  await use(page, page.getByRole('button', { name: 'Keep as a template' }));
  await tabTo(page, dialog.getByLabel('Name'));
  await page.keyboard.type('First hour');
  await use(page, dialog.getByRole('button', { name: 'Keep it' }));
  await expect(page.getByText('Template kept: First hour')).toBeVisible();
  const [template] = await bridge.act('lessons.templates');
  expect(template.lines.every((line) => line.goal === null)).toBe(true);

  const other = await bridge.act('lessons.plan', {
    visits: [visit],
    facility,
    day: day(1),
    starts: '11:00',
    minutes: 45,
  });
  await page.evaluate((to) => (location.hash = to), `#/lessons/${other.id}`);
  await arrived(page, 'Lesson');
  await expect(page.getByText('0 of 45 minutes planned')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Add a line' }));
  await write(page, page.getByLabel('What is done'), 'Serves');
  await tabTo(page, page.getByLabel(/^From a template/));
  await page.keyboard.press('ArrowDown');
  await use(page, page.getByRole('button', { name: 'Use it' }));
  await expect(page.getByText('60 of 45 minutes planned, 15 too many')).toBeVisible();
  await expect(field(page, /^Drill/, 0).locator('option:checked')).toHaveText('Two corners');
  await use(page, page.getByRole('button', { name: 'Put back what stood here' }));
  await expect(page.getByLabel('What is done'), 'what was typed before is not lost').toHaveValue('Serves');
  await stillThere(page);
  expect((await bridge.act('lessons.plan_lines', { lesson: other.id })).lines).toEqual([]);

  const { path } = await bridge.act('desk.open_card', { lesson });
  expect(path).toMatch(/Court cards\/Court card Zoë Łukasiewicz .*\.pdf$/);
});

test('a card is typed in at once, or nothing of it', async ({ page, openFile, bridge, refusal }) => {
  const { lob, wall } = await openFile(made(true), ({ lesson }) => `#/lessons/${lesson}`);
  await use(page, page.getByRole('link', { name: 'Type a card in' }));
  await arrived(page, 'Type a card in');
  await write(page, field(page, /^Retest/, 0), '9 of 10');
  await write(page, field(page, /^End test/, 0), '9/10');
  await write(page, field(page, /^Practice/, 1), '11 of 10');
  await refusal(() => use(page, page.getByRole('button', { name: 'Enter the card' })));
  await expect(field(page, /^Practice/, 1)).toBeFocused();
  await expect(field(page, /^Practice/, 1), 'nothing typed is lost').toHaveValue('11 of 10');
  const blocks = async (goal) =>
    (await bridge.act('goals.show', { goal })).blocks
      .slice(1)
      .map((b) => [b.kind, b.count.made, b.count.tries, b.source]);
  expect(await blocks(lob), 'nothing of it was written').toEqual([]);
  await noFindings(page);
  await write(page, field(page, /^Practice/, 1), '6 of');
  await use(page, page.getByRole('button', { name: 'Enter the card' }));
  await expect(field(page, /^Practice/, 1)).toBeFocused();
  await expect(page.getByText('Write the total as 7 of 10 or 7/10.').first()).toBeVisible();
  await write(page, field(page, /^Practice/, 1), '6 10');
  await use(page, page.getByRole('button', { name: 'Enter the card' }));
  await arrived(page, 'Zoë Łukasiewicz');
  await expect(page.getByText('Court card entered.')).toBeVisible();
  expect(await blocks(lob)).toEqual([
    ['retest', 9, 10, 'total_entered'],
    ['end_test', 9, 10, 'total_entered'],
  ]);
  expect(await blocks(wall)).toEqual([['practice', 6, 10, 'total_entered']]);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByText(/^Undone: Court card entered/)).toBeVisible();
  expect(await blocks(lob), 'one act, taken back as one').toEqual([]);
});
