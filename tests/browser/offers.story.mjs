// The offer by keyboard alone: rates and terms, the message changed and kept word for word, the answer, what
// changed since, and the invitations that are due.
import { arrived, choose, expect, noFindings, stillThere, tabTo, test, use, write } from './story.mjs';

async function planned(act) {
  const settings = await act('settings.show', {});
  await act('settings.change', { ...settings, name: 'Robin Hale', email: 'robin@example.org' });
  const { id: facility } = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
  const { courts } = await act('facilities.add_court', { facility, name: 'Court 1' });
  await act('facilities.set_rules', { facility, rules: { currency: 'EUR', rates: [{ hour: '18' }] } });
  const student = await act('students.add', { name: 'Ana Prior', email: 'ana@example.org' });
  const days = { first_day: '2099-03-10', last_day: '2099-03-11' };
  const visit = await act('visits.plan', { student: student.id, facility, ...days });
  const slot = { facility, court: courts[0].id, day: '2099-03-10', starts: '09:00', minutes: 60 };
  const lesson = await act('lessons.plan', { visits: [visit.id], ...slot });
  return { visit: visit.id, lesson: lesson.id, slot };
}

test('rates and terms are written down, refused where they are wrong', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  await openFile(planned, '#/coach');
  await use(page, page.getByRole('link', { name: 'Rates and terms' }));
  await arrived(page, 'Rates and terms');
  await write(page, page.getByLabel('Currency'), 'gold');
  await use(page, page.getByRole('button', { name: 'Add: rate' }));
  await page.keyboard.type('60');
  await write(page, page.getByLabel('Price'), '40');
  await write(page, page.getByLabel('Your terms'), 'A day before at the latest.');
  await refusal(() => use(page, page.getByRole('button', { name: 'Keep them' })));
  await expect(page.getByLabel('Currency'), 'the first wrong field has the focus').toBeFocused();
  await expect(page.getByLabel('Your terms')).toHaveValue('A day before at the latest.');
  await write(page, page.getByLabel('Currency'), 'eur');
  await use(page, page.getByRole('button', { name: 'Keep them' }));
  await expect(page.getByText('Rates and terms are kept.')).toBeVisible();
  await noFindings(page);
  expect(await bridge.act('offers.terms')).toEqual({
    currency: 'EUR',
    fees: [{ minutes: 60, amount: '40.00' }],
    terms: 'A day before at the latest.',
  });
});

test('a visit is offered, agreed, and what changed since stands there', async ({
  page,
  openFile,
  bridge,
}) => {
  const { visit, lesson, slot } = await openFile(planned, ({ visit }) => `#/visits/${visit}`);
  const offer = page.getByRole('region', { name: 'Offer' });
  await expect(offer).toContainText('Nothing was offered yet.');
  await use(page, page.getByRole('button', { name: 'Write the offer' }));
  const dialog = page.getByRole('dialog');
  const message = dialog.getByLabel('The message');
  await expect(message).toHaveValue(
    /Tuesday 10 March 2099, 09:00 to 10:00, Court 1: 18.00 EUR for the court/,
  );
  await expect(dialog).toContainText('A rate for a lesson of this length');
  await noFindings(page);
  await tabTo(page, message);
  await page.keyboard.press('ControlOrMeta+End');
  await page.keyboard.type(' & all <b>bold</b>');
  await use(page, dialog.getByRole('button', { name: 'Note it as offered' }));
  await expect(offer).toContainText('no answer yet.');
  await stillThere(page);
  const [made] = (await bridge.act('offers.list', { visit })).offers;
  expect(made.words, 'kept word for word').toMatch(/ & all <b>bold<\/b>$/);

  await use(page, page.getByRole('button', { name: 'The answer' }));
  await choose(page, dialog.getByRole('group', { name: 'The student' }), 'agreed');
  await write(page, dialog.getByLabel('What was said'), 'Looking forward');
  await use(page, dialog.getByRole('button', { name: 'Note the answer' }));
  await expect(offer).toContainText('Agreed on');
  await expect(offer).toContainText('Looking forward');

  await bridge.act('lessons.change', { lesson, ...slot, starts: '11:00' });
  await page.reload();
  await expect(offer).toContainText('Changed since it was agreed');
  await expect(offer).toContainText('is now on Tuesday 10 March 2099, 11:00 to 12:00.');
  const invitations = page.getByRole('region', { name: 'Invitations' });
  await expect(invitations).toContainText('Invite to the lesson on Tuesday 10 March 2099, 11:00.');
  await noFindings(page);
  await use(page, invitations.getByRole('button', { name: 'Write them' }));
  await expect(invitations).toContainText('Every lesson was invited to as it stands.');
  await stillThere(page);
});
