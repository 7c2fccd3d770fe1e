// What changed of a thing, by keyboard alone, with undo; and the language of a letter.
import { returningStudent } from '../world/returning.mjs';
import { arrived, expect, noFindings, stillThere, test, use } from './story.mjs';

test('what changed of a goal is read and taken back from there', async ({ page, openFile, bridge }) => {
  const { lob } = await openFile(returningStudent, ({ lob }) => `#/goals/${lob}`);
  await bridge.act('goals.change_words', { goal: lob, cue: 'Brush up the back' });
  await use(page, page.getByRole('link', { name: 'What changed' }));
  await arrived(page, 'What changed');
  await expect(page.getByText('End test entered: 8 of 10, Lob serve', { exact: true })).toBeVisible();
  await expect(page.getByText('Goal set: Lob serve', { exact: true })).toBeVisible();
  await expect(page.getByText('Backhand')).toBeHidden();
  await noFindings(page);
  await use(page, page.getByRole('button', { name: /^Undo ?: New words for Lob serve/ }));
  await expect(page.getByText('Undone: New words for Lob serve')).toBeVisible();
  await expect(page.getByText('undone since')).toBeVisible();
  await stillThere(page);
  const { words } = (await bridge.act('goals.show', { goal: lob })).goal;
  expect(words.map((w) => w.cue)).toEqual(['Lift, don’t push']);
});

test('a letter is written in German, and in English again', async ({ page, openFile, bridge }) => {
  const { visit } = await openFile(
    async (act) => {
      const made = await returningStudent(act);
      await act('visits.open', { visit: made.visit });
      await act('goals.enter_total', {
        goal: made.lob,
        visit: made.visit,
        kind: 'retest',
        made: 9,
        tries: 10,
      });
      return made;
    },
    ({ visit }) => `#/letters/${visit}`,
  );
  await use(page, page.getByRole('button', { name: 'Write it in German' }));
  await expect(page.getByText('Letters to this student in German.')).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Opening' })).toHaveValue(/^Hallo Zoë,/);
  await expect(page.getByRole('button', { name: 'Write it in English' })).toBeFocused();
  expect((await bridge.act('letters.draft', { visit })).language).toBe('de');
  await use(page, page.getByRole('button', { name: 'Write it in English' }));
  await expect(page.getByRole('textbox', { name: 'Opening' })).toHaveValue(/^Dear Zoë,/);
});
