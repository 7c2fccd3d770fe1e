// A day by keyboard alone: from the day sheet to the court, the decisions and the closed visit.
import { returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, stillThere, tabTo, test, use, write } from './story.mjs';

test('a visit is started, its lesson planned, its goals tested and decided, and it is closed', async ({
  page,
  openFile,
  bridge,
}) => {
  const { student, visit, wall } = await openFile(returningStudent);
  const button = (name) => page.getByRole('button', { name });
  const dialog = (name) => page.getByRole('dialog', { name });
  const stage = async () => (await bridge.act('visits.show', { visit })).stage;

  await use(page, button(/^Start the visit/));
  await arrived(page, 'Zoë Łukasiewicz');
  expect(await stage(), 'the day sheet started it').toBe('open');

  await use(page, button('Plan a lesson'));
  await expect(dialog('Plan a lesson').getByLabel('Day')).toBeFocused();
  await write(page, page.getByLabel('Begins'), '945');
  await tabTo(page, page.getByLabel('Court'));
  await page.keyboard.type('Court 2');
  await expect(dialog('Plan a lesson').getByRole('status')).toContainText('Clashes');
  await expect(dialog('Plan a lesson').getByRole('status')).toContainText('It can be planned all the same.');
  await use(page, button('Plan the lesson'));
  await expect(page.getByText('Lesson planned.')).toBeVisible();
  await expect(button('Plan a lesson'), 'the focus is where it was').toBeFocused();
  const lessons = await bridge.act('lessons.list', { visit });
  expect(lessons.map((l) => [l.starts, l.court_name])).toEqual([
    ['09:30', 'Court 2'],
    ['09:45', 'Court 2'],
  ]);

  await use(page, button(/^Move ?: lesson of .*09:45/));
  await write(page, page.getByLabel('Begins'), '11');
  await use(page, button('Move the lesson'));
  await expect(page.getByText('Lesson moved.')).toBeVisible();
  await expect(button(/^Move ?: lesson of .*11:00/), 'the focus stays with the lesson').toBeFocused();
  await use(page, button(/^Call off ?: lesson of .*11:00/));
  await expect(page.getByLabel('Reason')).toBeFocused();
  await page.keyboard.type('A late flight');
  await use(page, button('Call it off'));
  await expect(page.getByText('Lesson called off.')).toBeVisible();
  await expect(button(/^Call off ?: lesson of .*11:00/)).toHaveCount(0);
  await stillThere(page);
  const off = (await bridge.act('lessons.list', { visit })).find((l) => l.starts === '11:00');
  expect([off.state, off.reason]).toEqual(['called_off', 'A late flight']);

  await use(page, page.getByRole('link', { name: /^Record ?: lesson of .*09:30/ }));
  await arrived(page, 'Zoë Łukasiewicz');
  await page.keyboard.press('t');
  await expect(page.getByLabel('Made of tries')).toBeFocused();
  await page.keyboard.type('9 of 10');
  await tabTo(page, page.getByLabel('Goal'));
  await page.keyboard.type('Backhand');
  await choose(page, page.getByRole('group', { name: 'What it was' }), 'end test');
  await use(page, button('Enter it'));
  await expect(page.getByText('end test entered: 9 of 10')).toBeVisible();
  await stillThere(page);
  await use(page, page.getByRole('link', { name: 'Back to the visit' }));

  await arrived(page, 'Zoë Łukasiewicz');
  await expect(button('Decide as proposed (A)')).toBeVisible();
  await page.keyboard.press('a');
  await expect(page.getByText('Decided as proposed.')).toBeVisible();
  await expect(button('Decide as proposed (A)')).toHaveCount(0);
  await stillThere(page);
  const proposals = await bridge.act('goals.proposals', { visit });
  const decided = proposals.find((p) => p.goal.goal.id === wall);
  expect(decided.decided?.kind, 'a goal met at the end is kept for the next visit').toBe('carry_on');
  await use(page, button('Close the visit'));
  await arrived(page, 'Letter for Zoë Łukasiewicz');
  expect(await stage()).toBe('closed');
  expect((await bridge.act('visits.list', { student })).map((v) => v.stage)).toEqual(['closed', 'closed']);
});
