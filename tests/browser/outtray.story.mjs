// The out-tray by keyboard alone, with a real mail server on loopback: an account and a trial, messages read, changed,
// sent, told and withdrawn, what was refused, what may have been sent, and what is proposed to be written.
import { startMail } from '../world/mail.mjs';
import { arrived, expect, noFindings as findings, test as base, use, write } from './story.mjs';

const test = base.extend({
  /** Mail servers, before the bridge: it reads whom to trust when it starts. */
  mail: [
    async ({}, use_) => {
      const mail = await startMail();
      await use_(mail);
      await mail.stop();
    },
    { auto: true },
  ],
  bridge: async ({ mail, bridge }, use_) => {
    void mail;
    await use_(bridge);
  },
});

/** The line about what was just done lies over whatever is at the foot of the window: it is put away first. */
async function noFindings(page) {
  const away = page.getByRole('button', { name: /^Put away/ });
  if (await away.count()) await use(page, away);
  await findings(page);
}

const day = (days) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

/** A coach with an address, and students who may be written to. */
async function people(act) {
  await act('settings.change', {
    name: 'Robin Hale',
    email: 'robin@hale.example',
    closing: 'See you on court,',
  });
  const made = {};
  for (const [name, email] of [
    ['Ana <b>Silva</b>', 'ana@example.org'],
    ['Nobody There', 'nouser@example.org'],
    ['Bo Wren', ''],
  ]) {
    made[name] = (await act('students.add', { name, email })).id;
  }
  return made;
}

const account = (act, mail) =>
  act('outtray.set_account', { host: '127.0.0.1', port: mail.ports.tls, encryption: 'tls' });

test('an account is set, tried, and a wrong password said by its field', async ({
  page,
  openFile,
  mail,
  refusal,
}) => {
  await openFile(people, '#/out');
  await expect(page.getByText('No mail account is set yet.')).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('link', { name: 'Set it' }));
  await arrived(page, 'Mail account');
  await write(page, page.getByLabel(/^Server for outgoing mail/), 'https://127.0.0.1');
  await refusal(async () => {
    await page.keyboard.press('Enter');
    await expect(page.getByText(/That is no server’s name/).first()).toBeVisible();
  });
  await write(page, page.getByLabel(/^Server for outgoing mail/), '127.0.0.1');
  await write(page, page.getByLabel(/^Port/), String(mail.ports.tls));
  await page.keyboard.press('Enter');
  await expect(page.getByText('Mail account kept.')).toBeVisible();
  const trial = page.getByRole('region', { name: 'Trial' });
  await write(page, trial.getByLabel(/^Password/), 'wrong');
  await page.keyboard.press('Enter');
  await expect(trial.getByText(/does not take this name and password/).first()).toBeVisible();
  expect(mail.taken()).toEqual([]);
  await noFindings(page);
  await write(page, trial.getByLabel(/^Password/).first(), mail.password);
  await page.keyboard.press('Enter');
  await expect.poll(() => mail.taken().length).toBeGreaterThan(0);
  expect(mail.taken()[0]).toContain('Subject: A trial of your mail account');
});

