// The field in the head, by keyboard alone: a person, a goal and an act by a few letters, from anywhere.
import { returningStudent } from '../world/returning.mjs';
import { arrived, expect, noFindings, test } from './story.mjs';

test('a few letters lead to a person, a goal, an act or a screen', async ({ page, openFile }) => {
  await openFile(returningStudent, () => '#/places');
  const field = page.getByRole('combobox', { name: 'Find or do' });
  const offers = page.getByRole('listbox', { name: 'Found' });

  await page.keyboard.press('/');
  await expect(field).toBeFocused();
  await page.keyboard.type('zoe');
  await expect(offers.getByRole('option')).toHaveText([/Zoë Łukasiewicz\s+student/]);
  await noFindings(page);
  await page.keyboard.press('Enter');
  await arrived(page, 'Zoë Łukasiewicz');

  await page.keyboard.press('/');
  await expect(field, 'nothing is left of the last search').toHaveValue('');
  await page.keyboard.type('lob');
  await expect(offers.getByRole('option').first()).toHaveText(/goal, Zoë Łukasiewicz/);
  await page.keyboard.press('ArrowDown');
  await expect(offers.getByRole('option', { selected: true })).toHaveText(/goal, Zoë/);
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#\/goals\//);

  await page.keyboard.press('/');
  await page.keyboard.type('add a stu');
  await page.keyboard.press('Enter');
  await arrived(page, 'Add a student');

  await page.evaluate(() => document.activeElement.blur());
  await page.keyboard.press('/');
  await page.keyboard.type('zzzz');
  await expect(page.getByText('Nothing by that name.')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByText('Nothing by that name.')).toBeHidden();
  await expect(field).toHaveValue('zzzz');
  await page.keyboard.press('Escape');
  await expect(field).toHaveValue('');
});
