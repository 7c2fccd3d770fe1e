// The desk by keyboard alone: the first start, the frame around the screens, the coach’s name, a backup, a
// spreadsheet brought in.
import { existsSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { arrived, choose, expect, stillThere, tabTo, test, use, write } from './story.mjs';

test('a new machine: an empty file is named and made, then closed', async ({
  page,
  open,
  bridge,
  refusal,
}) => {
  await open();
  const begin = page.getByRole('button', { name: 'Start an empty file' });
  await use(page, begin);
  await expect(page.getByLabel('Its name')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(begin).toBeFocused();
  await page.keyboard.press('Enter');
  await refusal(() => page.keyboard.press('Enter'));
  await expect(page.getByRole('alert')).toContainText('One answer needs another look');
  await expect(page.getByLabel('Its name')).toBeFocused();
  await page.keyboard.type('Harbour 2026');
  await page.keyboard.press('Enter');
  await expect(page.getByText('This file is still empty.')).toBeVisible();
  await arrived(page);
  expect((await bridge.act('desk.look')).open.name).toBe('Harbour 2026');

  await page.keyboard.press('Alt+7');
  await arrived(page, 'Coach');
  await use(page, page.getByRole('button', { name: 'Close this file' }));
  await arrived(page, 'Welcome');
  expect((await bridge.act('desk.look')).open).toBeNull();
  await use(page, page.getByRole('button', { name: /^Open ?: Harbour 2026$/ }));
  await expect(page.getByText('This file is still empty.')).toBeVisible();
  await arrived(page);
});

test('a new machine: the sample season opens at its title', async ({ page, open, bridge }) => {
  await open();
  await use(page, page.getByRole('button', { name: 'Open the sample season' }));
  await stillThere(page);
  await expect(page.getByText('The sample season: everyone here is invented.')).toBeVisible({
    timeout: 30_000,
  });
  await arrived(page);
  expect((await bridge.act('desk.look')).open.sample).toBe(true);
});

test('a file that could not be chosen leaves the focus where it was', async ({ page, open, bridge }) => {
  await open();
  const choose = page.getByRole('button', { name: 'Choose a file' });
  await use(page, choose);
  await expect(choose).toBeFocused();
  await stillThere(page);
  expect((await bridge.act('desk.look')).open).toBeNull();
});

test('the frame: past the head in one step, Alt and a figure, the keys that work', async ({
  page,
  openFile,
}) => {
  await openFile();
  await page.keyboard.press('Tab');
  const skip = page.getByRole('button', { name: 'To the content' });
  await expect(skip, 'the first stop of all').toBeFocused();
  await expect(skip).toBeInViewport();
  await page.keyboard.press('Enter');
  await arrived(page);
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Add a student' }), 'the next is the first act').toBeFocused();

  for (const [key, name] of [
    ['Alt+2', 'People'],
    ['Alt+3', 'Season'],
    ['Alt+4', 'Places'],
    ['Alt+5', 'Courts'],
    ['Alt+6', 'Letters'],
    ['Alt+7', 'Coach'],
    ['Alt+8', /^Week of /],
    ['Alt+1', /^\w+day /],
  ]) {
    await page.keyboard.press(key);
    await arrived(page, name);
  }
  await page.keyboard.press('Alt+2');
  await arrived(page, 'People');
  await write(page, page.getByLabel('Find', { exact: true }), '?');
  await expect(page.getByRole('dialog'), 'in a field it is a letter').toHaveCount(0);
  await page.keyboard.press('Alt+4');
  await arrived(page, 'Places');
  await use(page, page.getByRole('navigation').getByRole('link', { name: 'Coach' }));
  await arrived(page, 'Coach');

  await page.keyboard.press('?');
  const keys = page.getByRole('dialog', { name: 'Keys' });
  await expect(keys.getByText('Go to Letters')).toBeVisible();
  await page.keyboard.press('Alt+2');
  await expect(keys, 'under a dialog the keys of the screen rest').toBeVisible();
  await page.keyboard.press('Escape');
  await expect(keys).toBeHidden();
  await arrived(page, 'Coach');
});

test('the coach’s name is changed, the file backed up and checked', async ({ page, openFile, bridge }) => {
  await openFile(undefined, '#/coach');
  await write(page, page.getByLabel('Your name'), 'Robin Hale');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Settings changed.')).toBeVisible();
  await expect(page.getByLabel('Your name')).toBeFocused();
  expect((await bridge.act('settings.show')).name).toBe('Robin Hale');

  const backUp = page.getByRole('button', { name: 'Make a backup' });
  await use(page, backUp);
  const said = page.getByText(/^Backup saved and checked: /);
  await expect(said).toBeVisible();
  await expect(backUp).toBeFocused();
  const path = (await said.textContent()).replace('Backup saved and checked: ', '');
  expect(existsSync(path), 'it is there').toBe(true);
  const check = page.getByRole('button', { name: 'Check', exact: true });
  await use(page, check);
  await expect(page.getByText(/^The file is sound: /)).toBeVisible();
  await expect(check).toBeFocused();
  await bridge.act('desk.open', { path });
  expect((await bridge.act('settings.show')).name, 'what was backed up is whole').toBe('Robin Hale');
});

const CSV = `Student;First day;Last day;Goal;Result;Which test
Ana Silva;03/04/2025;05/04/2025;Drive serve;8 of 10;end
Ana Silva;04/09/2025;06/09/2025;Drive serve;9 of 10;start
`;

test('a spreadsheet is read two ways, taken, and undone whole', async ({ page, openFile, bridge }) => {
  await openFile((act) => act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' }), '#/people');
  await use(page, page.getByRole('link', { name: 'Bring in a spreadsheet' }));
  await arrived(page, 'Bring in a spreadsheet');
  const file = page.getByLabel('Choose a file');
  await tabTo(page, file);
  await stillThere(page);
  // What the system's own window gives; it has no part in the page.
  await file.setInputFiles({ name: 'season.csv', mimeType: 'text/csv', buffer: Buffer.from(CSV) });
  await expect(page.getByText('season.csv: 2 lines.')).toBeVisible();
  await expect(file).toBeFocused();
  const dates = page.getByRole('group', { name: /^The dates could be read two ways/ });
  const take = page.getByRole('button', { name: 'Take 2 lines' });
  await choose(page, dates, 'month, day, year');
  await expect(take).toBeVisible();
  // What is pressed while the file is still looked at the other way is done after that.
  await page.route('**/call', async (route) => {
    if (route.request().postDataJSON().input.dates === 'day_month_year') await pause(1500);
    await route.continue();
  });
  await choose(page, dates, 'day, month, year');
  await stillThere(page);
  await use(page, take);
  await expect(page.getByText(/^1 student added/)).toBeVisible();
  await stillThere(page);
  const [ana] = await bridge.act('students.list', { find: 'ana' });
  expect((await bridge.act('visits.list', { student: ana.id })).map((v) => v.days.first)).toEqual([
    '2025-04-03',
    '2025-09-04',
  ]);
  await page.keyboard.press('ControlOrMeta+Z');
  await expect(page.getByText(/^Undone: /)).toBeVisible();
  expect(await bridge.act('students.list'), 'one Undo takes all of it back').toEqual([]);
  await stillThere(page);
});
