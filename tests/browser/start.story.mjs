// A new machine: the first screen, and the ways on from it.
import { expect, noFindings, test } from './story.mjs';

test('a new machine begins at the start, and nothing in it is inaccessible', async ({ page, open }) => {
  await open();
  await expect(page).toHaveTitle('Welcome – Carryover');
  await expect(page.getByRole('heading', { level: 1, name: 'Welcome' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Open the sample season' })).toBeEnabled();
  await noFindings(page);
});

test('an empty file is made and opens on its day sheet', async ({ page, open, bridge }) => {
  await open();
  await page.getByRole('button', { name: 'Start an empty file' }).click();
  await page.getByLabel('Its name').fill('Harbour 2026');
  await page.getByRole('button', { name: 'Make the file' }).click();
  await expect(page.getByText('This file is still empty.')).toBeVisible();
  expect((await bridge.act('desk.look')).open.name, 'the desk holds the file that was named').toBe(
    'Harbour 2026',
  );
});

test('a request from another page, or without the token, is refused', async ({ open, page, bridge }) => {
  await open();
  const asked = (headers) =>
    fetch(new URL('/call', bridge.address), {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: '{"name":"desk.look","input":{}}',
    });
  expect((await asked({})).status, 'no token').toBe(403);
  expect((await asked({ origin: 'http://elsewhere.example', 'x-carryover-token': 'x' })).status).toBe(403);
  await expect(page.locator('main h1')).toBeVisible();
});
