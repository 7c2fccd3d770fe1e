// Evidence in depth by keyboard alone: a second fact counted apart, whole games, what was seen, a raise, reasons for
// misses, the cue that landed and a look back, each as it is in the coach file afterwards.
import { day, returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, noFindings, tabTo, test, use, write } from './story.mjs';

/** The visit of today, started, with a goal that counts two facts and one that counts whole games. */
async function inDepth(act) {
  const made = await returningStudent(act);
  await act('visits.open', { visit: made.visit });
  const goal = async (title, fields) => {
    const set = {
      student: made.student,
      visit: made.visit,
      title,
      condition: 'set_game',
      counts: 'result',
      need: 6,
      of: 10,
      ...fields,
    };
    return (await act('goals.set', set)).goal.id;
  };
  const pass = await goal('Pass when they stand behind', { apart: 'choice' });
  const skips = await goal('Skips', { condition: 'match', criterion: 'at_most', need: 3, of: 2 });
  await act('goals.rank', { student: made.student, order: [made.lob, pass, skips] });
  return { ...made, pass, skips };
}
const court = ({ visit }) => `#/court/${visit}`;
const shown = (bridge, goal) => bridge.act('goals.show', { goal });

test('two facts are counted with two keys more, a whole game is entered', async ({
  page,
  openFile,
  bridge,
}) => {
  const { pass, skips } = await openFile(inDepth, court);
  await expect(page.getByRole('button', { name: /^made right choice ?: Pass when/ })).toBeEnabled();
  await page.keyboard.type('34e');
  const blocks = async () => (await shown(bridge, pass)).blocks.map((b) => [b.count, b.also]);
  await expect.poll(blocks).toEqual([[{ made: 2, tries: 3 }, 2]]);
  await noFindings(page);

  await page.keyboard.press('5');
  const often = page.getByLabel('How often in this game');
  await expect(often).toBeFocused();
  await page.keyboard.type('many');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Write how often it happened, as a number.').first()).toBeVisible();
  await expect(often, 'what was typed stays').toHaveValue('many');
  await write(page, often, '4');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Game entered: 4')).toBeVisible();
  expect((await shown(bridge, skips)).blocks.map((b) => b.in_game)).toEqual([4]);
});

test('what is seen is written once, and again in two touches; one act makes it a goal', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { student, visit } = await openFile(inDepth, court);
  await expect(page.getByRole('button', { name: /^made ?: Lob serve/ })).toBeEnabled();
  await page.keyboard.press('s');
  const dialog = page.getByRole('dialog', { name: 'What was seen' });
  await write(page, dialog.getByLabel('What was seen'), 'Watches the front wall');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Seen: Watches the front wall')).toBeVisible();
  await expect(dialog, 'under a dialog the keys of the court rest').toBeHidden();
  await page.keyboard.press('s');
  await use(page, dialog.getByRole('button', { name: /Watches the front wall/ }));
  await expect(page.getByText('Seen again: Watches the front wall')).toBeVisible();
  const [seen] = await bridge.act('observations.list', { student });
  expect([seen.often, seen.kind]).toEqual(['second time', 'fault']);

  await use(page, page.getByRole('link', { name: 'Back to the visit' }));
  await arrived(page, 'Zoë Łukasiewicz');
  await use(page, page.getByRole('button', { name: /^Make it a goal ?: Watches/ }));
  const form = page.getByRole('dialog', { name: 'Make it a goal' });
  await expect(form.getByLabel('The goal', { exact: true })).toHaveValue('Watches the front wall');
  await choose(page, form.getByRole('group', { name: 'When it is reached' }), 'a rate');
  await write(page, form.getByLabel('In a hundred'), '120');
  await refusal(async () => {
    await use(page, form.getByRole('button', { name: 'Make it a goal' }));
    await expect(form.getByLabel('In a hundred'), 'a rate above all is refused at its field').toBeFocused();
  });
  await noFindings(page);
  await write(page, form.getByLabel('In a hundred'), '80');
  await use(page, form.getByRole('button', { name: 'Make it a goal' }));
  await expect(page.getByText('Made a goal: Watches the front wall')).toBeVisible();
  const goals = await bridge.act('goals.on_court', { visit });
  const made = goals.find((g) => g.goal.goal.title === 'Watches the front wall').goal.goal;
  expect(made.criterion).toEqual({ kind: 'rate', need: 80, of: 100, least: 15 });
  await expect(page.getByRole('link', { name: /^Its goal ?: Watches/ })).toBeVisible();
});

