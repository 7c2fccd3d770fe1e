// How hard a lesson was, as the student rates it, by keyboard: when the lesson ends, later, and what it makes of the
// visit's load.
import { day, returningStudent } from '../world/returning.mjs';
import { expect, noFindings, tabTo, test, use } from './story.mjs';

test('effort is rated at the end or later, and the load says what it does not know', async ({
  page,
  openFile,
  bridge,
}) => {
  const { visit } = await openFile(
    async (act) => {
      const made = await returningStudent(act);
      await act('visits.open', { visit: made.visit });
      const [first] = await act('lessons.list', { visit: made.visit });
      await act('lessons.plan', {
        visits: [made.visit],
        facility: first.facility,
        day: day(1),
        starts: '11:00',
        minutes: 30,
      });
      return made;
    },
    ({ visit }) => `#/visits/${visit}`,
  );
  const lessons = await bridge.act('lessons.list', { visit });
  await use(page, page.getByRole('button', { name: /^Given.*9:30$/ }));
  const effort = page.getByLabel(/^How hard it was/);
  await tabTo(page, effort);
  await page.keyboard.type('7');
  await expect(effort.locator('option:checked')).toHaveText('7, very hard');
  await use(page, page.getByRole('button', { name: 'End the lesson' }));
  await expect(page.getByText('Lesson given.')).toBeVisible();
  await expect(page.getByText(/effort 7, very hard/)).toBeVisible();
  const load = page.getByRole('region', { name: 'Load', exact: true });
  await expect(load.getByText('420').first()).toBeVisible();
  await expect(load.getByText('What is usual for the student is not known')).toBeVisible();

  await use(page, page.getByRole('button', { name: /^Given.*11:00$/ }));
  await use(page, page.getByRole('button', { name: 'End the lesson' }));
  await expect(load.getByText(/^No rating yet: /)).toBeVisible();
  await expect(load.getByText('Strain'), 'no figure rests on a guess').toHaveCount(0);
  const later = page.getByRole('button', { name: /^Effort.*11:00$/ });
  await use(page, later);
  await tabTo(page, effort);
  await page.keyboard.type('0');
  await use(page, page.getByRole('button', { name: 'Write it down' }));
  await expect(page.getByText('Effort written down, as told.')).toBeVisible();
  await expect(later, 'the focus comes back to where it was').toBeFocused();
  await expect(load.getByText('Strain')).toBeVisible();
  await noFindings(page);
  const rated = await bridge.act('lessons.show', { lesson: lessons[1].id });
  expect(rated.students[0].effort, 'rest is a rating').toBe(0);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(load.getByText(/^No rating yet: /)).toBeVisible();
});