test('a message is read, changed, sent once, and what was refused says why', async ({
  page,
  bridge,
  openFile,
  mail,
  refusal,
}) => {
  const made = await openFile(
    async (act) => {
      const all = await people(act);
      await account(act, mail);
      return all;
    },
    (all) => `#/people/${all['Ana <b>Silva</b>']}/sent`,
  );
  await expect(page.getByText('Nothing went out yet.')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Write' }));
  await arrived(page, 'A word about our lessons');
  await noFindings(page);
  const dialog = page.getByRole('dialog');
  await use(page, page.getByRole('button', { name: 'Change it', exact: true }));
  await write(page, dialog.getByLabel(/^Subject/), '');
  await page.keyboard.press('Backspace');
  await refusal(async () => {
    await use(page, dialog.getByRole('button', { name: 'Keep it so' }));
    await expect(dialog.getByText('A message needs a subject.').first()).toBeVisible();
  });
  await write(page, dialog.getByLabel(/^Subject/), 'About <i>Tuesday</i>');
  await write(page, dialog.getByLabel(/^The words/), 'Bring the blue racket & water.');
  await use(page, dialog.getByRole('button', { name: 'Keep it so' }));
  await expect(page.getByRole('heading', { level: 1, name: 'About <i>Tuesday</i>' })).toBeVisible();
  await expect(page.getByText('Bring the blue racket & water.')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Send it' }));
  // The password is asked for; nothing is lost by that.
  await expect(page.getByText(/The password is needed/).first()).toBeVisible();
  await noFindings(page);
  await write(page, page.getByLabel(/^Password/), mail.password);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Your mail server took it.').first()).toBeVisible();
  expect(mail.taken()).toHaveLength(1);
  expect(mail.taken()[0]).toContain('blue racket &amp; water');
  await noFindings(page);

  const nobody = await bridge.act('outtray.put', {
    of: { kind: 'words', student: made['Nobody There'] },
  });
  await bridge.act('outtray.edit', { message: nobody.messages[0], subject: 'To nobody', words: 'Hello.' });
  await page.evaluate((id) => (location.hash = `#/out/${id}`), nobody.messages[0]);
  await arrived(page, 'To nobody');
  await use(page, page.getByRole('button', { name: 'Send it' }));
  await expect(page.getByText(/says that there is no such address/).first()).toBeVisible();
  await noFindings(page);
  await use(page, page.getByRole('button', { name: 'Told in another way' }));
  await write(page, dialog.getByLabel(/^What was said/), 'On the phone');
  await use(page, dialog.getByRole('button', { name: 'Note it' }));
  await expect(page.getByText('Told by telephone. On the phone').first()).toBeVisible();
  expect(mail.taken()).toHaveLength(1);
});

test('what is to go is read through with keys, and what may have been sent is asked about', async ({
  page,
  openFile,
  mail,
}) => {
  await openFile(async (act) => {
    const all = await people(act);
    await account(act, mail);
    const words = async (student, subject) => {
      const { messages } = await act('outtray.put', { of: { kind: 'words', student } });
      await act('outtray.edit', { message: messages[0], subject, words: `${subject}.` });
    };
    await words(all['Ana <b>Silva</b>'], 'First');
    await words(all['Bo Wren'], 'Second');
    await words(all['Ana <b>Silva</b>'], 'Third');
    await words(all['Ana <b>Silva</b>'], 'Fourth');
  }, '#/out');
  await use(page, page.getByRole('link', { name: 'Read through' }));
  await arrived(page, 'First');
  await expect(page.getByText('4 messages to read')).toBeVisible();
  await noFindings(page);
  mail.plan('keep');
  await page.keyboard.press('s');
  await arrived(page, 'Second');
  await expect(page.getByText('Bo Wren has no e-mail address.', { exact: true })).toBeVisible();
  await write(page, page.getByLabel(/^Password/), mail.password);
  await page.keyboard.press('Enter');
  await expect.poll(() => mail.taken().length).toBe(1);
  await page.getByRole('heading', { name: 'Second' }).focus();
  await page.keyboard.press('n');
  await arrived(page, 'Third');
  await page.keyboard.press('w');
  await arrived(page, 'Fourth');
  await page.keyboard.press('s');
  await expect(page.getByText('1 message left for later.')).toBeVisible();
  await expect.poll(() => mail.taken().length).toBe(2);
  await use(page, page.getByRole('main').getByRole('link', { name: 'Out-tray' }).last());
  await arrived(page, 'Out-tray');
  const needs = page.getByRole('region', { name: 'Needs you' });
  await expect(needs).toContainText('It may have been sent');
  await noFindings(page);
  await use(page, needs.getByRole('link', { name: 'First' }));
  await arrived(page, 'First');
  await use(page, page.getByRole('button', { name: 'They say it arrived' }));
  const dialog = page.getByRole('dialog');
  await use(page, dialog.getByRole('button', { name: 'Note it' }));
  await expect(page.getByText('They say that it arrived.').first()).toBeVisible();
  expect(mail.taken(), 'nothing was sent a second time').toHaveLength(2);
});

test('a letter, an invitation and what to know go into the tray from where they are made', async ({
  page,
  bridge,
  openFile,
}) => {
  const made = await openFile(
    async (act) => {
      const all = await people(act);
      const hall = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
      const visit = await act('visits.plan', {
        student: all['Ana <b>Silva</b>'],
        facility: hall.id,
        first_day: day(3),
        last_day: day(4),
      });
      await act('lessons.plan', {
        visits: [visit.id],
        facility: hall.id,
        day: day(3),
        starts: '09:00',
        minutes: 60,
      });
      return { visit: visit.id };
    },
    () => '#/',
  );
  const write_ = page.getByRole('region', { name: 'To write' });
  await expect(write_).toContainText('what to know before the visit');
  await noFindings(page);
  await use(page, write_.getByRole('button', { name: /^Write it/ }).first());
  await arrived(page, /^Before your visit/);
  await expect(page.getByText(/\{visitors\} has no value: What Harbour Hall asks/).first()).toBeVisible();
  await noFindings(page);
  await page.evaluate((id) => (location.hash = `#/visits/${id}`), made.visit);
  await arrived(page, 'Ana <b>Silva</b>');
  await use(page, page.getByRole('button', { name: 'Send them by mail' }));
  await arrived(page, /^Our lesson: /);
  await expect(page.getByText('for a calendar program', { exact: true })).toBeVisible();
  await noFindings(page);
  await page.evaluate(() => (location.hash = '#/coach/mail/texts'));
  await arrived(page, 'Texts of messages');
  await use(page, page.getByRole('button', { name: /^Change it ?: a word, English/ }));
  const dialog = page.getByRole('dialog');
  await write(page, dialog.getByLabel(/^Subject/), 'Hello {name}');
  await use(page, dialog.getByRole('button', { name: 'Keep the text' }));
  await expect(page.getByText('Hello {name}')).toBeVisible();
  await noFindings(page);
  const texts = await bridge.act('outtray.texts', {});
  expect(texts.filter((text) => text.own)).toHaveLength(1);
});
