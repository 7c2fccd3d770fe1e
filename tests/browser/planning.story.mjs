// Planning by keyboard alone: a wish, the plan with its reasons, what would make room, a lock, a move, and the
// lessons that come of it; the coach's own time.
import { arrived, expect, noFindings, stillThere, tabTo, test, use, write } from './story.mjs';

const RULES = {
  currency: 'EUR',
  hours: [{ opens: '09:00', closes: '13:00' }],
  rates: [{ starts: '09:00', ends: '10:00', hour: '10' }, { hour: '20' }],
  ahead: [{ amount: 7, unit: 'days', opens: '07:00' }],
  grid: 60,
};

/** A hall with a court, and two who come on the same two days in 2099; the second has no wish yet. */
async function two(act) {
  const { id: facility } = await act('facilities.add', {
    name: 'Harbour Hall',
    zone: 'Europe/Dublin',
  });
  await act('facilities.add_court', { facility, name: 'Court 1' });
  await act('facilities.set_rules', { facility, rules: RULES });
  const visits = [];
  for (const name of ['Ana Prior', 'Ben Cole']) {
    const student = await act('students.add', { name });
    const days = { first_day: '2099-03-10', last_day: '2099-03-11' };
    visits.push((await act('visits.plan', { student: student.id, facility, ...days })).id);
  }
  await act('planning.set_wish', {
    visit: visits[0],
    wish: { lessons: 2, arrives: '10:00' },
  });
  return { facility, visits };
}

test('a wish is written down, the plan found and explained, and its lessons made', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { visits } = await openFile(two, ({ visits }) => `#/visits/${visits[1]}`);
  await use(page, page.getByRole('button', { name: 'Write the wish down' }));
  await expect(page.getByLabel('Lessons in all'), 'a form begins at its first field').toBeFocused();
  await page.keyboard.type('lots');
  await write(page, page.getByLabel('Minutes each'), '60');
  await refusal(() => page.keyboard.press('Enter'));
  await expect(page.getByLabel('Lessons in all')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('Lessons in all')).toHaveValue('lots');
  await write(page, page.getByLabel('Lessons in all'), '1');
  await page.keyboard.press('Enter');
  await expect(page.getByText('1 lesson of 60 minutes, at most 1 a day.')).toBeVisible();

  await use(page, page.getByRole('link', { name: 'Plan these days' }));
  await arrived(page, 'Plan for 10 – 11 March 2099');
  await expect(page.getByText('No plan is better in this order of wishes: proven.')).toBeVisible();
  const ana = page.getByRole('region', { name: 'Ana Prior' });
  await expect(ana.getByText('Tue 10 Mar, 10:00 – 11:00 · Court 1, Harbour Hall · 20.00 EUR')).toBeVisible();
  await expect(ana.getByText('Wed 11 Mar, 9:00 – 10:00 · Court 1, Harbour Hall · 10.00 EUR')).toBeVisible();
  const ben = page.getByRole('region', { name: 'Ben Cole' });
  await expect(ben.getByText('Tue 10 Mar, 9:00 – 10:00 · Court 1, Harbour Hall · 10.00 EUR')).toBeVisible();
  await expect(ben.getByText('It can be asked for from Tuesday 3 March 2099, 07:00.')).toBeVisible();
  await noFindings(page);

  // Moved by hand: what speaks against it is said before it is moved.
  await use(page, ben.getByRole('button', { name: /^Move/ }));
  const dialog = page.getByRole('dialog');
  await write(page, dialog.getByLabel('Begins'), '13:00');
  await expect(dialog.getByRole('status')).toContainText('The facility is closed.');
  await page.keyboard.press('Enter');
  await expect(dialog.getByLabel('Begins')).toHaveAttribute('aria-invalid', 'true');
  await write(page, dialog.getByLabel('Begins'), '12');
  await page.keyboard.press('Tab');
  await expect(dialog.getByRole('status')).toContainText('The court costs 20.00 EUR instead of 10.00 EUR.');
  await use(page, dialog.getByRole('button', { name: 'Lock it there' }));
  await expect(ben.getByText('Tue 10 Mar, 12:00 – 13:00 · Court 1')).toBeVisible();
  await expect(ben.getByText('You locked it here.')).toBeVisible();
  await stillThere(page);
  await use(page, ben.getByRole('button', { name: /^Unlock/ }));
  await expect(ben.getByText('Tue 10 Mar, 9:00 – 10:00 · Court 1')).toBeVisible();
  expect(await bridge.act('lessons.list', {}), 'nothing is a lesson yet').toEqual([]);

  // Two plans side by side.
  await use(page, page.getByRole('button', { name: 'Keep it aside' }));
  await tabTo(page, page.getByLabel('First of all'));
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('region', { name: 'Side by side' })).toBeVisible();
  await tabTo(page, page.getByLabel('First of all'));
  await page.keyboard.press('ArrowUp');
  await expect(page.getByText('The lessons are the same.')).toBeVisible();

  await use(page, page.getByRole('button', { name: 'Make these 3 lessons' }));
  await expect(page.getByText('3 lessons planned.')).toBeVisible();
  await expect(ben.getByText('It stands already.')).toBeVisible();
  const lessons = await bridge.act('lessons.list', { visit: visits[1] });
  expect(lessons).toMatchObject([{ day: '2099-03-10', starts: '09:00', court_name: 'Court 1' }]);
});

