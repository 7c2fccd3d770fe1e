// The week, the trip and the year by keyboard alone: from a cell to its lesson, to who comes later, to the hours that
// could still be sold, and from a figure of the year to what it counts.
import { arrived, expect, noFindings, tabTo, test, use } from './story.mjs';

const LONG = 'Wilhelmina <b>van den</b> Oudenhove-Castellammare & Søn';

/** Two facilities on two clocks; three in town in the same week of 2099, one who comes later, one over the year's end. */
async function two(act) {
  const hall = await act('facilities.add', { name: 'Harbour Hall', town: 'Saltmere', zone: 'Europe/Lisbon' });
  const pier = await act('facilities.add', { name: 'Pier Courts', town: 'Farside', zone: 'Europe/Madrid' });
  for (const { id } of [hall, pier]) await act('facilities.add_court', { facility: id, name: 'Court 1' });
  await act('facilities.set_rules', {
    facility: hall.id,
    rules: { hours: [{ opens: '09:00', closes: '13:00' }] },
  });
  await act('facilities.set_rules', {
    facility: pier.id,
    rules: { hours: [{ opens: '20:00', closes: '00:00' }] },
  });
  await act('own_time.set', {
    day_limit: 120,
    ways: [{ one: hall.id, other: pier.id, minutes: 90 }],
  });
  await act('own_time.add', { what: 'Dentist', first: '2099-03-11' });
  const visit = async (name, facility, first_day, last_day) => {
    const { id: student } = await act('students.add', { name });
    return {
      student,
      ...(await act('visits.plan', { student, facility: facility.id, first_day, last_day })),
    };
  };
  const ana = await visit('Ana Prior', hall, '2099-03-09', '2099-03-10');
  const ben = await visit(LONG, pier, '2099-03-10', '2099-03-12');
  const cleo = await visit('Cleo Finch', hall, '2099-12-30', '2100-01-02');
  const lesson = (visits, facility, day, starts) =>
    act('lessons.plan', { visits: visits.map((v) => v.id), facility: facility.id, day, starts, minutes: 60 });
  const first = await lesson([ana], hall, '2099-03-10', '10:00');
  await lesson([ana], pier, '2099-03-10', '13:00');
  await lesson([cleo], hall, '2100-01-02', '10:00');
  return { ana, ben, cleo, first };
}

const cellOf = (page, name, n) => page.getByRole('row').filter({ hasText: name }).getByRole('cell').nth(n);

