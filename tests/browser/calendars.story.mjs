// The coach's calendars by keyboard alone: a file that is read, and a real server on loopback kept in step while
// another client of it, and a lost server, come between.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { account, eventText, startRadicale } from '../world/radicale.mjs';
import { arrived, choose, expect, noFindings, stillThere, test, use, write } from './story.mjs';

async function lesson(act) {
  const { id: facility } = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
  const student = await act('students.add', { name: 'Ana <b>Prior</b>' });
  const today = (await act('desk.look')).today;
  const later = new Date(`${today}T12:00:00Z`);
  later.setUTCDate(later.getUTCDate() + 20);
  const day = later.toISOString().slice(0, 10);
  const visit = await act('visits.plan', { student: student.id, facility, first_day: day, last_day: day });
  const made = await act('lessons.plan', {
    visits: [visit.id],
    facility,
    day,
    starts: '09:00',
    minutes: 60,
  });
  return { lesson: made.id, facility, day };
}

test('a calendar file is read, a broken one told of, and taken out', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { day } = await openFile(lesson, '#/coach/calendars');
  await expect(page.getByText('None was read.')).toBeVisible();
  await noFindings(page);
  const chosen = join(bridge.folder, 'chosen.ics');
  const start = day.replaceAll('-', '');
  const text = eventText('1@phone', [
    'SUMMARY:Dentist',
    `DTSTART:${start}T120000Z`,
    `DTEND:${start}T130000Z`,
  ]);
  writeFileSync(chosen, text);
  await use(page, page.getByRole('button', { name: 'Read a calendar file' }));
  const files = page.getByRole('region', { name: 'Calendar files' });
  await expect(files).toContainText('1 event; its times are known until');
  await stillThere(page);

  writeFileSync(chosen, text.slice(0, 120));
  const again = files.getByRole('button', { name: /^Read it again/ });
  await refusal(() => use(page, again));
  await expect(files).toContainText('The file breaks off at line');
  await expect(files).toContainText('1 event; its times are known until');
  writeFileSync(chosen, Buffer.alloc(21 * 1024 * 1024, 'x'));
  await refusal(() => use(page, again));
  await expect(files).toContainText('This file has 21 MB; a calendar of more than 20 MB is not read.');
  await noFindings(page);

  await use(page, files.getByRole('button', { name: /^Take out/ }));
  await expect(page.getByText('None was read.')).toBeVisible();
});

test('a server is chosen, lessons go out, changes there are decided about here', async ({
  page,
  openFile,
  bridge,
}) => {
  const server = await startRadicale();
  try {
    const made = await openFile(lesson, '#/coach/calendars');
    const there = page.getByRole('region', { name: 'On a server' });
    await use(page, there.getByRole('button', { name: 'Choose a server' }));
    const dialog = page.getByRole('dialog');
    await noFindings(page);
    await write(page, dialog.getByLabel('Address'), 'http://calendar.example.org/');
    await write(page, dialog.getByLabel('Name'), account.user);
    await write(page, dialog.getByLabel('Password'), 'wrong');
    await page.keyboard.press('Enter');
    await expect(dialog).toContainText('http:// would send your password unprotected.');
    await write(page, dialog.getByLabel('Address'), server.address);
    await page.keyboard.press('Enter');
    await expect(dialog).toContainText('The server does not take this name and password.');
    await noFindings(page);
    await write(page, dialog.getByLabel('Password'), account.password);
    await page.keyboard.press('Enter');
    const busy = dialog.getByRole('checkbox', { name: 'Private' });
    await expect(busy).toBeVisible();
    await noFindings(page);
    await busy.focus();
    await page.keyboard.press('Space');
    await expect(dialog.getByRole('radio', { name: /^a new calendar/ })).toBeChecked();
    await use(page, dialog.getByRole('button', { name: 'Use these' }));
    await expect(there).toContainText('1 lesson written, 1 calendar read.');
    const calendar = await server.called('Lessons');
    const [path] = await server.paths(calendar);
    expect(await server.ask('GET', path)).toContain('SUMMARY:Lesson: Ana <b>Prior</b>');
    await noFindings(page);

    // On the telephone the lesson moves by an hour, and the dentist takes the afternoon.
    const text = await server.ask('GET', path);
    const moved = text.replaceAll('T090000', 'T110000').replaceAll('T100000', 'T120000');
    await server.ask('PUT', path, moved, { 'content-type': 'text/calendar' });
    const day = made.day.replaceAll('-', '');
    const dentist = ['SUMMARY:Dentist', `DTSTART:${day}T140000Z`, `DTEND:${day}T150000Z`];
    await server.ask('PUT', `${account.user}/private/1.ics`, eventText('1@phone', dentist), {
      'content-type': 'text/calendar',
    });
    await use(page, there.getByRole('button', { name: 'Bring in step now' }));
    const decide = page.getByRole('region', { name: 'To decide' });
    await expect(decide).toContainText('09:00 to 10:00, Harbour Hall · In your calendar');
    await expect(decide).toContainText('11:00 to 12:00, Harbour Hall');
    await expect(there).toContainText('1 event; its times are known until');
    await noFindings(page);
    await page.goto(`${bridge.address}#/`);
    await arrived(page);
    await expect(
      page.getByText('Your calendar says something else of 1 lesson.', { exact: true }),
    ).toBeVisible();
    await use(page, page.getByRole('link', { name: /^Decide/ }));
    await arrived(page);
    await use(page, decide.getByRole('button', { name: /^Move the lesson here too/ }));
    await expect(decide).toHaveCount(0);
    expect((await bridge.act('lessons.show', { lesson: made.lesson })).starts).toBe('11:00');

    // A lesson called off goes out of the calendar by itself when the program begins.
    await bridge.act('lessons.call_off', { lesson: made.lesson, reason: 'ill' });
    await page.reload();
    await expect.poll(() => server.paths(calendar)).toEqual([]);
    await expect(there).toContainText('1 lesson taken out, 1 calendar read.');

    await use(page, there.getByRole('button', { name: 'Leave the server' }));
    await expect(there).toContainText('None was chosen.');
  } finally {
    await server.stop();
  }
});
