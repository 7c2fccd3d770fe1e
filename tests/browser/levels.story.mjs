// Levels, a published test, a lesson's plan and its card, by keyboard alone, each as it is in the coach file.
import { returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, noFindings, test, use, write } from './story.mjs';

const started = async (act) => {
  const made = await returningStudent(act);
  await act('visits.open', { visit: made.visit });
  const [lesson] = await act('lessons.list', { visit: made.visit });
  return { ...made, lesson: lesson.id };
};

test('levels are given with their anchors in sight, and a test is taken', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { student } = await openFile(started, ({ student }) => `#/people/${student}/levels`);
  await use(page, page.getByRole('button', { name: 'Assess' }));
  const form = page.getByRole('dialog', { name: 'Assess' });
  await expect(form.getByText('Reliable on a fed ball', { exact: false })).toBeVisible();
  await choose(page, form.getByRole('group', { name: 'Lob serve', exact: true }), '3');
  await noFindings(page);
  await use(page, form.getByRole('button', { name: 'Write the levels down' }));
  await expect(page.getByText('Levels written down.')).toBeVisible();
  const [assessed] = await bridge.act('assessments.list', { student });
  expect(assessed.levels.map((l) => [l.skill, l.level, l.basis])).toEqual([['lob-serve', 3, 'opinion']]);

  await use(page, page.getByRole('button', { name: 'Take a test' }));
  const taking = page.getByRole('dialog', { name: 'Take a test' });
  await write(page, taking.getByLabel('Short wall'), '14');
  await refusal(async () => {
    await use(page, taking.getByRole('button', { name: 'Write the test down' }));
    await expect(taking.getByLabel('Long wall'), 'what is missing is asked for at its field').toBeFocused();
  });
  await write(page, taking.getByLabel('Long wall'), '12');
  await use(page, taking.getByRole('button', { name: 'Write the test down' }));
  await expect(page.getByText('Test written down', { exact: false })).toBeVisible();
  const [taken] = await bridge.act('assessments.tests', { student });
  expect(taken.total).toBe(26);

  await use(page, page.getByRole('button', { name: 'Norms of your own' }));
  const norms = page.getByRole('dialog', { name: 'Norms of your own' });
  await write(page, norms.getByLabel('Mean'), '24,5');
  await write(page, norms.getByLabel('Standard deviation'), '5.2');
  await refusal(async () => {
    await use(page, norms.getByRole('button', { name: 'Keep the norms' }));
    await expect(norms.getByLabel('Where they are from'), 'numbers from nowhere').toBeFocused();
  });
  await write(page, norms.getByLabel('Where they are from'), 'Players of my own');
  await noFindings(page);
  await use(page, norms.getByRole('button', { name: 'Keep the norms' }));
  const tests = page.getByRole('list', { name: 'Tests' });
  await expect(tests.getByText(/T-score 52\.9 .* by your own norms: Players of my own/)).toBeVisible();

  await use(page, page.getByRole('button', { name: /^Change ?: Lob serve/ }));
  const change = page.getByRole('dialog', { name: 'Change a level' });
  await expect(change.getByRole('radio', { name: /^3 / }), 'begins at what is chosen').toBeFocused();
  await choose(page, change.getByRole('group', { name: 'Lob serve' }), /^2 /);
  await write(page, change.getByLabel('A word about it'), 'Only to the left corner');
  await noFindings(page);
  await use(page, change.getByRole('button', { name: 'Change the level' }));
  const levels = page.getByRole('list', { name: 'Levels' });
  await expect(levels.getByText('Only to the left corner')).toBeVisible();
  const [corrected] = await bridge.act('assessments.list', { student });
  expect(corrected.levels.map((l) => [l.skill, l.level])).toEqual([['lob-serve', 2]]);
});

test('a lesson is planned as proposed, its card is typed in', async ({ page, openFile, bridge }) => {
  const { lesson, lob } = await openFile(started, ({ lesson }) => `#/lessons/${lesson}`);
  await use(page, page.getByRole('button', { name: 'Propose' }));
  await expect(page.getByText('60 of 60 minutes planned')).toBeVisible();
  await use(page, page.getByRole('button', { name: /^Leave out ?: Warm-up/ }));
  await expect(page.getByText(/^\d\d of 60 minutes planned$/)).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Keep the plan' }));
  await expect(page.getByText('Lesson plan kept.')).toBeVisible();
  const plan = await bridge.act('lessons.plan_lines', { lesson });
  expect(plan.lines[0].words).toBe('Retest: Lob serve');
  await use(page, page.getByRole('button', { name: 'Keep as a template' }));
  await write(page, page.getByRole('dialog').getByLabel('Name'), 'Usual');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Template kept: Usual')).toBeVisible();

  await use(page, page.getByRole('link', { name: 'Type a card in' }));
  await arrived(page, 'Type a card in');
  const row = page.getByRole('group', { name: /^Lob serve/ });
  await write(page, row.getByLabel('Retest'), 'nine');
  await write(page, row.getByLabel('End test'), '8/10');
  await page.keyboard.press('Enter');
  await expect(row.getByLabel('Retest')).toBeFocused();
  await expect(row.getByLabel('Retest'), 'what was typed stays').toHaveValue('nine');
  await write(page, row.getByLabel('Retest'), '9 of 10');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Court card entered.')).toBeVisible();
  const shown = await bridge.act('goals.show', { goal: lob });
  expect(shown.blocks.slice(-2).map((b) => [b.kind, b.count.made])).toEqual([
    ['retest', 9],
    ['end_test', 8],
  ]);
  expect(shown.standing.state).toBe('kept');
});