test('the week shows everyone in words, and is gone through with the arrow keys', async ({
  page,
  openFile,
}) => {
  const { ana } = await openFile(two, '#/week/2099-03-12');
  await expect(
    page.getByRole('heading', { level: 1, name: 'Week of 9 – 15 March 2099' }),
    'any day of it will do',
  ).toBeVisible();
  await expect(page.getByText('Each time is on the clock of its facility')).toBeVisible();
  await expect(page.getByRole('columnheader')).toHaveCount(7);
  const tuesday = cellOf(page, 'Ana Prior', 1);
  await expect(tuesday).toContainText('10:00 – 11:00, Lisbon time');
  await expect(tuesday).toContainText('1 h · Harbour Hall');
  await expect(tuesday).toContainText('13:00 – 14:00, Madrid time');
  await expect(cellOf(page, 'Ana Prior', 0)).toHaveText('in town, no lesson');
  await expect(cellOf(page, 'Ana Prior', 2)).toHaveText('');
  const you = (n) => cellOf(page, 'You', n);
  await expect(you(1)).toContainText('2 h of at most 2 h');
  await expect(you(1), 'two zones are set against each other as the time passes').toContainText(
    'Harbour Hall to Pier Courts: 1 h 30 min, but only 1 h between',
  );
  await expect(you(2)).toContainText('Dentist, all day');
  await expect(page.getByRole('rowheader', { name: LONG })).toBeVisible();
  await noFindings(page);

  // From the head of a day down to what is in it, to the right, and back up.
  await tabTo(page, page.getByRole('link', { name: 'Tue 10 Mar', exact: true }));
  await page.keyboard.press('ArrowDown');
  await expect(you(1).getByRole('link', { name: /^Plan ?: Tue 10 Mar$/ })).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await expect(tuesday.getByRole('link').first()).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await expect(tuesday.getByRole('link').first(), 'nothing is further on').toBeFocused();
  await page.keyboard.press('ArrowLeft');
  await expect(cellOf(page, 'Ana Prior', 0).getByRole('link')).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await arrived(page, 'Ana Prior');
  await expect(page).toHaveURL(new RegExp(`#/visits/${ana.id}$`));
  await page.keyboard.press('Alt+ArrowLeft');
  await expect(tuesday.getByRole('link').first(), 'back where one was').toBeFocused();

  await page.keyboard.press('n');
  await arrived(page, 'Week of 16 – 22 March 2099');
  await expect(page.getByText('Nobody is in town this week.')).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('link', { name: 'On to Wednesday 30 December 2099' }));
  await arrived(page, 'Week of 28 December 2099 – 3 January 2100');
  await expect(cellOf(page, 'Cleo Finch', 5)).toContainText('10:00 – 11:00');
  await page.keyboard.press('Alt+ArrowLeft');
  await expect(page.getByRole('heading', { level: 1, name: 'Week of 16 – 22 March 2099' })).toBeVisible();
  await page.keyboard.press('p');
  await arrived(page, 'Week of 9 – 15 March 2099');
  await use(page, page.getByRole('link', { name: /^That week ?: Cleo Finch, Sat 2 Jan$/ }));
  await arrived(page, 'Week of 28 December 2099 – 3 January 2100');
  await page.keyboard.press('t');
  await arrived(page, /^Week of /);
  await expect(page.getByRole('link', { name: /^On to Monday 9 March 2099/ })).toBeVisible();
  await page.keyboard.press('Alt+8');
  await arrived(page, /^Week of /);
});

test('a trip says where one is, who is there, and what could still be sold', async ({ page, openFile }) => {
  await openFile(async (act) => {
    const made = await two(act);
    await act('planning.set_wish', { visit: made.ana.id, wish: { lessons: 3 } });
  }, '#/week/2099-03-12');
  await use(page, page.getByRole('link', { name: '9 – 12 March 2099' }));
  await arrived(page, 'Trip of 9 – 12 March 2099');
  const places = page.getByRole('list', { name: 'Where' }).getByRole('listitem');
  await expect(places).toHaveCount(2);
  await expect(places.nth(0)).toContainText('Harbour Hall, Saltmere');
  await expect(places.nth(1)).toContainText('Pier Courts, Farside');
  await expect(page.getByRole('list', { name: 'In town' })).toContainText('2 lessons, 2 h · 3 wished for');
  const on = (name) => page.getByRole('region', { name, exact: true });
  await expect(on('Mon 9 Mar')).toContainText('Free: 9:00 – 13:00, Lisbon time');
  await expect(on('Mon 9 Mar')).toContainText('4 h in all, of which limits leave 2 h.');
  await expect(on('Tue 10 Mar')).toContainText('Your limit, or the facility’s, leaves no further lesson.');
  await expect(on('Wed 11 Mar')).toContainText('All hours are taken');
  await expect(on('Thu 12 Mar')).toContainText('Free: 20:00 – midnight, Madrid time');
  await expect(
    page.getByText('No stretch is shorter than 1 h, the shortest lesson of these days.'),
  ).toBeVisible();
  await expect(page.locator('main')).toContainText('4 h could still be sold');
  await noFindings(page);
  await use(page, page.getByRole('link', { name: 'Plan these days' }));
  await arrived(page, 'Plan for 9 – 12 March 2099');
});

