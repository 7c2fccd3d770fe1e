// How long things are kept, by keyboard alone: numbers that are none, what is over on the day sheet, a report and health
// answers erased.
import { arrived, expect, noFindings, test, use, write } from './story.mjs';

/** Someone who asked in 2020, someone with health answers of 2020, and a report about a bystander. */
async function longAgo(act) {
  await act('students.add', { name: 'Ana Reis', enquired: '2020-02-28' });
  const ines = await act('students.add', { name: 'Ines Okafor' });
  await act('intake.note_injury', {
    student: ines.id,
    kind: 'injury',
    words: 'Left knee <i>old</i>',
    since: '2020-03-10',
    asks: false,
  });
  const report = {
    person: 'Tomas Vale',
    role: 'bystander',
    day: '2020-03-10',
    happened: 'A ball hit his arm.',
    called: 'no',
    head: 'no',
    author: 'Nuala Byrne',
  };
  const incident = await act('intake.record_incident', { report });
  return { ines: ines.id, incident: incident.id };
}

test('what is kept too long is told of, and goes by hand', async ({ page, openFile, bridge, refusal }) => {
  await openFile(longAgo, '#/coach');
  await use(page, page.getByRole('link', { name: 'How long', exact: true }));
  await arrived(page, 'How long things are kept');
  await expect(page.getByText('Nothing is kept longer than you said.')).toBeVisible();
  await write(page, page.getByLabel(/^Health answers/), 'a year');
  await refusal(async () => {
    await page.keyboard.press('Enter');
    await expect(page.getByLabel(/^Health answers/)).toHaveAttribute('aria-invalid', 'true');
  });
  await expect(page.getByLabel(/^Health answers/), 'what was typed stays').toHaveValue('a year');
  await write(page, page.getByLabel(/^Health answers/), '12');
  await write(page, page.getByLabel(/^Incident reports/), '36');
  await write(page, page.getByLabel(/^Someone who asked/), '6');
  await page.keyboard.press('Enter');
  const over = page.getByRole('list', { name: 'Over' });
  await expect(over.getByRole('listitem')).toHaveCount(3);
  await expect(over.getByText('What was asked: Ana Reis', { exact: true })).toBeVisible();
  await noFindings(page);

  await page.goto(`${bridge.address}#/`);
  await expect(page.getByText('Health answers of Ines Okafor: the time is over.').first()).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('link', { name: /^Look at it ?: The incident report/ }));
  await arrived(page, 'How long things are kept');
  await use(page, page.getByRole('link', { name: /^Look at it ?: Incident report/ }));
  await arrived(page, 'Incident: Tomas Vale');
  await use(page, page.getByRole('button', { name: 'Erase it' }));
  await noFindings(page);
  await use(page, page.getByRole('dialog').getByRole('button', { name: 'Erase it' }));
  await arrived(page, 'Incidents');
  expect(await bridge.act('intake.incidents')).toEqual([]);

  await page.goto(`${bridge.address}#/`);
  await use(page, page.getByRole('link', { name: /^Look at it ?: Health answers/ }));
  await arrived(page, 'Copy or erase');
  await expect(page.getByText('Health answers: until 10 March 2021.')).toBeVisible();
  await expect(page.getByText('1 injury or restriction can go alone')).toBeVisible();
  await noFindings(page);
  const typed = page.getByLabel('Type the full name').first();
  await write(page, typed, 'Ines');
  await refusal(async () => {
    await page.keyboard.press('Enter');
    await expect(typed).toHaveAttribute('aria-invalid', 'true');
  });
  await write(page, typed, 'Ines Okafor');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('status').filter({ hasText: 'Erased, out of the history too' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo' }), 'it cannot be undone').toHaveCount(0);
  expect((await bridge.act('keeping.due')).map((due) => due.name)).toEqual(['Ana Reis']);
  expect((await bridge.act('desk.check')).wrong).toEqual([]);
});

test('an enquiry is marked in the list of people, and the questions can be printed', async ({
  page,
  openFile,
}) => {
  await openFile(longAgo, '#/people');
  await expect(page.getByRole('link', { name: 'Ana Reis, asked 28 February 2020' })).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('link', { name: 'Add a student' }));
  await arrived(page, 'Add a student');
  await expect(page.getByRole('button', { name: 'Print the questions, blank' })).toBeVisible();
});
