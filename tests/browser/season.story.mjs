// The season by keyboard: the spans, what moved, and from a row down to the goal's single blocks.
import { day, returningStudent } from '../world/returning.mjs';
import { arrived, expect, noFindings, tabTo, test, use, write } from './story.mjs';

test('from the season down to a single block', async ({ page, openFile, bridge }) => {
  await openFile(async (act) => {
    const made = await returningStudent(act);
    await act('observations.see', { student: made.student, kind: 'fault', words: 'Late feet' });
    await act('visits.expect', { student: made.student, from: day(-40), to: day(-20) });
    return made;
  }, '#/');
  await use(page, page.getByRole('link', { name: 'Season', exact: true }));
  await arrived(page, 'Season');
  await expect(page.getByText('1 met', { exact: true })).toBeVisible();
  await expect(page.getByText('0 kept', { exact: true })).toBeVisible();
  const list = (name) => page.getByRole('list', { name });
  await expect(list('What moved').getByRole('listitem')).toHaveCount(1);
  await expect(
    list('Waits for its retest').getByRole('link', { name: 'Lob serve', exact: true }),
  ).toBeVisible();
  await expect(list('Expected')).toContainText('passed');
  await expect(list('Seen most often')).toContainText('once, at Zoë Łukasiewicz');
  await noFindings(page);

  // Only what was met; the way back to all stays where the days have none of it.
  await use(page, page.getByRole('button', { name: /^Only met/ }));
  await expect(page.getByRole('button', { name: /^All, not only met/ })).toBeFocused();

  // A span of its own, typed; one that ends before it begins is refused beside its field.
  const [from, to] = [page.getByLabel('From', { exact: true }), page.getByLabel('To', { exact: true })];
  await write(page, from, '1.1.2020');
  await write(page, to, '31.12.2020');
  await tabTo(page, page.getByRole('button', { name: /^Twelve months/ }));
  await expect(page.getByText('No goal was met in these days.')).toBeVisible();
  await use(page, page.getByRole('button', { name: /^All, not only met/ }));
  await expect(page.getByText('No goal moved in these days.')).toBeVisible();
  await tabTo(page, page.getByRole('button', { name: /^Twelve months/ }));
  await expect(page.getByText('0 met', { exact: true })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText('1 met', { exact: true })).toBeVisible();

  await use(page, list('What moved').getByRole('link', { name: 'Lob serve', exact: true }));
  await arrived(page, 'Lob serve');
  await expect(
    page
      .getByRole('region', { name: 'Blocks' })
      .getByText(/8 of 10/)
      .first(),
  ).toBeVisible();
  const [met] = (await bridge.act('reports.season', {})).moves;
  expect(met).toMatchObject({
    to: 'met',
    title: 'Lob serve',
    why: '8 of 10 in the end test; the retest will tell',
  });
});

test('a span that ends before it begins is said so', async ({ page, openFile, refusal }) => {
  await openFile(returningStudent, '#/season');
  const to = page.getByLabel('To', { exact: true });
  await expect(page.getByText('1 met', { exact: true })).toBeVisible();
  await refusal(() => write(page, to, '1.1.2001'));
  await expect(to).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByText('The span ends before it begins.')).toBeVisible();
});
