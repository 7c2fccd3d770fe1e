// What the coach spends, by keyboard alone: a drive without a rate, a rate, a receipt, sums, a slip taken back, a trip.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { arrived, expect, noFindings, test, use, write } from './story.mjs';

test('a drive asks for its rate, and counts by it', async ({ page, openFile, bridge, refusal }) => {
  await openFile(async () => undefined, '#/coach');
  await use(page, page.getByRole('link', { name: 'Costs', exact: true }));
  await arrived(page, /^Costs \d{4}$/);
  await expect(page.getByText(/^Nothing was noted in/)).toBeVisible();
  await noFindings(page);

  await use(page, page.getByRole('button', { name: 'Note a cost' }));
  const dialog = page.getByRole('dialog');
  await write(page, dialog.getByLabel(/^Day/), '10 3 2026');
  await write(page, dialog.getByLabel(/^What it was for/), 'To <b>Saltmere</b>, lessons');
  await write(page, dialog.getByLabel(/^How far/), '212,5');
  await noFindings(page);
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Keep it' }));
    await expect(dialog.getByText(/You have no rate for a kilometre on 10 March 2026/).first()).toBeVisible();
  });
  await expect(dialog.getByLabel(/^How far/), 'what was typed stays').toHaveValue('212,5');
  await page.keyboard.press('Escape');

  await use(page, page.getByRole('button', { name: 'Add a rate' }));
  await write(page, dialog.getByLabel(/^Amount/), '0.30');
  await write(page, dialog.getByLabel(/^Currency/), 'eur');
  await write(page, dialog.getByLabel(/^Holds from/), '1 1 2026');
  await noFindings(page);
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Keep it' }));
    await expect(dialog.getByLabel(/^Who says so/)).toHaveAttribute('aria-invalid', 'true');
  });
  await write(page, dialog.getByLabel(/^Who says so/), 'Agreed with an adviser');
  await page.keyboard.press('Enter');
  const rates = page.getByRole('list', { name: 'Rates' });
  await expect(rates.getByText('0.3 EUR a kilometre', { exact: true })).toBeVisible();

  await use(page, page.getByRole('button', { name: 'Note a cost' }));
  await write(page, dialog.getByLabel(/^Day/), '10 3 2026');
  await write(page, dialog.getByLabel(/^What it was for/), 'To <b>Saltmere</b>, lessons');
  await write(page, dialog.getByLabel(/^How far/), '212,5');
  await page.keyboard.press('Enter');
  await expect(dialog).toHaveCount(0);
  await page.goto(`${bridge.address}#/costs/2026`);
  const costs = page.getByRole('list', { name: 'Costs' });
  await expect(costs.getByText('63.75 EUR')).toBeVisible();
  await expect(costs.getByText(/212.5 km × 0.3 EUR, Agreed with an adviser/)).toBeVisible();
  await expect(page.getByRole('heading', { level: 2, name: '63.75 EUR' })).toBeVisible();
  await noFindings(page);
});

test('receipts, sums, a slip taken back, a table, and a trip', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  await openFile(async (act) => {
    const paid = { words: 'Harbour Inn', amount: '164', currency: 'EUR' };
    await act('costs.note', {
      cost: { kind: 'lodging', day: '2026-03-10', last: '2026-03-11', ...paid },
    });
    await act('costs.note', {
      cost: { kind: 'meals', day: '2026-03-10', ...paid, words: 'Lunch', amount: '12.40' },
    });
    await act('costs.note', {
      cost: { kind: 'meals', day: '2026-04-01', ...paid, words: 'Slip', amount: '99' },
    });
  }, '#/costs/2026');
  await expect(page.getByRole('heading', { level: 2, name: '275.40 EUR' })).toBeVisible();
  await use(page, page.getByRole('button', { name: /^Take back ?: Slip/ }));
  await write(page, page.getByLabel('Reason'), 'Not mine');
  await use(page, page.getByRole('button', { name: 'Take it back' }));
  await expect(page.getByRole('heading', { level: 2, name: '176.40 EUR' })).toBeVisible();
  await expect(page.getByText('taken back: Not mine')).toBeVisible();
  await expect(page.getByText('By month: March 176.40')).toBeVisible();

  await use(page, page.getByRole('button', { name: /^Change ?: Lunch/ }));
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByLabel(/^Amount/)).toHaveValue('12.40');
  const bill = join(bridge.folder, 'bill.txt');
  writeFileSync(bill, 'no picture');
  await dialog.getByLabel(/^The receipt/).setInputFiles(bill);
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Keep it' }));
    await expect(dialog.getByText(/is not a PDF, a PNG or a JPEG/).first()).toBeVisible();
  });
  const pdf = join(bridge.folder, 'bill.pdf');
  writeFileSync(pdf, '%PDF-1.7\n');
  await dialog.getByLabel(/^The receipt/).setInputFiles(pdf);
  await use(page, dialog.getByRole('button', { name: 'Keep it' }));
  await expect(page.getByRole('button', { name: /^Receipt ?: Lunch/ })).toBeVisible();
  await noFindings(page);

  await use(page, page.getByRole('button', { name: /^Use these ?: .*mileage/ }));
  await expect(
    page.getByRole('list', { name: 'Rates' }).getByText('0.725 USD a mile', { exact: true }),
  ).toBeVisible();
  await expect(page.getByRole('button', { name: /^Use these ?: .*mileage/ })).toHaveCount(0);

  await page.goto(`${bridge.address}#/trip/2026-03-09/2026-03-12`);
  const trip = page.getByRole('list', { name: 'Costs of these days' });
  await expect(trip.getByRole('listitem')).toHaveCount(2);
  await expect(page.getByText('176.40 EUR in all')).toBeVisible();
  await noFindings(page);
  expect((await bridge.act('desk.check')).wrong).toEqual([]);
});
