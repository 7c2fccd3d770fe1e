// Letters, invoices and invitations in the real window, to a real mail server on loopback: each is read before it goes,
// the plug is pulled while one is handed over, and nothing arrives twice.
import assert from 'node:assert/strict';
import { makeFile } from '../world/bridge.mjs';
import { check } from '../world/cli.mjs';
import { startMail } from '../world/mail.mjs';
import { until } from './harness.mjs';
import { story } from './story.mjs';

const day = (days) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

story('a letter, an invoice and an invitation go out once', async ({ folder, start }) => {
  const mail = await startMail();
  try {
    let invoice, visit;
    const file = await makeFile(folder, async (act) => {
      await act('settings.change', {
        name: 'Robin Hale',
        email: 'robin@hale.example',
        closing: 'See you on court,',
      });
      await act('outtray.set_account', {
        host: '127.0.0.1',
        port: mail.ports.start_tls,
        encryption: 'start_tls',
      });
      await act('outtray.set_rules', { quiet: false });
      const hall = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
      const ana = await act('students.add', { name: 'Ana Silva', email: 'ana@example.org' });
      const days = { first_day: day(0), last_day: day(2) };
      visit = (await act('visits.plan', { student: ana.id, facility: hall.id, ...days })).id;
      await act('visits.open', { visit });
      const lesson = { visits: [visit], facility: hall.id, day: day(1), starts: '09:00', minutes: 60 };
      await act('lessons.plan', lesson);
      await act('invoices.set_seller', {
        name: 'Robin Hale',
        address: '7 Net Loft\nSaltmere',
        country: 'IE',
        tax_id: 'IE 77/123',
      });
      await act('prices.set_tax', { category: 'E', rate: '0', why: 'Exempt (invented)' });
      const payer = await act('payers.choose', { student: ana.id });
      const form = {
        name: 'Ana Silva',
        address: '2 Mole Road\nSaltmere',
        country: 'IE',
        email: 'ana@example.org',
      };
      await act('payers.change', { id: payer.id, payer: form });
      const lines = [{ what: 'lesson', words: 'A lesson', quantity: '1', price: '55' }];
      invoice = (await act('invoices.draft', { payer: payer.id, currency: 'EUR', lines })).id;
    });
    let window = await start('--file', file);
    const go = (to) => window.execute('(to) => { location.hash = to; }', to);

    // The letter: issued into the tray, read, sent; the password is asked for once.
    await go(`#/letters/${visit}`);
    await window.act('Issue and send by mail');
    await window.read('As it arrives');
    await window.picture('mail-1-letter');
    await window.act('Send it');
    await window.read('The password is needed.');
    await window.type("//input[@name='password']", mail.password);
    await window.act('Send');
    await window.read('Your mail server took it.');
    await window.picture('mail-2-taken');
    assert.equal(mail.taken().length, 1);

    // The invoice, with its structured file; the plug is pulled while it is handed over.
    await go(`#/money/invoices/${invoice}`);
    await window.act('Issue it');
    await window.click("//label[contains(., 'Put it into the out-tray as well')]");
    await window.click("//dialog//button[normalize-space()='Issue it']");
    await window.read('As it arrives');
    await window.read('application/xml');
    mail.plan('hang');
    await window.act('Send it');
    await window.read('It is handed to your mail server now.');
    await window.pullThePlug();
    window = await start('--file', file);
    await go('#/out');
    await window.read('Needs you');
    await window.read('It may have been sent');
    await window.picture('mail-3-unsure');
    await window.click("//a[contains(., '-0001')]");
    await window.act('Send it again');
    await window.read('would then arrive twice');
    await window.act('Send it again all the same');
    await window.read('The password is needed.');
    await window.type("//input[@name='password']", mail.password);
    await window.act('Send');
    await window.read('Your mail server took it.');

    // The invitation, for a calendar program.
    await go(`#/visits/${visit}`);
    await window.act('Send them by mail');
    await window.read('for a calendar program');
    await window.picture('mail-4-invitation');
    await window.act('Send it');
    await until('the invitation is there', () => mail.taken().length >= 3);
    await window.read('Your mail server took it.');
    await window.close();

    const ids = mail.taken().map((message) => /^Message-ID: (.*)$/m.exec(message)[1]);
    assert.equal(new Set(ids).size, ids.length, 'nothing arrived twice');
    assert.equal(ids.length, 3);
    assert.match(mail.taken()[2], /text\/calendar; method=REQUEST/);
    check(file);
  } finally {
    await mail.stop();
  }
});
