// From a returning student's message to an agreed visit, in the real window: the days, the wish, the plan, the
// lessons, the offer with its price, the answer, the courts to ask for, the invitations on disk; and an impossible
// wish, whose one change frees it.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeFile } from '../world/bridge.mjs';
import { Key, until } from './harness.mjs';
import { story } from './story.mjs';

/** The days of the visit, far ahead, so that the story does not age. */
const DAYS = { first: '2099-03-11', last: '2099-03-15' };

/** A hall with its rules, the coach's week and prices, and Marta, who has written that she comes. */
async function before(run) {
  const settings = await run('settings.show', {});
  await run('settings.change', { ...settings, name: 'Robin Hale', email: 'robin@example.org' });
  const { id: facility } = await run('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
  for (const name of ['Court 1', 'Court 2']) await run('facilities.add_court', { facility, name });
  await run('facilities.set_rules', {
    facility,
    rules: {
      currency: 'EUR',
      hours: [{ opens: '08:00', closes: '22:00' }],
      rates: [{ starts: '17:00', ends: '22:00', hour: '24' }, { hour: '18' }],
      ahead: [{ amount: 7, unit: 'days', opens: '07:00' }],
      release: [{ hours: 24, later: 'full' }],
      grid: 30,
    },
  });
  await run('own_time.set', { hours: [{ opens: '09:00', closes: '12:00' }], day_limit: 180 });
  await run('offers.set_terms', {
    currency: 'EUR',
    fees: [{ minutes: 60, amount: '40' }],
    terms: 'Called off less than a day before, a lesson is paid for.',
  });
  const { id: student } = await run('students.add', {
    name: 'Marta Lindqvist',
    email: 'marta@example.org',
    zone: 'Europe/Stockholm',
  });
  const visit = await run('visits.plan', { student, facility, first_day: DAYS.first, last_day: DAYS.last });
  return { visit: visit.id, student };
}

story('from “she can come 11 to 15 March” to an agreed visit', async ({ folder, start }) => {
  let ids;
  const file = await makeFile(folder, async (run) => {
    ids = await before(run);
  });
  const window = await start('--file', file);
  await window.press(Key.Alt, '2');
  await window.act('Marta Lindqvist');
  await window.execute('(to) => { location.hash = to; }', `#/visits/${ids.visit}`);
  await window.read('No wish yet.');

  // What she wrote: five lessons, not before the flight, and gone on Sunday at noon.
  await window.act('Write the wish down');
  await window.type(window.field('Lessons in all'), '5');
  await window.type("//input[@name='arrives']", '11:30');
  await window.type("//input[@name='leaves']", '12:00');
  await window.act('Write it down');
  await window.read('5 lessons of 60 minutes, at most 1 a day, arrives 11:30, leaves 12:00.');
  await window.picture('agreed-1-wish');

  // Five do not fit: the reasons, and each change that would free the fifth, tried out.
  await window.act('Plan these days');
  await window.read('No plan is better in this order of wishes: proven.');
  await window.read('Without a place');
  await window.read('before the arrival');
  const change = 'You go on 30 minutes later on Wednesday 11 March 2099.';
  await window.read(change);
  await window.picture('agreed-2-impossible');
  await window.click(
    `//li[contains(., '${change}')]//button[starts-with(normalize-space(), 'Take it to be so')]`,
  );
  await until(
    'the fifth lesson has a place',
    async () => !(await window.words()).includes('Without a place'),
  );
  await window.read('Make these 5 lessons');
  await window.picture('agreed-3-freed');

  // The coach makes it so, and the plan holds without anything taken to be so.
  await window.execute('(to) => { location.hash = to; }', '#/coach/time');
  await window.read('Working time 1');
  await window.execute(`() => {
    const to = document.querySelector('[name="hours[0].closes"]');
    to.value = '12:30';
    to.dispatchEvent(new Event('input', { bubbles: true }));
    to.dispatchEvent(new Event('change', { bubbles: true }));
  }`);
  await window.act('Keep this week');
  await window.read('Your week is kept.');
  await window.execute('(to) => { location.hash = to; }', `#/plan/${DAYS.first}/${DAYS.last}`);
  await window.read('Make these 5 lessons');
  assert.equal((await window.words()).includes('Without a place'), false);
  await window.act('Make these 5 lessons');
  await window.read('5 lessons planned.');

  // The offer: both clocks, every price, the terms; the answer.
  await window.execute('(to) => { location.hash = to; }', `#/visits/${ids.visit}`);
  await window.act('Write the offer');
  const message = () => window.execute("() => document.querySelector('dialog[open] textarea')?.value ?? ''");
  await until('the message is there', async () => (await message()).includes('All together: 290.00 EUR.'));
  const words = await message();
  assert.match(
    words,
    /Wednesday 11 March 2099, 11:30 to 12:30 \(12:30 to 13:30 in Stockholm\), Court \d: 40\.00 EUR/,
  );
  assert.match(words, /Called off less than a day before/);
  await window.picture('agreed-4-offer');
  await window.act('Note it as offered');
  await window.read('no answer yet.');
  await window.act('The answer');
  await window.act('Note the answer');
  await window.read('Agreed on');
  await window.picture('agreed-5-agreed');

  // The invitations, on disk.
  await window.act('Write them');
  await window.read('Every lesson was invited to as it stands.');
  const below = (at) =>
    readdirSync(at, { withFileTypes: true, recursive: true })
      .filter((e) => e.isFile() && e.name.endsWith('.ics'))
      .map((e) => join(e.parentPath, e.name));
  const written = below(folder);
  assert.equal(written.length, 5);
  for (const path of written) {
    const text = readFileSync(path, 'utf8');
    assert.match(text, /METHOD:REQUEST\r\n/);
    assert.match(text, /TZID=Europe\/Dublin/);
    assert.match(text.replaceAll('\r\n ', ''), /mailto:marta@example.org/i);
  }

  // The courts to ask for, and what the desk answered.
  await window.press(Key.Alt, '5');
  await window.read('Not open yet');
  await window.read('It can be asked for from Wednesday 4 March 2099, 07:00.');
  await window.picture('agreed-6-courts');
});
