// Courts by keyboard alone: asked for with the words for the desk, the answer taken, and a court that no lesson
// needs any more given back.
import { arrived, choose, expect, noFindings, stillThere, test, use, write } from './story.mjs';

async function lesson(act) {
  const { id: facility } = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
  await act('facilities.add_court', { facility, name: 'Court 1' });
  const { courts } = await act('facilities.add_court', { facility, name: 'Court 2' });
  await act('facilities.set_rules', {
    facility,
    rules: { currency: 'EUR', rates: [{ hour: '18' }], release: [{ hours: 24, later: 'full' }] },
  });
  await act('facilities.set_card', { facility, card: { desk: 'Nuala', desk_phone: '555 0100' } });
  const student = await act('students.add', { name: 'Ana Prior' });
  const days = { first_day: '2099-12-10', last_day: '2099-12-11' };
  const visit = await act('visits.plan', { student: student.id, facility, ...days });
  const made = await act('lessons.plan', {
    visits: [visit.id],
    facility,
    court: courts[0].id,
    day: '2099-12-10',
    starts: '09:00',
    minutes: 60,
  });
  return { visit: visit.id, lesson: made.id, facility, court: courts[0].id };
}

test('a court is asked for, confirmed with its reference, and given back once no lesson needs it', async ({
  page,
  openFile,
  bridge,
}) => {
  const made = await openFile(lesson, '#/courts');
  await expect(
    page.getByRole('link', { name: 'Thu 10 Dec, 9:00 – 10:00 · Court 1, Harbour Hall' }),
  ).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('button', { name: /^Words for the desk, 1 court/ }));
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('Hello Nuala,');
  await expect(dialog).toContainText('Thursday 10 December 2099, 09:00 to 10:00, Court 1');
  await expect(dialog).toContainText('To say on the telephone: 555 0100');
  await noFindings(page);
  await use(page, dialog.getByRole('button', { name: 'Note that you asked' }));
  await expect(page.getByText('1 court asked for.')).toBeVisible();
  await stillThere(page);

  await use(page, page.getByRole('button', { name: /^The answer/ }));
  await choose(page, dialog.getByRole('group', { name: 'Can you have it' }), 'yes, confirmed');
  await write(page, dialog.getByLabel('Its reference'), 'H-2041');
  await write(page, dialog.getByLabel('Who answered'), 'Nuala');
  await page.keyboard.press('Enter');
  const confirmed = page.getByRole('region', { name: 'Confirmed' });
  await expect(confirmed).toContainText('H-2041 · by Nuala');
  await expect(confirmed).toContainText('It can be given back free until Wednesday 9 December 2099, 09:00');

  await bridge.act('lessons.call_off', { lesson: made.lesson, reason: 'ill' });
  await page.reload();
  const back = page.getByRole('region', { name: 'To give back' });
  await use(page, back.getByRole('button', { name: /^Given back/ }));
  await expect(page.getByText('Court given back.')).toBeVisible();
  await expect(page.getByText('No lessons to come.')).toBeVisible();
  await stillThere(page);
});

test('a court that is refused is to be asked for again', async ({ page, openFile }) => {
  await openFile(lesson, '#/courts');
  await use(page, page.getByRole('button', { name: /^The answer/ }));
  const dialog = page.getByRole('dialog');
  await choose(page, dialog.getByRole('group', { name: 'Can you have it' }), 'no');
  await expect(dialog.getByLabel('Its reference')).toBeHidden();
  await write(page, dialog.getByLabel('Your note'), 'Only after ten');
  await use(page, dialog.getByRole('button', { name: 'Note the answer' }));
  await expect(page.getByText('Court refused: it is to be asked for anew.')).toBeVisible();
  await expect(page.getByRole('region', { name: 'To ask for now' })).toContainText('Court 1, Harbour Hall');
  await page.keyboard.press('Alt+1');
  await arrived(page, /./);
});

test('a lesson that is moved leads on to whom to tell and which court to give back', async ({
  page,
  openFile,
  bridge,
}) => {
  const made = await openFile(
    async (act) => {
      const made = await lesson(act);
      await act('bookings.confirm', { lesson: made.lesson, reference: 'H-7' });
      const offer = await act('offers.make', { visit: made.visit, words: 'Dear Ana' });
      await act('offers.answer', { offer: offer.id, agreed: true });
      return made;
    },
    ({ visit }) => `#/visits/${visit}`,
  );
  await use(page, page.getByRole('button', { name: /^Move ?: lesson of/ }));
  const dialog = page.getByRole('dialog');
  await write(page, dialog.getByLabel('Begins'), '14:00');
  await use(page, dialog.getByRole('button', { name: 'Move the lesson' }));
  await expect(dialog).toContainText('The lesson is now on Thursday 10 December 2099, 14:00.');
  await expect(dialog).toContainText('Tell Ana Prior');
  await expect(dialog).toContainText('our lesson is now on Thursday 10 December 2099, 14:00 to 15:00');
  await expect(dialog).toContainText('Give back: Court 1 at Harbour Hall, Thursday 10 December 2099, 09:00');
  await expect(dialog).toContainText('It can be given back free until Wednesday 9 December 2099, 09:00');
  await expect(dialog).toContainText('A court is to be asked for at Harbour Hall.');
  await noFindings(page);
  await use(page, dialog.getByRole('button', { name: /^Given back/ }));
  await expect(dialog).not.toContainText('Give back: Court 1');
  await use(page, dialog.getByRole('button', { name: 'That is all' }));
  await expect(dialog).toHaveCount(0);
  await stillThere(page);
  const listed = await bridge.act('bookings.list', { from: '2099-01-01' });
  expect(listed.map((c) => `${c.state} ${c.starts}`)).toEqual(['to_ask 14:00']);
  expect(made.lesson).toBe(listed[0].lesson);
});