test('a lesson that two share is wished for, planned, moved and made, by keyboard', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { visits } = await openFile(two, ({ visits }) => `#/visits/${visits[0]}`);
  await use(page, page.getByRole('button', { name: 'Change the wish' }));
  const dialog = page.getByRole('dialog');
  await use(page, dialog.getByRole('button', { name: 'Add: shared lessons' }));
  const row = dialog.getByRole('group', { name: 'Shared lessons 1' });
  await expect(row.getByLabel('So many of them'), 'the new row is at hand').toBeFocused();
  await page.keyboard.type('3');
  await refusal(() => page.keyboard.press('Enter'));
  await expect(row.getByText('Choose who shares them.')).toBeVisible();
  await expect(row.getByLabel('So many of them')).toHaveAttribute('aria-invalid', 'true');
  await write(page, row.getByLabel('So many of them'), '1');
  await tabTo(page, row.getByRole('checkbox', { name: 'Ben Cole' }));
  await page.keyboard.press('Space');
  await noFindings(page);
  await page.keyboard.press('Enter');
  await expect(page.getByText(/1 of them shared with Ben Cole\.$/)).toBeVisible();
  await stillThere(page);

  await use(page, page.getByRole('link', { name: 'Plan these days' }));
  await arrived(page, 'Plan for 10 – 11 March 2099');
  const both = page.getByRole('region', {
    name: 'Ana Prior and Ben Cole, shared',
  });
  await expect(both.getByText(/Court 1, Harbour Hall/)).toBeVisible();
  await expect(page.getByRole('region', { name: 'Ana Prior', exact: true })).toContainText('1 lesson');
  await noFindings(page);
  await use(page, both.getByRole('button', { name: /^Move/ }));
  await write(page, dialog.getByLabel('Begins'), '12');
  await page.keyboard.press('Tab');
  await expect(dialog.getByRole('status')).toContainText('Nothing speaks against it.');
  await use(page, dialog.getByRole('button', { name: 'Lock it there' }));
  await expect(both.getByText(/12:00 – 13:00 · Court 1/)).toBeVisible();
  await expect(both.getByText('You locked it here.')).toBeVisible();

  await use(page, page.getByRole('button', { name: 'Make these 2 lessons' }));
  await expect(page.getByText('2 lessons planned.')).toBeVisible();
  await expect(both.getByText('It stands already.')).toBeVisible();
  const lessons = await bridge.act('lessons.list', { visit: visits[1] });
  expect(lessons, 'one lesson, of both').toMatchObject([
    {
      starts: '12:00',
      students: [{ name: 'Ana Prior' }, { name: 'Ben Cole' }],
    },
  ]);
});

