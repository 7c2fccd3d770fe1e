// The thread, in the real window: a returning student's visit, from carried goals to the letter, with
// a pulled plug in the middle of a block.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { makeFile } from '../world/bridge.mjs';
import { act, check } from '../world/cli.mjs';
import { returningStudent } from '../world/returning.mjs';
import { Key, until } from './harness.mjs';
import { story } from './story.mjs';

story('from carried goals to the letter, through a pulled plug', async ({ folder, start }) => {
  let ids;
  const file = await makeFile(folder, async (run) => {
    ids = await returningStudent(run);
  });
  const first = await start('--file', file);
  await first.read('Start Zoë Łukasiewicz’s visit.');
  await first.picture('thread-1-day-sheet');

  // Open the returning student: the carried goals are there before anything is done.
  await first.press(Key.Alt, '2');
  await first.act('Zoë Łukasiewicz');
  await first.read('8 of 10 in the end test; the retest will tell');
  await first.picture('thread-2-student');
  await first.click("//button[starts-with(normalize-space(), 'Start the visit')]");
  await first.read('carried');
  await first.read('9:30 – 10:30');
  await first.picture('thread-3-visit');

  // On court: the retest is offered; three tries are not counted, then some are.
  await first.act('Record');
  await first.read('Lift, don’t push');
  await first.read('retest');
  const counted = async (window, count) =>
    until(
      `a count of ${count}`,
      async () => (await window.words('section .count')).replaceAll(/\s+/g, ' ') === count,
    );
  for (const key of ['1', '2', '1', '1', '1', '1', '2', '1']) await first.press(key);
  await counted(first, '4 of 5');
  await first.picture('thread-4-court');

  // The plug is pulled in the middle of the block: every acknowledged touch is there.
  await first.pullThePlug();
  const open = act(file, 'goals.on_court', { visit: ids.visit }).find((g) => g.goal.goal.id === ids.lob).open;
  assert.deepEqual(open.tries, [true, false, true, true, true, true, false, true]);
  const window = await start();
  await window.press(Key.Alt, '2');
  await window.act('Zoë Łukasiewicz');
  await window.read('8 of 10 in the end test; the retest will tell');
  await window.act('Record');
  await counted(window, '4 of 5');

  // A slip of the finger is taken back; the block is finished, and the goal is kept for a reason.
  await window.press('2');
  await counted(window, '4 of 6');
  await window.press('u');
  await counted(window, '4 of 5');
  for (const key of ['1', '1', '1', '1', '2']) await window.press(key);
  await counted(window, '8 of 10');
  await window.click("//button[starts-with(normalize-space(), 'End the block')]");
  await window.read('reached again: 8 of 10 before any coaching');
  await window.read('kept');
  await window.picture('thread-5-kept');

  // The other way to record: a total, entered after the block.
  await window.press('t');
  await window.type(window.field('Made of tries'), '9 of 10');
  await window.execute(
    `(goal) => {
      const select = document.querySelector('dialog[open] select');
      select.value = goal;
      select.dispatchEvent(new Event('change', { bubbles: true }));
    }`,
    ids.wall,
  );
  await window.act('Enter it');
  await window.read('came back with it: 9 of 10 before any coaching');

  // Decide with one key, close, and read the letter.
  await window.act('Back to the visit');
  await window.read('proposed: carry on');
  await window.press('a');
  await until('the decisions', async () => !(await window.words()).includes('proposed: carry on'));
  await window.picture('thread-6-decided');
  await window.act('Close the visit');
  await window.read('Issue the letter');
  await window.picture('thread-7-letter');
  await window.act('Issue the letter');
  await window.read('Save a copy');
  await window.picture('thread-8-issued');
  await window.act('Open the PDF');
  const letters = join(folder, 'Letters');
  const name = await until('the letter on disk', () => readdirSync(letters).find((f) => f.endsWith('.pdf')));
  const text = execFileSync('pdftotext', ['-layout', join(letters, name), '-']).toString();
  for (const words of [
    'Progress letter for Zoë Łukasiewicz',
    'Dear Zoë,',
    'was still there after the weeks between: 8 of 10',
    'Backhand off the back wall',
    'Lob serve is kept',
    'Robin Hale',
    'Page 1 of',
  ]) {
    assert.ok(text.replaceAll(/\s+/g, ' ').includes(words), `the letter says "${words}":\n${text}`);
  }
  await window.close();
  assert.equal(check(file).sound, true);
});
