// A bank statement: a table whose columns are chosen, rows that are confirmed, the same file once more, a camt.053.
import { arrived, expect, noFindings, stillThere, test, use, write } from './story.mjs';

const CSV = `Wann;Wer;Zweck;Betrag
03/04/2026;ANA SILVA;Thanks;100,00
04/04/2026;Somebody <b>else</b>;For lessons;30,00
05/04/2026;Shop;Balls;-12,00
06/04/2026;Half
`;

const CAMT = `<?xml version="1.0" encoding="UTF-8"?>
<Document xmlns="urn:iso:std:iso:20022:tech:xsd:camt.053.001.08"><BkToCstmrStmt><Stmt>
<Ntry><Amt Ccy="EUR">7.50</Amt><CdtDbtInd>CRDT</CdtDbtInd><Sts><Cd>BOOK</Cd></Sts>
<BookgDt><Dt>2026-04-07</Dt></BookgDt><AcctSvcrRef>R1</AcctSvcrRef></Ntry>
</Stmt></BkToCstmrStmt></Document>`;

async function invoiced(act) {
  await act('facilities.add', { name: 'Harbour Hall', town: 'Saltmere', zone: 'Europe/Dublin' });
  await act('invoices.set_seller', {
    name: 'Robin Hale',
    address: '7 Net Loft',
    tax_id: '7',
    prices: 'gross',
  });
  await act('prices.set_tax', { category: 'S', rate: '19' });
  for (const [name, price] of [
    ['Ana Silva', '100'],
    ['Ben Okafor', '45'],
  ]) {
    const student = await act('students.add', { name });
    const payer = await act('payers.choose', { student: student.id });
    await act('payers.change', { id: payer.id, payer: { name, address: '2 Mole Road' } });
    const line = { what: 'analysis', words: 'A game', price };
    const draft = await act('invoices.draft', { payer: payer.id, currency: 'EUR', lines: [line] });
    await act('invoices.issue', { invoice: draft.id });
  }
}

const file = (name, text) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });

test('rows of a table are confirmed and entered once', async ({ page, openFile, refusal }) => {
  await openFile(invoiced, '#/money');
  await use(page, page.getByRole('link', { name: 'Bank statement' }));
  await arrived(page, 'Bank statement');
  await noFindings(page);
  const pick = page.getByLabel('Choose a file');

  await refusal(async () => {
    await pick.setInputFiles(file('cut.xml', CAMT.slice(0, 200)));
    await expect(page.getByText('The file ends half-way.')).toBeVisible();
  });
  await noFindings(page);

  await pick.setInputFiles(file('april.csv', CSV));
  await expect(page.getByText(/could be read two ways/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Enter/ }), 'nothing is guessed').toHaveCount(0);
  await noFindings(page);
  await expect(page.getByLabel(/^Day/), 'the only column with days').toHaveValue('0');
  await page.getByLabel(/^Who paid/).selectOption('Wer');
  await page.getByLabel(/^What stood on it/).selectOption('Zweck');
  await page.getByLabel('day, month, year').check();
  await write(page, page.getByLabel(/^The currency of all of it/), 'EUR');
  await page.keyboard.press('Tab');
  const rows = page.getByRole('table', { name: 'Rows to enter' });
  await expect(rows.getByRole('row')).toHaveCount(3);
  await expect(page.getByText('1 row of money that went out is left out.')).toBeVisible();
  await expect(page.getByText('The line is cut short: it has 2 cells of 4.')).toBeVisible();
  await noFindings(page);

  const ana = rows.getByRole('checkbox', { name: 'ANA SILVA' });
  const other = rows.getByRole('checkbox', { name: 'Somebody <b>else</b>' });
  await expect(ana, 'name and amount fit').toBeChecked();
  await expect(other, 'nothing speaks for it').not.toBeChecked();
  await other.focus();
  await page.keyboard.press('Space');
  await refusal(async () => {
    await use(page, page.getByRole('button', { name: 'Enter 2 payments' }));
    await expect(rows.getByText('Choose who paid.', { exact: true })).toBeVisible();
  });
  await expect(other, 'what was ticked stays').toBeChecked();
  await noFindings(page);

  await use(page, rows.getByRole('button', { name: /Somebody/ }));
  const dialog = page.getByRole('dialog');
  await noFindings(page);
  await use(page, dialog.getByRole('button', { name: 'Take this' }));
  await expect(dialog.getByText('Choose who paid.').first()).toBeVisible();
  await dialog.getByLabel(/^Who paid/).selectOption('Ben Okafor');
  await dialog.getByLabel(/^For/).selectOption({ index: 1 });
  await use(page, dialog.getByRole('button', { name: 'Take this' }));
  await expect(dialog).toHaveCount(0);
  await stillThere(page);
  await expect(rows.getByText(/Ben Okafor, \d{4}-0002/)).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Enter 2 payments' }));
  await expect(page.getByText('2 payments entered, 130.00 EUR.')).toBeVisible();
  await expect(page.getByText('Everything that came in is entered.')).toBeVisible();
  await expect(page.getByRole('list', { name: 'Entered already' }).getByRole('listitem')).toHaveCount(2);
  await stillThere(page);
  await noFindings(page);

  // The same file needs no choice, and nothing of it counts twice.
  await pick.setInputFiles(file('again.csv', CSV));
  await expect(page.getByText(/Its columns are remembered/)).toBeVisible();
  await expect(page.getByText('Everything that came in is entered.')).toBeVisible();

  await pick.setInputFiles(file('april.xml', CAMT));
  await expect(page.getByText(/A bank statement, camt\.053\.001\.08/)).toBeVisible();
  await expect(rows.getByRole('row')).toHaveCount(2);
  await expect(page.getByText(/Neither the name nor the amount is known/)).toBeVisible();
  await noFindings(page);
  await page.evaluate(() => (location.hash = '#/money'));
  await arrived(page, 'Money');
  await expect(page.getByText(/15\.00 EUR of 45\.00 EUR open/)).toBeVisible();
});
