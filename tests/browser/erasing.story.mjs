// A copy of everything about one person, and erasing all of it, by keyboard alone.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { arrived, expect, noFindings, tabTo, test, use, write } from './story.mjs';

const NAME = 'Quorthwyn Zibelius';

/** Two people at one place: a lesson shared, an offer agreed, a note that names the one who goes. */
async function season(act) {
  const hall = await act('facilities.add', { name: 'Harbour Hall', town: 'Saltmere', zone: 'Europe/Dublin' });
  const goes = await act('students.add', { name: NAME, email: 'q@example.org' });
  const stays = await act('students.add', { name: 'Pia Ortega', about: `Drives with ${NAME}` });
  const days = { facility: hall.id, first_day: '2035-03-03', last_day: '2035-03-05' };
  const visits = [];
  for (const { id } of [goes, stays]) visits.push((await act('visits.plan', { student: id, ...days })).id);
  const lesson = { facility: hall.id, day: '2035-03-03', minutes: 60 };
  await act('lessons.plan', { ...lesson, visits: [visits[0]], starts: '09:00' });
  await act('lessons.plan', { ...lesson, visits, starts: '11:00' });
  await act('offers.set_terms', { currency: 'EUR', fees: [{ minutes: 60, amount: '40' }], terms: '' });
  const offer = await act('offers.make', { visit: visits[0], words: 'Dear Quorthwyn, …' });
  await act('offers.answer', { offer: offer.id, agreed: true });
  return { goes: goes.id, stays: stays.id };
}

test('a person takes a copy along and is erased without a pointer', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { goes, stays } = await openFile(
    async (act) => {
      const made = await season(act);
      await act('desk.back_up', {});
      return made;
    },
    ({ goes }) => `#/people/${goes}`,
  );
  await use(page, page.getByRole('link', { name: 'Copy or erase' }));
  await arrived(page, 'Copy or erase');
  const kept = page.getByRole('list', { name: 'What is kept' });
  await expect(kept.getByText('2 lessons', { exact: true })).toBeVisible();
  await expect(kept.getByText('1 offer', { exact: true })).toBeVisible();
  const mentions = page.getByRole('list', { name: 'Records that name them' });
  await expect(mentions.getByRole('link', { name: 'Profile, Pia Ortega' })).toHaveAttribute(
    'href',
    `#/people/${stays}`,
  );
  await expect(page.getByRole('list', { name: 'Copies that hold them' }).getByRole('listitem')).toHaveCount(
    1,
  );
  await noFindings(page);

  await use(page, page.getByRole('button', { name: 'Save a copy' }));
  await expect(page.getByRole('status').filter({ hasText: 'Saved in' })).toBeVisible();
  await expect(page.getByRole('list', { name: 'Documents on this machine' })).toBeVisible();
  const copies = join(bridge.folder, 'Copies for students');
  const [of] = readdirSync(copies);
  expect(readdirSync(join(copies, of)).sort()).toEqual([`${of}.json`, `${of}.txt`]);
  const text = readFileSync(join(copies, of, `${of}.txt`), 'utf8');
  const whole = text + readFileSync(join(copies, of, `${of}.json`), 'utf8');
  expect(text).toContain(`What is kept about ${NAME}`);
  expect(text).toContain('Harbour Hall');
  expect(whole, 'someone else’s name from a shared lesson is not in it').not.toContain('Pia');

  // A slip erases nobody: what is wrong stands at its field, which has the focus.
  await write(page, page.getByLabel('Type the full name'), 'Quorthwyn');
  await refusal(async () => {
    await page.keyboard.press('Enter');
    await expect(page.getByLabel('Type the full name')).toBeFocused();
    await expect(page.getByLabel('Type the full name')).toHaveAttribute('aria-invalid', 'true');
  });
  await expect(page.getByText('This is not the student’s full name.').first()).toBeVisible();
  expect((await bridge.act('students.list')).length).toBe(2);

  await expect(page.getByLabel('Keep what the accounts need')).toBeChecked();
  await write(page, page.getByLabel('Keep it until'), '31 12 2041');
  await write(page, page.getByLabel(/^Why it is kept/), 'For the tax office.');
  await write(page, page.getByLabel('Type the full name'), NAME);
  await tabTo(page, page.getByRole('button', { name: 'Erase everything about them' }));
  await page.keyboard.press('Enter');
  await arrived(page, 'People');
  const said = page.getByRole('status').filter({ hasText: 'Everything about this person is erased' });
  await expect(said).toContainText('1 copy of the file holds this person still');
  await expect(said).toContainText('1 other record still has the name.');
  await expect(page.getByRole('button', { name: 'Undo' }), 'it cannot be undone').toHaveCount(0);
  await expect(page.getByRole('link', { name: 'Pia Ortega' })).toBeVisible();
  await expect(page.getByRole('link', { name: NAME })).toHaveCount(0);

  await page.goto(bridge.address + '#/coach');
  const accounts = page.getByRole('list', { name: 'Kept for the accounts' });
  await expect(accounts.getByText('kept until 31 December 2041')).toBeVisible();
  await expect(accounts.getByRole('button'), 'not before its day').toHaveCount(0);
  await write(page, page.getByLabel('Months a backup is kept'), 'a year');
  await refusal(async () => {
    await page.keyboard.press('Enter');
    await expect(page.getByLabel('Months a backup is kept')).toHaveAttribute('aria-invalid', 'true');
  });
  await write(page, page.getByLabel('Months a backup is kept'), '6');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('status').filter({ hasText: 'is noted' })).toBeVisible();
  expect((await bridge.act('erasing.backups')).months).toBe(6);
  const checked = await bridge.act('desk.check');
  expect(checked.wrong).toEqual([]);
});

test('nobody is erased while a visit is open', async ({ page, openFile }) => {
  await openFile(
    async (act) => {
      const made = await season(act);
      const [visit] = await act('visits.list', { student: made.goes });
      await act('visits.open', { visit: visit.id });
      return made;
    },
    ({ goes }) => `#/people/${goes}/record`,
  );
  await expect(page.getByText(/is open .* Close it first/)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Erase everything about them' })).toHaveCount(0);
  await noFindings(page);
});