test('a wish that does not fit gets its reasons, and the change that makes room makes it', async ({
  page,
  openFile,
}) => {
  await openFile(
    async (act) => {
      const made = await two(act);
      await act('own_time.set', {
        hours: [{ opens: '10:00', closes: '11:00' }],
      });
      await act('planning.set_wish', {
        visit: made.visits[1],
        wish: { lessons: 1, leaves: '12:00' },
      });
      return made;
    },
    () => '#/plan/2099-03-10/2099-03-11',
  );
  const missing = page.getByRole('region', { name: 'Without a place' });
  await expect(missing).toContainText('while you cannot teach (your own hours)');
  const room = page.getByRole('region', { name: 'What would make room' });
  const change = 'You begin 60 minutes earlier on Tuesday 10 March 2099.';
  await expect(room).toContainText(change);
  await noFindings(page);
  await use(
    page,
    room
      .getByRole('button', { name: `Take it to be so : ${change}` })
      .or(room.getByRole('button', { name: `Take it to be so: ${change}` })),
  );
  await expect(missing).toBeHidden();
  await expect(page.getByText('Change what was only taken to be so first')).toBeVisible();
  await stillThere(page);
  await use(page, page.getByRole('button', { name: /^Take it back/ }));
  await expect(missing).toBeVisible();
});

test('days without a wish say what is missing; days that are none as well', async ({
  page,
  openFile,
  faults,
}) => {
  await openFile(undefined, '#/plan/2099-03-10/2099-03-11');
  await expect(page.getByText('Nobody who comes on these days wishes for lessons yet.')).toBeVisible();
  await page.evaluate(() => (location.hash = '#/plan/2099-02-30/soon'));
  await expect(page.getByText('These are no days.')).toBeVisible();
  expect(faults.splice(0), 'the core refused to plan').toEqual([
    expect.stringMatching(/^console: Failed to load resource: .* 422 /),
  ]);
});

test('the coach’s own time is written down, refused where it is wrong, and kept free', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  await openFile(two, '#/coach');
  await use(page, page.getByRole('link', { name: 'Your own time' }));
  await arrived(page, 'Your own time');
  await use(page, page.getByRole('button', { name: 'Add something' }));
  await page.keyboard.type('League night');
  await tabTo(page, page.getByLabel('How often'));
  await page.keyboard.press('ArrowDown');
  await write(page, page.getByLabel('First day'), '3 March 2099');
  await write(page, page.getByRole('textbox', { name: /^From/ }), '19');
  await write(page, page.getByRole('textbox', { name: /^To/ }), '18');
  await refusal(() => page.keyboard.press('Enter'));
  await expect(page.getByRole('textbox', { name: /^To/ })).toHaveAttribute('aria-invalid', 'true');
  await write(page, page.getByRole('textbox', { name: /^To/ }), '22');
  await page.keyboard.press('Enter');
  await expect(page.getByText('every week on Tuesday, 19:00 to 22:00, from 3 March 2099')).toBeVisible();

  await use(page, page.getByRole('button', { name: 'Add: working time' }));
  await page.keyboard.type('9');
  const row = page.getByRole('group', { name: 'Working time 1' });
  await write(page, row.getByRole('textbox', { name: 'To', exact: true }), '18');
  await write(page, page.getByLabel('Most lessons a day'), '300');
  await write(page, page.getByLabel('Most lessons a week'), '1200');
  await write(page, page.getByLabel('A meal, from'), '12');
  await write(page, page.getByLabel('A meal, to'), '14');
  await write(page, page.getByLabel('Minutes of it'), '150');
  await refusal(() => page.keyboard.press('Enter'));
  await expect(page.getByLabel('Minutes of it')).toHaveAttribute('aria-invalid', 'true');
  await write(page, page.getByLabel('Minutes of it'), '45');
  await use(page, page.getByRole('button', { name: 'Keep this week' }));
  await expect(page.getByText('Your week is kept.')).toBeVisible();
  await stillThere(page);
  await noFindings(page);
  expect(await bridge.act('own_time.show')).toMatchObject({
    hours: [{ opens: '09:00', closes: '18:00' }],
    day_limit: 300,
    week_limit: 1200,
    meal_starts: '12:00',
    meal_ends: '14:00',
    meal_minutes: 45,
  });
  await use(page, page.getByRole('button', { name: /^Take out/ }));
  await expect(page.getByText('League night taken out.')).toBeVisible();
  await stillThere(page);
  expect(await bridge.act('own_time.list')).toEqual([]);
});
