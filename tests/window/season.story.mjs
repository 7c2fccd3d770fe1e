// The thread on a season brought from a spreadsheet, in the real window: from an empty file over the CSV to the letter.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { check } from '../world/cli.mjs';
import { makeFile } from '../world/bridge.mjs';
import { day } from '../world/returning.mjs';
import { Key, until } from './harness.mjs';
import { story } from './story.mjs';

/** A season as a coach kept it: two spellings of one name, a total without tries, a test of either kind. */
const season = () => `Student;First day;Last day;Goal;How;Criterion;Test;Result;Cue
Zoë Łukasiewicz;${day(-200)};${day(-198)};Lob serve;fed;8 of 10;end test;5/10;Lift, don’t push
"Łukasiewicz, Zoë";${day(-60)};${day(-57)};Lob serve;fed;;end test;8 of 10;
Zoe Łukasiewicz;${day(-60)};${day(-57)};Backhand off the back wall;live;8 of 10;end test;4/10;Feet with the ball
Zoë Łukasiewicz;${day(-60)};${day(-57)};Kill shot;fed;;end test;80%;
`;

story('a season from a spreadsheet goes on in the window, to the letter', async ({ folder, start }) => {
  const csv = join(folder, 'season.csv');
  writeFileSync(csv, season());
  const file = await makeFile(folder, (act) => act('settings.change', { name: 'Robin Hale' }), 'Own');
  const window = await start('--file', file);

  // The place first: its clock is the clock of its visits.
  await window.press(Key.Alt, '4');
  await window.act('Add a facility');
  await window.see("//h1[normalize-space()='Add a facility']");
  await window.type(window.field('Name'), 'Harbour Hall');
  await window.click("//input[@name='zone']");
  await window.press(Key.Control, 'a');
  for (const letter of 'dublin') await window.press(letter);
  await window.press(Key.Tab);
  await window.act('Add the facility');
  await window.read('No courts yet.');

  // The file: what is taken, what is not and why.
  await window.press(Key.Alt, '2');
  await window.act('Bring in a spreadsheet');
  await window.type("//input[@type='file']", csv);
  await window.read('a percentage without its number of tries');
  await window.read('1 student (0 here already), 2 visits, 3 counts');
  await window.picture('season-1-columns');
  await window.act('Take 3 lines');
  await window.read('1 student added');
  await window.picture('season-2-taken');
  await window.act('To the people');
  await window.act('Zoë Łukasiewicz');
  await window.read('8 of 10 in the end test; the retest will tell');
  await window.picture('season-3-student');

  // She is back today: the visit is planned and started, and the goals are there.
  await window.act('Plan a visit');
  await window.type(window.field('First day'), day(0));
  await window.type(window.field('Last day'), day(2));
  await window.act('Plan the visit');
  await window.click("//button[starts-with(normalize-space(), 'Start the visit')]");
  await window.read('carried');
  // Nothing was asked of her yet: the court opens with a reason, which is kept.
  await window.act('Record');
  await window.read('Not ready for court');
  await window.act('Go on all the same');
  await window.type("//textarea[@name='reason']", 'Asked by word of mouth, all well; papers tonight');
  await window.act('Go on');
  await window.read('Lift, don’t push');
  for (const key of ['1', '1', '1', '1', '1', '2', '1', '1', '1', '1', '1', '2', '1'])
    await window.press(key);
  await until(
    'the counted tries',
    async () => (await window.words('section .count')).replaceAll(/\s+/g, ' ') === '8 of 10',
  );
  await window.click("//button[starts-with(normalize-space(), 'End the block')]");
  await window.read('reached again: 8 of 10 before any coaching');
  await window.act('Back to the visit');
  await window.read('proposed: carry on');
  await window.press('a');
  await until('the decisions', async () => !(await window.words()).includes('proposed: carry on'));
  await window.act('Close the visit');
  await window.read('Issue the letter');
  await window.act('Issue the letter');
  await window.read('Save a copy');
  await window.picture('season-4-issued');
  await window.act('Open the PDF');
  const letters = join(folder, 'Letters');
  const name = await until('the letter on disk', () => readdirSync(letters).find((f) => f.endsWith('.pdf')));
  const text = execFileSync('pdftotext', ['-layout', join(letters, name), '-'])
    .toString()
    .replaceAll(/\s+/g, ' ');
  for (const words of [
    'Progress letter for Zoë Łukasiewicz',
    'Lob serve is kept',
    'Backhand off the back wall',
    'Robin Hale',
  ])
    assert.ok(text.includes(words), `the letter says "${words}":\n${text}`);
  await window.close();
  assert.equal(check(file).sound, true);
});
