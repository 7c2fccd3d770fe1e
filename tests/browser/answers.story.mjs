// A page filled in at home, with the network off, and its answers read in one by one; a file edited by hand does
// nothing but be refused in words.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { arrived, expect, noFindings, tabTo, test, use } from './story.mjs';

const NAME = 'Zoë </script><b>Łukasiewicz</b>';

/** Opens a saved page as a student would, with the network off; gives the page and what it asked for. */
async function atHome(context, path) {
  await context.setOffline(true);
  const home = await context.newPage();
  const asked = [];
  home.on('request', (request) => asked.push(request.url()));
  const faults = [];
  home.on('pageerror', (error) => faults.push(error.message));
  home.on('console', (said) => faults.push(said.text()));
  await home.goto(pathToFileURL(path).href);
  return { home, asked, faults };
}

test('answers from home are shown beside what is kept and taken one by one', async ({
  page,
  context,
  openFile,
  bridge,
  refusal,
}) => {
  const { id } = await openFile(
    async (act) => act('students.add', { name: NAME, called: 'Zoë </script><img src=x>', phone: '1' }),
    ({ id }) => `#/people/${id}/intake`,
  );
  await use(page, page.getByRole('button', { name: 'Save a page for home' }));
  const said = page.getByRole('status').filter({ hasText: 'Saved as' });
  await expect(said).toBeVisible();
  const path = /Saved as (.*\.html)\./.exec(await said.textContent())[1];

  const { home, asked, faults } = await atHome(context, path);
  await expect(home.getByText('Zoë </script><img src=x>')).toBeVisible();
  await noFindings(home);
  await home.getByLabel('Telephone', { exact: true }).fill('+48 22 555 01 02');
  await home.getByLabel('Whom to call').fill('Jan <i>Łukasiewicz</i>');
  await home.locator('[name="emergency.phone"]').fill('+48 22 555 01 03');
  await home
    .getByRole('group', { name: /^A known disease/ })
    .getByLabel('no', { exact: true })
    .check();
  await home.getByLabel(/^Injuries, and what/).fill('Left knee, since the spring');
  const waits = home.waitForEvent('download');
  await home.getByRole('button', { name: 'Make the file' }).click();
  const file = join(bridge.folder, 'answers.json');
  await (await waits).saveAs(file);
  await expect(home.getByText('The file “answers.json” is made.')).toBeVisible();
  expect(
    asked.filter((url) => !url.startsWith('file:') && !url.startsWith('blob:')),
    'it asks for nothing',
  ).toEqual([]);
  expect(faults, 'its own policy lets its own style and script run').toEqual([]);
  await home.close();
  await context.setOffline(false);

  const whole = JSON.parse(readFileSync(file, 'utf8'));
  expect(Object.keys(whole)).toEqual(['carryover_intake', 'token', 'answers']);

  await page.goto(`${bridge.address}#/people/${id}/answers`);
  await arrived(page, 'Answers from home');
  const chosen = page.locator('input[type=file]');
  let edits = 0;
  const refused = async (text, words) => {
    const edited = join(bridge.folder, `edited-${++edits}.json`);
    writeFileSync(edited, text);
    await refusal(async () => {
      await chosen.setInputFiles(edited);
      await expect(page.getByText(words).first()).toBeVisible();
    });
  };
  await refused('{', 'is not one that the page made');
  await refused(JSON.stringify({ ...whole, token: 'another' }), 'a page that this coach file does not know');
  await refused(
    JSON.stringify({ ...whole, answers: { ...whole.answers, about: 'x' } }),
    'The page does not ask for “about”',
  );
  await refused('['.repeat(9) + ']'.repeat(9), 'is not one that the page made');
  await refused(`"${'x'.repeat(1024 * 1024 + 4)}"`, 'larger than 1 MiB');

  await chosen.setInputFiles(file);
  await expect(page.getByLabel('Whom to call: Jan <i>Łukasiewicz</i>')).toBeChecked();
  await noFindings(page);
  await expect(page.getByText('Kept now: 1')).toBeVisible();
  await tabTo(page, page.getByLabel('Telephone: +48 22 555 01 02', { exact: true }));
  await page.keyboard.press('Space');
  await use(page, page.getByRole('button', { name: 'Take what is ticked' }));
  await arrived(page, 'Before court');
  const student = await bridge.act('students.show', { student: id });
  expect(student.profile.phone, 'what was not ticked stays').toBe('1');
  const { emergency } = await bridge.act('intake.show', { student: id });
  expect([emergency.name, emergency.phone]).toEqual(['Jan <i>Łukasiewicz</i>', '+48 22 555 01 03']);
  const [readiness] = await bridge.act('intake.readiness', { student: id });
  expect(readiness.outcome, 'what was not answered is asked').toBe('ask');
  expect((await bridge.act('intake.consents', { student: id })).every((c) => c.answer === null)).toBe(true);

  await page.goto(`${bridge.address}#/people/${id}/answers`);
  await arrived(page, 'Answers from home');
  await refusal(async () => {
    await page.locator('input[type=file]').setInputFiles(file);
    await expect(page.getByText('These answers were taken on').first()).toBeVisible();
  });
});
