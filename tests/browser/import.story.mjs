// A season kept in a spreadsheet: from the file to the letter.
import { expect, noFindings, test } from './story.mjs';

const CSV = `Name;Arrived;Left;Goal;When;Result
Ana Silva;03/04/2025;05/04/2025;Drive serve;end;8 of 10
"Silva, Ana";14/09/2025;16/09/2025;Drive serve;start;9/10
Ana Silva;14/09/2025;16/09/2025;Drive serve;end;80%
Bo Ek;31/02/2025;;Kill;end;5/10
Anna Silva;03/04/2025;05/04/2025;Drive serve;during;6/10
`;

test('a season comes in with a report, and its letter can be issued', async ({ page, bridge, openFile }) => {
  await openFile((act) => act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' }), '#/import');
  await page
    .getByLabel('Choose a file')
    .setInputFiles({ name: 'season.csv', mimeType: 'text/csv', buffer: Buffer.from(CSV) });
  await expect(page.getByText('a percentage without its number of tries')).toBeVisible();
  await expect(page.getByText('is no day of the calendar')).toBeVisible();
  await noFindings(page);
  const near = page.getByLabel('Ana Silva (line 2) and Anna Silva (line 6)');
  await expect(near, 'near names are two people until the coach says otherwise').toHaveValue('two');
  await near.selectOption('one person: Ana Silva');
  await page.getByRole('button', { name: 'Take 3 lines' }).click();
  await expect(page.getByText('1 student added')).toBeVisible();
  await page.getByRole('link', { name: 'To the people' }).click();
  await page.getByRole('link', { name: 'Ana Silva' }).click();
  await expect(page.getByText('reached again: 9 of 10 before any coaching').first()).toBeAttached();
  const [student] = await bridge.act('students.list', { find: 'Ana' });
  const visits = await bridge.act('visits.list', { student: student.id });
  await page.evaluate((to) => (location.hash = to), `#/letters/${visits.at(-1).id}`);
  await expect(page.getByRole('textbox', { name: 'What you keep' })).toHaveValue(/Drive serve is kept/);
  await page.getByRole('button', { name: 'Issue the letter' }).click();
  await expect(page.getByText('It never changes')).toBeVisible();
});
