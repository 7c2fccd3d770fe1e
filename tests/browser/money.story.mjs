// Money by keyboard alone: who issues, a price, a tax; a package sold; what is typed wrong; a payment; a credit note.
import { arrived, expect, noFindings, test, use, write } from './story.mjs';

const HALL = { name: 'Harbour Hall', town: 'Saltmere', zone: 'Europe/Dublin' };

test('a package is sold, paid in part, and credited', async ({ page, openFile, refusal }) => {
  let student;
  await openFile(async (act) => {
    await act('facilities.add', HALL);
    student = (await act('students.add', { name: 'Ana <i>Silva</i>' })).id;
  }, '#/');
  await use(page, page.getByRole('link', { name: 'Money', exact: true }));
  await arrived(page, 'Money');
  await expect(page.getByText('Nobody owes you anything.')).toBeVisible();
  await noFindings(page);

  // A draft says what it lacks; each of it is a way to where it is set.
  await page.evaluate((to) => (location.hash = to), `#/people/${student}`);
  await arrived(page, 'Ana <i>Silva</i>');
  await use(page, page.getByRole('button', { name: 'Sell a package' }));
  const dialog = page.getByRole('dialog');
  await write(page, dialog.getByLabel(/^Lessons/), '10');
  await write(page, dialog.getByLabel(/^Currency/), 'euro');
  await write(page, dialog.getByLabel(/^Good until/), '1 1 2020');
  await noFindings(page);
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Put it on a draft' }));
    await expect(dialog.getByText(/“euro” is no currency/).first()).toBeVisible();
    await expect(dialog.getByText('It would run out before it is sold.').first()).toBeVisible();
  });
  await expect(dialog.getByLabel(/^Lessons/), 'what was typed stays').toHaveValue('10');
  await write(page, dialog.getByLabel(/^Currency/), 'EUR');
  await write(page, dialog.getByLabel(/^Price of all/), '476');
  await write(page, dialog.getByLabel(/^Good until/), '1 1 2099');
  await page.keyboard.press('Enter');
  await arrived(page, 'Draft');
  const missing = page.getByRole('list', { name: 'What is missing' });
  await expect(missing.getByRole('listitem')).toHaveCount(3);
  await noFindings(page);

  await use(page, missing.getByRole('link', { name: /^Set it ?: Who issues it/ }));
  await arrived(page, 'Invoices and terms');
  const issues = page.getByRole('region', { name: 'Who issues' });
  await write(page, issues.getByLabel(/^Name/), 'Robin Hale');
  await write(page, issues.getByLabel(/^Bank account/), 'DE33100205000001194701');
  await refusal(async () => {
    await use(page, issues.getByRole('button', { name: 'Keep it' }));
    await expect(issues.getByText(/is no IBAN/).first()).toBeVisible();
    await expect(issues.getByText('The address is empty.').first()).toBeVisible();
  });
  await write(page, issues.getByLabel(/^Bank account/), 'DE33100205000001194700');
  await write(page, issues.getByLabel(/^Postal address/), '7 Net Loft');
  await use(page, issues.getByRole('button', { name: 'Keep it' }));
  await expect(page.getByText('Kept.')).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('link', { name: 'Prices and tax' }));
  await arrived(page, 'Prices');
  await use(page, page.getByRole('button', { name: 'Set a tax' }));
  await dialog.getByLabel(/^Tax/).selectOption('E');
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Set it' }));
    await expect(dialog.getByText(/Say why no tax is charged/).first()).toBeVisible();
  });
  await write(page, dialog.getByLabel(/^Why no tax/), 'Small business');
  await page.keyboard.press('Enter');
  await expect(
    page.getByRole('list', { name: 'Taxes' }).getByText('Every kind of line', { exact: true }),
  ).toBeVisible();
  await noFindings(page);

  await page.evaluate(() => (location.hash = '#/money/payers'));
  await arrived(page, 'Who pays');
  await use(page, page.getByRole('link', { name: 'Ana <i>Silva</i>' }));
  await arrived(page, 'Ana <i>Silva</i>');
  await use(page, page.getByRole('button', { name: 'Name and address' }));
  await write(page, dialog.getByLabel(/^Postal address/), '2 Mole Road');
  await use(page, dialog.getByRole('button', { name: 'Keep it' }));
  await expect(dialog).toHaveCount(0);
  await use(page, page.getByRole('link', { name: 'Draft' }));
  await arrived(page, 'Draft');
  await use(page, page.getByRole('button', { name: 'Issue it' }));
  await noFindings(page);
  await use(page, dialog.getByRole('button', { name: 'Issue it' }));
  await arrived(page, /^\d{4}-0001$/);
  await expect(page.getByRole('button', { name: 'Discard' }), 'what was issued does not go').toHaveCount(0);
  await noFindings(page);

  await use(page, page.getByRole('button', { name: 'Enter a payment' }));
  await write(page, dialog.getByLabel(/^Amount/), '1.234,50');
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Enter the payment' }));
    await expect(dialog.getByText(/one point or comma only/).first()).toBeVisible();
  });
  await write(page, dialog.getByLabel(/^Amount/), '200');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/276\.00 EUR of 476\.00 EUR open/)).toBeVisible();

  await use(page, page.getByRole('link', { name: /^Package ?:/ }));
  await arrived(page, 'Package of 10 lessons');
  await noFindings(page);
  await use(page, page.getByRole('button', { name: 'Give back' }));
  await expect(dialog.getByText(/comes to 476\.00 EUR/)).toBeVisible();
  await write(page, dialog.getByLabel(/^Reason/), 'Moves away');
  await use(page, dialog.getByRole('button', { name: 'Issue the credit note' }));
  await arrived(page, /^\d{4}-0002$/);
  await expect(page.getByText(/corrects \d{4}-0001/)).toBeVisible();
  await use(page, page.getByRole('link', { name: /Ana <i>Silva<\/i>/ }).first());
  await arrived(page, 'Ana <i>Silva</i>');
  await expect(page.getByText('200.00 EUR to pay back')).toBeVisible();
  await noFindings(page);
  await page.evaluate(() => (location.hash = '#/money/year'));
  await arrived(page, /in money$/);
  await expect(page.getByRole('region', { name: 'EUR' })).toBeVisible();
  await noFindings(page);
});

