// What a trip earns, by keyboard alone: its result, the tax in a cost, costs passed on to students, and whether a trip
// to come is worth it.
import { arrived, expect, noFindings, test, use, write } from './story.mjs';

const day = (days) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

/** A hall with a price of its hour, two students in town on some days, a price list with tax in it. */
async function season(act, from, to) {
  const hall = await act('facilities.add', {
    name: 'Harbour Hall',
    town: 'Saltmere',
    zone: 'Europe/Dublin',
  });
  await act('facilities.set_rules', {
    facility: hall.id,
    rules: {
      currency: 'EUR',
      rates: [{ hour: '12' }],
      hours: [{ opens: '09:00', closes: '13:00' }],
      grid: 60,
    },
  });
  await act('facilities.add_court', { facility: hall.id, name: 'Court 1' });
  await act('invoices.set_seller', {
    name: 'Robin Hale',
    address: '7 Net Loft',
    tax_id: 'IE 77/123',
    prices: 'gross',
  });
  await act('prices.set_tax', { category: 'S', rate: '19' });
  await act('prices.add', {
    price: { what: 'lesson', minutes: 60, currency: 'EUR', amount: '47.60', since: day(-60) },
  });
  await act('terms.set', { pass_courts: false, due_days: 14 });
  const guests = [];
  for (const name of ['Ana <i>Silva</i>', 'Ben Costa']) {
    const student = await act('students.add', { name });
    const days = { first_day: day(from), last_day: day(to) };
    const visit = await act('visits.plan', { student: student.id, facility: hall.id, ...days });
    guests.push({ student: student.id, visit: visit.id });
  }
  const lesson = (guest, on, starts, minutes = 60) =>
    act('lessons.plan', { visits: [guest.visit], facility: hall.id, day: day(on), starts, minutes });
  return { hall, guests, lesson };
}

test('a trip says what it earned, and its costs are passed on', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  await openFile(
    async (act) => {
      const { guests, lesson } = await season(act, -6, -4);
      for (const [n, guest] of guests.entries()) {
        const { id } = await lesson(guest, -5, `${String(9 + n).padStart(2, '0')}:00`);
        await act('lessons.give', { lesson: id });
        await act('accounts.settle', { lessons: [{ lesson: id, student: guest.student, how: 'invoice' }] });
      }
    },
    `#/trip/${day(-6)}/${day(-4)}`,
  );
  const earned = page.getByRole('region', { name: 'What it earned' });
  await expect(earned).toContainText('2 lessons given, 2 h on court.');
  await expect(earned).toContainText('counted as 3 whole days of 24 hours');
  const euros = earned.getByRole('list', { name: 'What it earned, EUR' });
  await expect(euros.getByRole('listitem').filter({ hasText: 'expected on top' })).toContainText('80.00');

  // A cost, with the tax in it.
  await use(page, page.getByRole('button', { name: 'Note a cost' }));
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel(/^Kind/).selectOption('lodging');
  await write(page, dialog.getByLabel(/^What it was for/), 'Harbour <b>Inn</b>');
  await write(page, dialog.getByLabel(/^Amount/), '100.01');
  await write(page, dialog.getByLabel(/^Currency/), 'EUR');
  await write(page, dialog.getByLabel(/^Tax contained/), '200');
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Keep it' }));
    await expect(dialog.getByText(/No more tax is contained in it/).first()).toBeVisible();
  });
  await write(page, dialog.getByLabel(/^Tax contained/), '7');
  await page.keyboard.press('Enter');
  await expect(dialog).toHaveCount(0);
  const costs = page.getByRole('list', { name: 'Costs of these days' });
  await expect(costs).toContainText('tax contained 7.00');
  await expect(euros.getByRole('listitem').filter({ hasText: 'result' })).toContainText('-100.01');
  await noFindings(page);

  // Passed on: nobody is refused, everyone is split to the last cent.
  await use(page, page.getByRole('button', { name: 'Pass on to students' }));
  await expect(dialog.getByRole('checkbox', { name: /^Ana <i>Silva<\/i>: 50\.01 EUR/ })).toBeChecked();
  await expect(dialog.getByRole('checkbox', { name: /^Ben Costa: 50\.00 EUR/ })).toBeChecked();
  await noFindings(page);
  await dialog.getByRole('checkbox', { name: /^Ben Costa/ }).press('Space');
  await expect(dialog.getByRole('checkbox', { name: /^Ana <i>Silva<\/i>: 100\.01 EUR/ })).toBeChecked();
  await dialog.getByRole('checkbox', { name: /^Ben Costa/ }).press('Space');
  await expect(dialog.getByText('100.01 EUR in all.')).toBeVisible();
  await use(page, dialog.getByRole('button', { name: 'Put it on their drafts' }));
  await expect(dialog).toHaveCount(0);
  await expect(costs).toContainText('passed on: Ana <i>Silva</i> 50.01 (draft), Ben Costa 50.00 (draft)');
  await expect(page.getByRole('button', { name: 'Pass on to students' }), 'all of it is').toHaveCount(0);
  await use(page, costs.getByRole('button', { name: /^Take back/ }));
  await write(page, page.getByLabel('Reason'), 'Not mine');
  await refusal(async () => {
    await use(page, page.getByRole('button', { name: 'Take it back' }));
    await expect(page.getByText(/Take the shares off their drafts/).first()).toBeVisible();
  });
  await page.keyboard.press('Escape');

  await use(page, earned.getByRole('button', { name: 'Show what it is made of' }));
  await expect(earned.getByRole('list', { name: 'Expected' }).getByRole('listitem')).toHaveCount(4);
  await noFindings(page);
  await write(page, earned.getByLabel(/^You leave home/), '7');
  await write(page, earned.getByLabel(/^You are home again/), '1930');
  await page.keyboard.press('Tab');
  await expect(earned).toContainText('60 h 30 min away: from leaving to coming home.');
  expect((await bridge.act('desk.check')).wrong).toEqual([]);
});

