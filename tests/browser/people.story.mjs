// People, a student and the goals, by keyboard alone: found, added, set, put in order, opened on the chart.
import { expect, tabTo, test, use } from './story.mjs';

/** A student with one goal through several visits, a lob serve that ended at `rates` of ten. */
async function season(act, rates) {
  const hall = await act('facilities.add', { name: 'Harbour Hall', town: 'Saltmere', zone: 'Europe/Dublin' });
  const student = await act('students.add', { name: 'Zoë Łukasiewicz', hand: 'left' });
  let lob;
  for (const [n, made] of rates.entries()) {
    const month = String(n + 1).padStart(2, '0');
    const visit = await act('visits.plan', {
      student: student.id,
      facility: hall.id,
      first_day: `2025-${month}-03`,
      last_day: `2025-${month}-05`,
    });
    await act('visits.open', { visit: visit.id });
    lob ??= (
      await act('goals.set', {
        student: student.id,
        visit: visit.id,
        title: 'Lob serve',
        condition: 'fed',
        counts: 'result',
        need: 8,
        of: 10,
        day: `2025-${month}-03`,
      })
    ).goal;
    await act('goals.enter_total', { goal: lob.id, visit: visit.id, kind: 'end_test', made, tries: 10 });
    await act('visits.close', { visit: visit.id });
  }
  return { student: student.id, lob: lob.id };
}

test('a student is added, found and given a goal without a pointer', async ({ page, openFile, bridge }) => {
  await openFile(undefined, '#/people');
  await use(page, page.getByRole('link', { name: 'Add a student' }).first());
  await tabTo(page, page.getByLabel('Name', { exact: true }));
  await page.keyboard.type('Pia Ortega');
  await tabTo(page, page.getByLabel(/Time zone at home/));
  await page.keyboard.type('new york');
  await use(page, page.getByRole('button', { name: 'Add the student' }));
  await expect(page.getByRole('heading', { level: 1, name: 'Pia Ortega' })).toBeVisible();
  const [pia] = await bridge.act('students.list', { find: 'pia' });
  const kept = await bridge.act('students.show', { student: pia.id });
  expect(kept.profile.zone, 'the city stands for its zone').toBe('America/New_York');

  await use(page, page.getByRole('button', { name: 'Set a goal' }));
  await expect(page.getByLabel('Skill')).toBeFocused();
  await tabTo(page, page.getByLabel('The goal'));
  await page.keyboard.type('Drive serve along the wall');
  await tabTo(page, page.getByLabel('Made'));
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('8');
  await tabTo(page, page.getByLabel('of tries'));
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('10');
  await expect(
    page.getByText('8 of 10: a player who makes 80 % in truth passes 68 times in 100'),
  ).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Set the goal' }));
  await expect(page.getByRole('link', { name: 'Drive serve along the wall' })).toBeVisible();

  await page.goto(bridge.address + '#/people');
  await tabTo(page, page.getByLabel('Find', { exact: true }));
  await page.keyboard.type('orte');
  await expect(page.getByText('One found.')).toBeVisible();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('nobody at all');
  await expect(page.getByText('Nobody’s name has “nobody at all” in it.')).toBeVisible();
});

test('a criterion that cannot be reached is not weighed', async ({ page, openFile }) => {
  const { student } = await openFile((act) => season(act, [5]), '#/people');
  await page.goto(page.url().replace('#/people', `#/people/${student}`));
  await page.getByRole('button', { name: 'Set a goal' }).click();
  await expect(page.getByText('16 of 20: a player')).toBeVisible();
  await page.getByLabel('Made').fill('30');
  await expect(
    page.getByText('16 of 20: a player'),
    'what was weighed before is not left standing',
  ).toBeHidden();
  await expect(page.getByRole('table', { name: 'How often players reach it' })).toBeHidden();
});

test('a cell of the chart opens its blocks and gives the focus back; earlier visits can be reached', async ({
  page,
  openFile,
}) => {
  await page.setViewportSize({ width: 1024, height: 768 });
  const { student } = await openFile((act) => season(act, [1, 2, 3, 4, 5, 6, 7]), '#/people');
  await page.goto(page.url().replace('#/people', `#/people/${student}`));
  const cell = (words) => page.getByRole('button', { name: `Lob serve, ${words}` });
  await expect(cell('Jul 25: end test 7 of 10')).toBeVisible();
  await expect(cell('Jan 25: end test 1 of 10'), 'only the newest fit').toHaveCount(0);
  const wide = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(await wide(), 'nothing stands out of the window').toBeLessThanOrEqual(0);

  await use(page, cell('Jul 25: end test 7 of 10'));
  const dialog = page.getByRole('dialog', { name: 'Lob serve' });
  await expect(dialog.getByText('roughly 40 to 89 %')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(cell('Jul 25: end test 7 of 10')).toBeFocused();

  await use(page, page.getByRole('button', { name: 'Earlier visits' }));
  await expect(cell('Jan 25: end test 1 of 10')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'As a table' }));
  const row = page.getByRole('row', { name: /^Lob serve/ });
  await expect(row.getByRole('cell')).toHaveText([
    ...[1, 2, 3, 4, 5, 6, 7].map((made) => `end test ${made} of 10`),
    /^working: /,
  ]);
  expect(await wide(), 'a wide table scrolls by itself').toBeLessThanOrEqual(0);
});

test('goals are put in order without losing the place', async ({ page, openFile, bridge }) => {
  const { student } = await openFile(async (act) => {
    const made = await season(act, [4]);
    for (const title of ['Backhand', 'Return', 'Overhead']) {
      await act('goals.set', {
        student: made.student,
        title,
        condition: 'live',
        counts: 'result',
        need: 8,
        of: 10,
      });
    }
    return made;
  }, '#/people');
  await page.goto(page.url().replace('#/people', `#/people/${student}`));
  const goals = page.getByRole('list', { name: 'Goals' });
  await expect(goals.getByRole('link')).toHaveText(['Lob serve', 'Backhand', 'Return', 'Overhead']);
  await expect(goals.getByRole('listitem').filter({ hasText: 'waits' }), 'the fourth waits').toHaveCount(1);
  await use(page, goals.getByRole('button', { name: /^Up ?: Overhead$/ }));
  await expect(goals.getByRole('link')).toHaveText(['Lob serve', 'Backhand', 'Overhead', 'Return']);
  for (let i = 0; i < 2; i++) {
    await expect(goals.getByRole('button', { name: /^Up ?: Overhead$/ })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(goals.getByRole('link').nth(1 - i)).toHaveText('Overhead');
  }
  await expect(
    goals.getByRole('button', { name: /^Down ?: Overhead$/ }),
    'at the top only down is left',
  ).toBeFocused();
  expect((await bridge.act('goals.list', { student })).map((g) => g.goal.title)).toEqual([
    'Overhead',
    'Lob serve',
    'Backhand',
    'Return',
  ]);
});
