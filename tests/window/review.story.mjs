// The sample season reviewed in the real window by keyboard: from every row of what moved down to the goal's single
// blocks, and back to the row.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { act, sample } from '../world/cli.mjs';
import { day } from '../world/returning.mjs';
import { Key, until } from './harness.mjs';
import { story } from './story.mjs';

story('the sample season is reviewed by keyboard in the window', async ({ folder, start }) => {
  const file = join(folder, 'Season.carryover');
  sample(file, day(0));
  const { moves } = act(file, 'reports.season');
  const blocks = moves.map(({ goal }) => act(file, 'goals.show', { goal }).blocks);
  assert.ok(moves.length > 5, 'there is a season to review');
  const window = await start('--file', file);
  await window.press(Key.Alt, '3');
  await window.read('What moved');
  // What moved is more than stands at first.
  await window.click("//button[starts-with(normalize-space(), 'And ') and contains(., 'what moved')]");
  await until(
    'every row of what moved',
    async () =>
      (await window.execute(`() => document.querySelectorAll('main ul')[0]?.children.length`)) ===
      moves.length,
  );
  await window.picture('review-1-season');

  const focused = () => window.execute(`() => document.activeElement?.getAttribute('href') ?? ''`);
  const row = () =>
    window.execute(`() => {
      const rows = [...document.querySelectorAll('main ul')[0].children];
      return rows.findIndex((row) => row.contains(document.activeElement));
    }`);
  for (const [n, { goal, title }] of moves.entries()) {
    for (let tabs = 0; (await row()) !== n || (await focused()) !== `#/goals/${goal}`; tabs++) {
      assert.ok(tabs < 60, `row ${n} can be reached with Tab`);
      await window.press(Key.Tab);
    }
    await window.press(Key.Enter);
    await window.see(`//h1[normalize-space()='${title}']`);
    await window.read('every one is kept');
    for (const { count } of blocks[n]) await window.read(`${count.made} of ${count.tries}`);
    if (n === 0) await window.picture('review-2-blocks');
    await window.press(Key.Alt, Key.Left);
    await until('the row that one left', async () => (await row()) === n);
    await until('it in sight', () =>
      window.execute(`() => {
        const { top, bottom } = document.activeElement.getBoundingClientRect();
        return top >= 0 && bottom <= innerHeight;
      }`),
    );
  }
  await window.picture('review-3-back');
});