test('whether a trip to come is worth it, and what is not known', async ({ page, openFile, refusal }) => {
  await openFile(
    async (act) => {
      const { guests, lesson } = await season(act, 5, 6);
      await lesson(guests[0], 5, '09:00');
      await lesson(guests[1], 5, '10:00', 90);
      await act('planning.set_wish', { visit: guests[0].visit, wish: { lessons: 2 } });
    },
    `#/trip/${day(5)}/${day(6)}`,
  );
  const form = page.getByRole('form', { name: 'Is it worth it' });
  const outlook = page.getByRole('region', { name: 'Is it worth it' });
  await form.getByLabel(/^Kind/).selectOption('lodging');
  await write(page, form.getByLabel(/^Amount a night/), 'much');
  await write(page, form.getByLabel(/^Currency/), 'EUR');
  await write(page, form.getByLabel(/^Nights/), '1');
  await refusal(async () => {
    await use(page, form.getByRole('button', { name: 'Work it out' }));
    await expect(form.getByText(/is not an amount in EUR/).first()).toBeVisible();
  });
  await noFindings(page);
  await write(page, form.getByLabel(/^Amount a night/), '100');
  await page.keyboard.press('Enter');
  // 40.00 without tax, courts of 2.5 hours at 12.00, a night: 40 − 30 − 100; a lesson brings 28.00 after its court.
  const euros = outlook.getByRole('list', { name: 'What it would come to, EUR' });
  await expect(euros.getByRole('listitem').filter({ hasText: 'would be left' })).toContainText('-90.00');
  await expect(euros).toContainText(
    '4 more: as those to come are on average, after their courts, 28.00 EUR each',
  );
  await expect(outlook.getByText('No price is known for 90 minutes at Harbour Hall.').first()).toBeVisible();
  await noFindings(page);
  await use(page, form.getByRole('button', { name: 'Add: cost' }));
  await write(page, form.getByLabel(/^How far/), '46');
  await use(page, form.getByRole('button', { name: 'Work it out' }));
  await expect(outlook.getByText(/You have no rate for a kilometre/).first()).toBeVisible();
  await use(page, outlook.getByRole('button', { name: 'Show what it is made of' }));
  await expect(outlook.getByRole('list', { name: 'What it is made of' }).getByRole('listitem')).toHaveCount(
    4,
  );
  await noFindings(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await noFindings(page);
  await use(page, page.getByRole('link', { name: 'Plan these days' }));
  await arrived(page, /^Plan for/);

  // The plan finds a second lesson for her: 40 − 30 and 40.00 − 12.00 more, without the night.
  await expect(page.getByText('No plan is better in this order of wishes: proven.')).toBeVisible();
  await use(page, form.getByRole('button', { name: /^Leave out ?: Cost 1$/ }));
  await use(page, form.getByRole('button', { name: 'Work it out' }));
  await expect(euros.getByRole('listitem').filter({ hasText: 'would be left' })).toContainText('38.00');
  await expect(outlook).toContainText('3 lessons, 3 h 30 min on court.');
  await noFindings(page);
});
