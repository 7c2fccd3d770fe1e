// A coach reviews a whole season by keyboard alone, on the sample: every goal that moved, from its row on the Season
// screen down to its single blocks, and back to that row; as many as the core says there were.
import { arrived, expect, noFindings, tabTo, test, use } from './story.mjs';

test('the whole season is reviewed by keyboard', async ({ page, open, bridge }) => {
  await bridge.act('desk.sample');
  await open('#/');
  await page.keyboard.press('Alt+3');
  await arrived(page, 'Season');
  const season = await bridge.act('reports.season', {});
  const list = (name) => page.getByRole('list', { name, exact: true });
  const rows = list('What moved').getByRole('listitem');
  // What moved is more than stands at first.
  await use(page, page.getByRole('button', { name: /^And \d+ more ?: what moved/ }));
  await expect(rows).toHaveCount(season.moves.length);
  expect(new Set(season.moves.map((move) => move.to))).toEqual(new Set(['met', 'kept', 'slipped', 'raised']));
  await expect(list('Expected').getByRole('listitem')).toHaveCount(season.awaited.length);
  await expect(list('Seen most often').getByRole('listitem')).toHaveCount(season.seen.length);
  expect(Math.min(season.awaited.length, season.seen.length, season.waits.length)).toBeGreaterThan(0);
  await noFindings(page);

  /** Down to the blocks of the goal that has the focus, and back to where one was. */
  async function review(row, { goal, title }) {
    const link = row.getByRole('link', { name: title, exact: true });
    await use(page, link);
    await arrived(page, title);
    const { blocks } = await bridge.act('goals.show', { goal });
    const part = page.getByRole('region', { name: 'Blocks' });
    await expect(part.getByRole('listitem')).toHaveCount(blocks.length);
    for (const [n, block] of blocks.entries()) {
      await expect(part.getByRole('listitem').nth(n)).toContainText(
        `${block.count.made} of ${block.count.tries}`,
      );
    }
    const missed = part.getByRole('button', { name: /^(Why missed|Change the reasons)/ });
    if ((await missed.count()) > 0) await tabTo(page, missed.last());
    await page.keyboard.press('Alt+ArrowLeft');
    await expect(link, 'one is back at the row that one left').toBeFocused();
    return blocks.length;
  }
  let blocks = 0;
  for (const [n, move] of season.moves.entries()) blocks += await review(rows.nth(n), move);
  expect(blocks, 'blocks were there to look at').toBeGreaterThan(season.moves.length);

  // What was chosen is still so after going down and back.
  await use(page, page.getByRole('button', { name: /^Only slipped/ }));
  const slipped = season.moves.filter((move) => move.to === 'slipped');
  await expect(rows).toHaveCount(slipped.length);
  await review(rows.first(), slipped[0]);
  await expect(rows).toHaveCount(slipped.length);

  // What waits is more than stands at first.
  const waiting = list('Waits for its retest').getByRole('listitem');
  await use(page, page.getByRole('button', { name: /^And \d+ more ?: what waits/ }));
  await expect(waiting).toHaveCount(season.waiting);
  await review(waiting.last(), season.waits.at(-1));
  await expect(waiting).toHaveCount(season.waiting);

  // Arriving by the head of the page begins anew, at the title.
  await page.keyboard.press('Alt+2');
  await arrived(page, 'People');
  await page.keyboard.press('Alt+3');
  await arrived(page, 'Season');
  await expect(rows, 'as many as stand at first').toHaveCount(12);
});
