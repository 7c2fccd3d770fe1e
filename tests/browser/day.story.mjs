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
  await expect(button('Enter a total'), 'what is missing before court was looked at').toBeVisible();
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

test('a visit is planned, given other days and called off, and another only expected', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { student } = await openFile(
    async (act) => {
      await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
      return { student: (await act('students.add', { name: 'Pia Ortega' })).id };
    },
    ({ student }) => `#/people/${student}`,
  );
  const visits = async () =>
    (await bridge.act('visits.list', { student })).map((v) => [v.stage, v.days?.first, v.days?.last]);
  const plan = page.getByRole('button', { name: 'Plan a visit' });
  await use(page, plan);
  await stillThere(page);
  await write(page, page.getByLabel('First day'), '12 March 2031');
  await write(page, page.getByLabel('Last day'), '10 March 2031');
  await refusal(() => page.keyboard.press('Enter'));
  await expect(page.getByLabel('Last day'), 'the wrong field has the focus').toBeFocused();
  await expect(page.getByLabel('Last day')).toHaveValue('10 March 2031');
  expect(await visits()).toEqual([]);
  await write(page, page.getByLabel('Last day'), '14 March');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Visit planned.')).toBeVisible();
  await expect(plan).toBeFocused();
  expect(await visits()).toEqual([['planned', '2031-03-12', '2031-03-14']]);

  await use(page, page.getByRole('link', { name: /12.*14 March 2031/ }));
  await arrived(page, 'Pia Ortega');
  const change = page.getByRole('button', { name: 'Change', exact: true });
  await use(page, change);
  await write(page, page.getByLabel('Last day'), '15 March');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Visit changed.')).toBeVisible();
  await expect(change).toBeFocused();
  expect(await visits()).toEqual([['planned', '2031-03-12', '2031-03-15']]);

  const callOff = page.getByRole('button', { name: 'Call it off' });
  await use(page, callOff);
  await expect(page.getByLabel('Reason')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(callOff, 'a form that is left gives the focus back').toBeFocused();
  expect((await visits())[0][0]).toBe('planned');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Reason')).toBeFocused();
  await page.keyboard.type('An injury');
  await use(page, page.getByRole('dialog').getByRole('button', { name: 'Call it off' }));
  await expect(page.getByText('Visit called off.')).toBeVisible();
  await expect(callOff).toHaveCount(0);
  await stillThere(page);
  expect((await visits())[0][0]).toBe('called_off');

  await use(page, page.getByRole('link', { name: '← Pia Ortega' }));
  const expectOne = page.getByRole('button', { name: 'Plan or expect one' });
  await use(page, expectOne);
  await choose(page, page.getByRole('group', { name: 'What is known' }), 'only the month');
  await tabTo(page, page.getByLabel('Month', { exact: true }));
  await page.keyboard.press('ArrowDown');
  await use(page, page.getByRole('button', { name: 'Expect the visit' }));
  await expect(page.getByText('Expected visit noted.')).toBeVisible();
  await expect(expectOne).toBeFocused();
  expect((await visits()).map(([stage]) => stage).sort()).toEqual(['called_off', 'expected']);
});

test('a lesson is given with its note, and a goal decided otherwise', async ({ page, openFile, bridge }) => {
  const { visit, wall } = await openFile(
    async (act) => {
      const made = await returningStudent(act);
      await act('visits.open', { visit: made.visit });
      return made;
    },
    ({ visit }) => `#/visits/${visit}`,
  );
  const button = (name) => page.getByRole('button', { name });
  await use(page, button(/^Given ?: lesson of/));
  await write(page, page.getByLabel('The cue that landed'), 'Wait for it');
  await use(page, button('End the lesson'));
  await expect(page.getByText('Lesson given.')).toBeVisible();
  await expect(button(/^Given ?: lesson of/)).toHaveCount(0);
  await expect(page.locator('li:focus'), 'the focus stays with the lesson').toContainText('09:30');
  const [lesson] = await bridge.act('lessons.list', { visit });
  expect([lesson.state, lesson.landed]).toEqual(['given', 'Wait for it']);
  await page.keyboard.press('Tab');
  await expect(button(/^Note ?: lesson of/), 'the next act of the lesson is the next stop').toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('What was done')).toBeFocused();
  await page.keyboard.type('Serve and return');
  await use(page, button('Write it down'));
  await expect(page.getByText('Lesson note written.')).toBeVisible();
  await expect(button(/^Note ?: lesson of/)).toBeFocused();
  expect((await bridge.act('lessons.list', { visit }))[0].done).toBe('Serve and return');

  await use(page, button(/^Set aside ?: Backhand/));
  await expect(page.getByLabel('Reason')).toBeFocused();
  await page.keyboard.type('The serve first');
  await use(page, button('Set it aside'));
  await expect(
    page.getByRole('status').filter({ hasText: 'Set aside: Backhand off the back wall' }),
  ).toBeVisible();
  expect((await bridge.act('goals.show', { goal: wall })).standing.state).toBe('set_aside');
  await stillThere(page);
});

test('a student is put away and brought back, and the focus stays in its part', async ({
  page,
  openFile,
  bridge,
}) => {
  const { student } = await openFile(returningStudent, ({ student }) => `#/people/${student}`);
  const part = page.getByRole('heading', { level: 2, name: 'Who it is' });
  const archived = async () => (await bridge.act('students.show', { student })).archived;
  expect(await archived()).toBeNull();
  await use(page, page.getByRole('button', { name: 'Put away', exact: true }));
  await expect(page.getByText('Zoë Łukasiewicz put away.')).toBeVisible();
  await expect(part).toBeFocused();
  expect(await archived()).not.toBeNull();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Bring back' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Zoë Łukasiewicz brought back.')).toBeVisible();
  await expect(part).toBeFocused();
  expect(await archived()).toBeNull();
});
