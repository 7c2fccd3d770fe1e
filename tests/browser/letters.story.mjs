// A letter by keyboard alone: read, corrected in one part, left out in another, issued, opened, corrected anew.
import { returningStudent } from '../world/returning.mjs';
import { arrived, expect, stillThere, tabTo, test, use, write } from './story.mjs';

/** The visit before, whose letter is owed. */
async function owed(act) {
  const { student } = await returningStudent(act);
  return (await act('visits.list', { student })).find((v) => v.stage === 'closed').id;
}

test('a letter is corrected, issued and opened', async ({ page, openFile, bridge }) => {
  const visit = await openFile(owed, '#/letters');
  const part = async (key) => (await bridge.act('letters.draft', { visit })).parts.find((p) => p.key === key);
  const button = (name) => page.getByRole('button', { name });
  await use(page, page.getByRole('link', { name: /^Read it ?: Zoë Łukasiewicz$/ }));
  await arrived(page, 'Letter for Zoë Łukasiewicz');

  const opening = page.getByRole('textbox', { name: 'Opening' });
  const proposed = (await part('opening')).text;
  await tabTo(page, opening);
  await page.keyboard.press('ControlOrMeta+Home');
  await page.keyboard.type('It was good to see you. ');
  await expect.poll(async () => (await part('opening')).text).toBe(`It was good to see you. ${proposed}`);
  await expect(opening, 'keeping it moves nobody').toBeFocused();
  await expect(page.locator('svg text', { hasText: 'It was good to see you.' }).first()).toBeVisible();

  await write(page, page.getByRole('textbox', { name: 'Closing' }), 'Until spring,');
  await page.keyboard.press('Shift+Tab');
  await expect
    .poll(async () => (await part('closing')).text, 'leaving a part keeps it')
    .toBe('Until spring,');
  await use(page, button(/^The program’s again ?: Opening$/));
  await expect(page.getByText('The program’s words again.')).toBeVisible();
  await expect(button(/^The program’s again ?: Opening$/)).toHaveCount(0);
  await stillThere(page);
  expect((await part('opening')).text).toBe(proposed);

  await use(page, button(/^Leave out ?: What we worked on$/));
  await expect(page.getByText('Left out.')).toBeVisible();
  await expect(button(/^Take in again ?: What we worked on$/)).toBeFocused();
  expect((await part('worked')).left_out).toBe(true);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Taken in again.')).toBeVisible();
  expect((await part('worked')).left_out).toBe(false);

  await use(page, button('Issue the letter'));
  await arrived(page, 'Letter for Zoë Łukasiewicz');
  await expect(page.getByText('It never changes; a correction is a new letter.')).toBeVisible();
  await expect(page.getByText('Letter issued. It will not change any more.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo', exact: true }), 'what went out stays').toHaveCount(0);
  const [letter] = (await bridge.act('letters.list')).filter((l) => l.state === 'issued');
  await expect(page).toHaveURL(new RegExp(`#/issued/${letter.letter}$`));
  const issued = await bridge.act('letters.show', { letter: letter.letter });
  expect(JSON.stringify(issued.pages)).toContain('Until spring,');

  await use(page, button('Save a copy'));
  await expect(page.getByText(/^Saved as .*\.pdf$/)).toBeVisible();
  await expect(button('Save a copy')).toBeFocused();
  await page.keyboard.press('Alt+6');
  await arrived(page, 'Letters');
  await expect(page.getByText('No letter is owed.')).toBeVisible();
  await use(page, page.getByRole('link', { name: /^Open ?: Zoë Łukasiewicz$/ }));
  await use(page, page.getByRole('link', { name: 'Write a correction' }));
  await expect(page.getByText(/^Issued /)).toBeVisible();
  await arrived(page, 'Letter for Zoë Łukasiewicz');
});