test('lessons are settled with one key, and otherwise with a reason', async ({ page, openFile, refusal }) => {
  const day = (days) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
  await openFile(async (act) => {
    const hall = await act('facilities.add', HALL);
    const student = await act('students.add', { name: 'Ana Silva' });
    const visit = await act('visits.plan', {
      student: student.id,
      facility: hall.id,
      first_day: day(-5),
      last_day: day(2),
    });
    await act('visits.open', { visit: visit.id });
    await act('prices.add', { price: { what: 'lesson', minutes: 60, currency: 'EUR', amount: '55' } });
    for (const ago of [4, 3]) {
      const lesson = await act('lessons.plan', {
        visits: [visit.id],
        facility: hall.id,
        day: day(-ago),
        starts: '09:00',
        minutes: 60,
      });
      if (ago === 4) await act('lessons.give', { lesson: lesson.id });
      else await act('lessons.call_off', { lesson: lesson.id, reason: 'Ill' });
    }
  }, '#/money');
  await use(page, page.getByRole('link', { name: 'Settle' }));
  await arrived(page, 'Settle lessons');
  await noFindings(page);
  await use(page, page.getByRole('button', { name: 'Settle 1 lesson as proposed' }));
  const list = page.getByRole('list', { name: 'Lessons to settle' });
  await expect(list.getByRole('listitem')).toHaveCount(1);
  await use(page, list.getByRole('button', { name: /^Say how/ }));
  const dialog = page.getByRole('dialog');
  await noFindings(page);
  await use(page, dialog.getByRole('button', { name: 'Settle it' }));
  await expect(dialog.getByText('Choose how it is settled.').first()).toBeVisible();
  await dialog.getByLabel('nothing is charged').check();
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Settle it' }));
    await expect(dialog.getByText(/Say why it is settled so/).first()).toBeVisible();
  });
  await write(page, dialog.getByLabel(/^Reason/), 'She was in hospital');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Every lesson is settled.')).toBeVisible();
  await noFindings(page);
});

test('something is taken off the whole, a file lies inside, a reminder is written', async ({
  page,
  openFile,
  refusal,
}) => {
  const day = (days) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
  let draft;
  await openFile(async (act) => {
    await act('invoices.set_seller', {
      name: 'Robin Hale',
      address: '7 Net Loft',
      country: 'IE',
      vat_id: 'IE1234567T',
      account: 'DE33100205000001194700',
    });
    const payer = await act('payers.add', {
      payer: { name: 'Ana Silva', address: '2 Mole Road', country: 'IE' },
    });
    draft = await act('invoices.draft', {
      payer: payer.id,
      currency: 'EUR',
      lines: [
        { what: 'lesson', words: 'Lesson', price: '119', day: day(-40), tax: { category: 'S', rate: '19' } },
      ],
    });
  }, '#/money');
  await page.evaluate((to) => (location.hash = to), `#/money/invoices/${draft.id}`);
  await arrived(page, 'Draft');
  await expect(page.getByText(/It will lie inside the document/)).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Off or on the whole' }));
  const dialog = page.getByRole('dialog');
  await use(page, dialog.getByRole('button', { name: 'Add: amount' }));
  await write(page, dialog.getByLabel(/^Amount/), '11,90');
  await noFindings(page);
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Keep it' }));
    await expect(dialog.getByText('The reason is empty.').first()).toBeVisible();
  });
  await expect(dialog.getByLabel(/^Amount/), 'what was typed stays').toHaveValue('11,90');
  await write(page, dialog.getByLabel(/^Why/), 'Long-standing guest');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('list', { name: 'Sums' }).getByText('107.10')).toBeVisible();

  await use(page, page.getByRole('button', { name: 'Issue it' }));
  const typed = (iso) => iso.split('-').reverse().map(Number).join(' ');
  await write(page, dialog.getByLabel(/^Day of issue/), typed(day(-40)));
  await write(page, dialog.getByLabel(/^To be paid by/), typed(day(-30)));
  await use(page, dialog.getByRole('button', { name: 'Issue it' }));
  await arrived(page, /^\d{4}-0001$/);
  await expect(page.getByText(/30 days late/).first()).toBeVisible();
  await expect(page.getByRole('button', { name: 'Save as UBL' })).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('button', { name: 'Write a reminder' }));
  await expect(dialog.getByText(/107\.10\s+EUR open, 30 days late/)).toBeVisible();
  await write(page, dialog.getByLabel(/^Words of your own/), 'See you in spring.');
  await noFindings(page);
  await use(page, dialog.getByRole('button', { name: 'Write it' }));
  const reminders = page.getByRole('list', { name: 'Reminders' });
  await expect(reminders.getByText(/107\.10 EUR open, to be paid by/).first()).toBeVisible();
  await noFindings(page);
});