test('a visit leads to what is free on its days; days that are none say so', async ({ page, openFile }) => {
  await openFile(two, ({ ben }) => `#/visits/${ben.id}`);
  await use(page, page.getByRole('link', { name: 'What is free then' }));
  await arrived(page, 'Trip of 10 – 12 March 2099');
  const way = page.getByRole('region', { name: 'Tue 10 Mar', exact: true });
  await expect(way).toContainText('Harbour Hall to Pier Courts');
  for (const [address, words] of [
    ['#/trip/2099-02-30/soon', 'These are no days.'],
    ['#/week/2099-02-30', 'This is no day.'],
    ['#/year/2099/3/all/lots', 'This is no figure of a year.'],
  ]) {
    await page.evaluate((to) => (location.hash = to), address);
    await expect(page.getByText(words)).toBeVisible();
  }
});

test('a figure of the year leads to what it counts', async ({ page, openFile, bridge }) => {
  const { ana } = await openFile(two, '#/year/2099');
  await expect(page.getByRole('heading', { level: 1, name: 'Year 2099' })).toBeVisible();
  const row = (name, kind) => page.getByRole('row', { name: new RegExp(`^${name} ${kind}`) });
  await expect(row('Ana Prior', 'visits')).toContainText('1 agreed');
  await expect(page.getByRole('row', { name: /^Everyone visits/ })).toContainText('3 agreed');
  await noFindings(page);
  await use(page, page.getByRole('link', { name: /^2 to come ?, Ana Prior, March 2099$/ }));
  await arrived(page, 'Lessons to come');
  await expect(page.getByText('Ana Prior · March 2099')).toBeVisible();
  const lessons = page.getByRole('list', { name: 'Lessons to come' }).getByRole('listitem');
  await expect(lessons).toHaveCount(2);
  await noFindings(page);
  await use(page, lessons.nth(0).getByRole('link'));
  await expect(page).toHaveURL(new RegExp(`#/visits/${ana.id}$`));
  await page.keyboard.press('Alt+ArrowLeft');
  await page.keyboard.press('Alt+ArrowLeft');
  await expect(page.getByRole('link', { name: /^2 to come ?, Ana Prior, March 2099$/ })).toBeFocused();
  await page.keyboard.press('n');
  await arrived(page, 'Year 2100');
  await expect(page.getByText('1 to come', { exact: false }).first()).toBeVisible();
  await use(page, page.getByRole('link', { name: '2099', exact: true }));
  await arrived(page, 'Year 2099');

  await bridge.act('visits.call_off', { visit: ana.id, reason: 'ill' });
  await page.reload();
  await expect(page.getByRole('row', { name: /^Everyone visits/ })).toContainText('2 agreed');
});

test('forty people in one week stand in one table, and a narrow window does not scroll sideways', async ({
  page,
  openFile,
}) => {
  await openFile(async (act) => {
    const { id: facility } = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Lisbon' });
    for (let n = 0; n < 40; n++) {
      const { id: student } = await act('students.add', { name: `Ana Banto ${String(n).padStart(2, '0')}` });
      const days = { first_day: '2099-03-09', last_day: '2099-03-13' };
      const visit = await act('visits.plan', { student, facility, ...days });
      const starts = `${String(8 + (n % 12)).padStart(2, '0')}:00`;
      await act('lessons.plan', { visits: [visit.id], facility, day: '2099-03-10', starts, minutes: 60 });
    }
  }, '#/week/2099-03-09');
  await expect(page.getByRole('row')).toHaveCount(42);
  await page.setViewportSize({ width: 1024, height: 768 });
  const wide = () =>
    page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(await wide()).toBe(0);
  await noFindings(page);
  await page.evaluate(() => (location.hash = '#/year/2099'));
  await arrived(page, 'Year 2099');
  await expect(page.getByRole('rowheader', { name: 'Ana Banto 39' })).toBeVisible();
  expect(await wide()).toBe(0);
  await page.evaluate(() => (location.hash = '#/trip/2099-03-09/2099-03-13'));
  await arrived(page, 'Trip of 9 – 13 March 2099');
  expect(await wide()).toBe(0);
});
