// A coach's money in the real window: a package sold with a deposit, lessons given and called off late, the rest
// invoiced with court fees for two who share a trip, two part payments and a refund; and the year added up by
// another program. Between the steps the plug is pulled.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { makeFile } from '../world/bridge.mjs';
import { act, check } from '../world/cli.mjs';
import { Key, until } from './harness.mjs';
import { story } from './story.mjs';

const call = async (window, name, input = {}) =>
  (
    await window.execute(
      "(name, input) => window.__TAURI_INTERNALS__.invoke('call', { name, input })",
      name,
      input,
    )
  ).value;
const day = (days) => {
  const date = new Date();
  date.setDate(date.getDate() + days);
  const two = (n) => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
};

story(
  'a package, a late call-off, a shared trip, part payments, a refund, and the year',
  async ({ folder, start }) => {
    let ana, ben;
    const lessons = {};
    const file = await makeFile(folder, async (run) => {
      await run('settings.change', { name: 'Robin Hale', closing: 'See you on court,' });
      const hall = await run('facilities.add', {
        name: 'Harbour Hall',
        town: 'Saltmere',
        zone: 'Europe/Dublin',
      });
      ana = await run('students.add', { name: 'Ana Silva' });
      ben = await run('students.add', { name: 'Ben Costa' });
      for (const one of [ana, ben]) {
        const payer = await run('payers.choose', { student: one.id });
        await run('payers.change', {
          id: payer.id,
          payer: { name: payer.name, address: '2 Mole Road\nSaltmere' },
        });
      }
      const visits = {};
      for (const one of [ana, ben]) {
        const planned = await run('visits.plan', {
          student: one.id,
          facility: hall.id,
          first_day: day(-4),
          last_day: day(1),
        });
        visits[one.id] = planned.id;
        await run('visits.open', { visit: planned.id });
      }
      const plan = async (who, ago) =>
        (
          await run('lessons.plan', {
            visits: who.map((one) => visits[one.id]),
            facility: hall.id,
            day: day(-ago),
            starts: '09:00',
            minutes: 60,
          })
        ).id;
      lessons.given = await plan([ana], 4);
      lessons.late = await plan([ana], 3);
      lessons.shared = await plan([ana, ben], 2);
      await run('lessons.give', { lesson: lessons.given });
      await run('lessons.call_off', { lesson: lessons.late, reason: 'Had to work' });
      await run('lessons.give', { lesson: lessons.shared });
    });
    let window = await start('--file', file);
    const button = (words) =>
      window.click(
        `//*[self::button or self::a][starts-with(normalize-space(), ${JSON.stringify(words)}) and not(@disabled)]`,
      );
    const inDialog = (words) =>
      window.click(`//dialog[@open]//form//button[normalize-space()=${JSON.stringify(words)}]`);
    const input = (name, text) => window.type(`//*[self::input or self::textarea][@name='${name}']`, text);
    const anew = async (name, text) => {
      await window.click(`//*[self::input or self::textarea][@name='${name}']`);
      await window.press(Key.Control, 'a');
      await window.press(Key.Backspace);
      await input(name, text);
    };
    const gone = (words) => until(`"${words}" to go`, async () => !(await window.words()).includes(words));
    const dialogGone = () =>
      until('the dialog to close', () =>
        window.execute("() => document.querySelector('dialog[open]') === null"),
      );
    const choose = (legend, option) =>
      window.click(
        `//dialog[@open]//fieldset[legend[contains(., ${JSON.stringify(legend)})]]//label[normalize-space()=${JSON.stringify(option)}]`,
      );
    /** Pulls the plug, looks at the file, and goes on where it was. */
    const plug = async (at) => {
      await window.pullThePlug();
      assert.ok(check(file).sound, 'nothing is half done');
      assert.deepEqual(act(file, 'accounts.balanced').wrong, []);
      window = await start('--file', file);
      await window.read('After court');
      await window.execute('(at) => { location.hash = at; }', at);
    };

    // Who issues, what tax counts, prices, terms: each asked for, none guessed.
    await window.act('Money');
    await window.read('3 to settle'.replace('3', '4'));
    await window.act('Invoices and terms');
    await input('name', 'Robin Hale');
    await input('address', '7 Net Loft');
    await input('tax_id', '77/123');
    await window.click("//section[.//h2='Who issues']//button[normalize-space()='Keep it']");
    await window.read('Kept.');
    await button('Add: boundary');
    await input('called_off[0].at', '24');
    await input('called_off[0].percent', '0');
    await input('later', '100');
    await window.click("//section[.//h2='Terms']//button[normalize-space()='Keep them']");
    await window.read('Your terms are kept.');
    await window.picture('money-1-terms');
    await button('Prices and tax');
    await button('Write a price down');
    await input('price.amount', '55.00');
    await input('price.currency', 'EUR');
    await inDialog('Write it down');
    await window.read('Lesson of 60 minutes');
    await dialogGone();
    await button('Write a price down');
    await anew('price.sharing', '2');
    await input('price.amount', '72.01');
    await inDialog('Write it down');
    await window.read('2 sharing');
    await dialogGone();
    await button('Set a tax');
    await window.type("//dialog[@open]//select[@name='category']", 'Taxed');
    await input('rate', '19');
    await inDialog('Set it');
    await window.read('Every kind of line');
    await dialogGone();

    // A deposit, before there is an invoice.
    await window.act('Money');
    await button('Who pays');
    await button('Ana Silva');
    await button('Enter a payment');
    await input('amount', '50');
    await input('currency', 'EUR');
    await window.click("//dialog[@open]//label[contains(., 'A deposit')]");
    await inDialog('Enter the payment');
    await window.read('50.00 EUR paid and kept for later');
    await plug(`#/people/${ana.id}`);

    // A package on a draft, issued with the deposit used.
    await button('Sell a package');
    await input('lessons', '10');
    await input('price', '476.00');
    await input('currency', 'EUR');
    await inDialog('Put it on a draft');
    await window.read('It takes the next number');
    await button('Issue it');
    await window.read('Use what was paid before');
    await inDialog('Issue it');
    await window.read('426.00');
    await window.picture('money-2-package-issued');
    await plug('#/money/settle');

    // Lessons given take one, the one called off two hours before is lost, the shared one is invoiced with its court.
    await window.read('Who called it off?');
    await window.click("//li[contains(., 'called off')]//button[starts-with(normalize-space(), 'Say how')]");
    await choose('Who called it off?', 'the student');
    await input('time', '07:00');
    await window.press(Key.Tab);
    await window.read('later than your terms allow');
    await window.picture('money-3-late');
    await inDialog('Settle it');
    await dialogGone();
    await window.click("//li[contains(., 'Ben Costa')]//button[starts-with(normalize-space(), 'Otherwise')]");
    await input('lessons[0].court', '9.50');
    await inDialog('Settle it');
    await dialogGone();
    await plug('#/money/settle');
    await window.click(
      "//li[contains(., 'Ana Silva')][contains(., '36.01') or contains(., '36.00') or contains(., 'Package')][last()]//button[starts-with(normalize-space(), 'Otherwise')]",
    );
    await choose('How', 'on an invoice');
    await anew('lessons[0].amount', '36.01');
    await input('lessons[0].court', '9.50');
    await input('lessons[0].reason', 'Shared, so it is not taken from the package');
    await inDialog('Settle it');
    await dialogGone();
    await button('Settle 1 lesson as proposed');
    await window.read('Every lesson is settled.');

    // The rest is invoiced.
    for (const name of ['Ana Silva', 'Ben Costa']) {
      await window.act('Money');
      await window.click(`//section[.//h2='Drafts']//a[contains(., '${name}')]`);
      await window.read('Court, Harbour Hall');
      await button('Issue it');
      await inDialog('Issue it');
      await gone('It takes the next number');
      await dialogGone();
    }
    await window.picture('money-4-shared-issued');
    await plug('#/money');

    // Two part payments; what is over is kept, and goes back.
    await button('Who pays');
    await button('Ana Silva');
    for (const amount of ['300', '180']) {
      await button('Enter a payment');
      await input('amount', amount);
      await inDialog('Enter the payment');
      await dialogGone();
    }
    await window.read('kept for later');
    await button('Pay money back');
    await inDialog('Pay it back');
    await dialogGone();
    await gone('kept for later');
    await window.picture('money-5-account');
    await plug('#/money/year');

    // The year, as a table that another program adds up again.
    await window.read('lessons and what else was given');
    await window.picture('money-6-year');
    const table = join(folder, 'year.csv');
    await button('Save as a table');
    await window.answerDialog('Save the document', table);
    await until('the table', async () => existsSync(table));
    const account = await call(window, 'accounts.year', { year: Number(day(0).slice(0, 4)) });
    assert.equal(account.to_settle, 0);
    await window.pullThePlug();
    const again = spawnSync('python3', [
      new URL('../outside/year.py', import.meta.url).pathname,
      file,
      table,
      day(0).slice(0, 4),
    ]);
    assert.equal(again.status, 0, `${again.stderr}`);
    const numbers = act(file, 'invoices.list')
      .invoices.map((one) => one.number)
      .sort();
    const year = day(0).slice(0, 4);
    assert.deepEqual(
      numbers,
      [1, 2, 3].map((n) => `${year}-000${n}`),
      'the series has no gap',
    );
  },
);