test('a goal is raised at the visit’s end, and its line goes on', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { lob, student } = await openFile(inDepth, ({ visit }) => `#/visits/${visit}`);
  await use(page, page.getByRole('button', { name: /^Raise ?: Lob serve/ }));
  const form = page.getByRole('dialog', { name: 'Raise a goal' });
  await expect(form.getByRole('radio', { name: 'live' }), 'one step harder is proposed').toBeChecked();
  await choose(page, form.getByRole('group', { name: 'How the ball comes' }), 'fed');
  await refusal(async () => {
    await use(page, form.getByRole('button', { name: 'Raise the goal' }));
    await expect(form.getByText('A raised goal is harder:', { exact: false }).first()).toBeVisible();
  });
  await choose(page, form.getByRole('group', { name: 'How the ball comes' }), 'set game');
  await use(page, form.getByRole('button', { name: 'Raise the goal' }));
  await expect(page.getByText('Raised to: Lob serve')).toBeVisible();
  const goals = await bridge.act('goals.list', { student });
  const raised = goals.find((g) => g.goal.came_from === lob);
  expect([raised.goal.condition, raised.state]).toEqual(['set_game', 'working']);
  expect((await shown(bridge, lob)).standing.state).toBe('raised');
});

test('misses get their reasons, a cue its mark', async ({ page, openFile, bridge, refusal }) => {
  const { wall } = await openFile(inDepth, ({ wall }) => `#/goals/${wall}`);
  await use(page, page.getByRole('button', { name: /^Why missed ?: 4 of 10/ }));
  await write(page, page.getByLabel(/^late/), '5');
  await write(page, page.getByLabel('Another reason'), 'wrong foot');
  await write(page, page.getByLabel('How many'), '2');
  await refusal(async () => {
    await use(page, page.getByRole('button', { name: 'Write the reasons' }));
    await expect(
      page.getByText('explain more than the 6 misses of 4 of 10', { exact: false }).first(),
    ).toBeVisible();
  });
  await expect(page.getByLabel('Another reason'), 'nothing typed is lost').toHaveValue('wrong foot');
  await write(page, page.getByLabel('How many'), '1');
  await use(page, page.getByRole('button', { name: 'Write the reasons' }));
  await expect(page.getByText('Missed: 5 late, 1 wrong foot')).toBeVisible();
  await use(page, page.getByRole('button', { name: /^It landed/ }));
  await expect(page.getByText('The cue landed.')).toBeVisible();
  expect((await shown(bridge, wall)).goal.words.at(-1).landed).toBe(day(0));
  await noFindings(page);
});

test('a kept goal is offered for a look back', async ({ page, openFile, bridge }) => {
  const { visit } = await openFile(
    async (act) => {
      const made = await returningStudent(act);
      const [hall] = await act('facilities.list');
      const between = await act('visits.plan', {
        student: made.student,
        facility: hall.id,
        first_day: day(-30),
        last_day: day(-29),
      });
      await act('visits.open', { visit: between.id });
      await act('goals.enter_total', {
        goal: made.lob,
        visit: between.id,
        kind: 'retest',
        made: 9,
        tries: 10,
      });
      await act('visits.close', { visit: between.id });
      await act('visits.open', { visit: made.visit });
      return made;
    },
    ({ visit }) => `#/visits/${visit}`,
  );
  await use(page, page.getByRole('button', { name: /^Look back at it ?: Lob serve/ }));
  await expect(page.getByText('On court: look back at Lob serve')).toBeVisible();
  await use(page, page.getByRole('link', { name: 'Record', exact: true }));
  const row = page.getByRole('region', { name: 'Lob serve' });
  await expect(row.getByText('look back')).toBeVisible();
  await tabTo(page, row.getByRole('button', { name: /^made/ }));
  await page.keyboard.press('Enter');
  await expect
    .poll(async () => {
      const goals = await bridge.act('goals.on_court', { visit });
      return goals.find((g) => g.goal.goal.title === 'Lob serve').open.count;
    })
    .toEqual({ made: 1, tries: 1 });
});
