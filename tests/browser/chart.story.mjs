// A carry chart longer than the window: what is in sight stands at once, the rest follows by itself.
import { returningStudent } from '../world/returning.mjs';
import { expect, test } from './story.mjs';

const MORE = 30;

test('a long chart, its table and the list of goals come whole', async ({ page, openFile, bridge }) => {
  const made = await openFile(
    async (act) => {
      const made = await returningStudent(act);
      await act('visits.open', { visit: made.visit });
      for (let n = 1; n <= MORE; n++) {
        await act('goals.set', {
          student: made.student,
          visit: made.visit,
          title: `Pass down the line ${n}`,
          condition: 'fed',
          counts: 'result',
          need: 8,
          of: 10,
        });
      }
      return made;
    },
    ({ student }) => `#/people/${student}`,
  );
  const goals = (await bridge.act('goals.list', { student: made.student })).map((g) => g.goal.title);
  const lines = (await bridge.act('goals.chart', { student: made.student })).lines.map((l) => l.title);
  expect(goals.length).toBeGreaterThan(MORE);
  await expect(page.locator('main .chart a .title:first-of-type')).toHaveText(lines);
  await page.getByRole('button', { name: 'As a table' }).click();
  const table = page.getByRole('table', { name: 'Carry chart as a table' });
  await expect(table.getByRole('rowheader')).toHaveText(lines);
  await expect(page.getByRole('list', { name: 'Goals' }).getByRole('link')).toHaveText(goals);
});
