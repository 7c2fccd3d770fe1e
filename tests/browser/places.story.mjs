// Places by keyboard alone: a facility is added, refused, changed and put away, and so are its courts.
import { arrived, expect, stillThere, tabTo, test, use, write } from './story.mjs';

const hall = (act) => act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });

test('a refused facility leads to what is wrong, and what was typed stays', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  await openFile(undefined, '#/places');
  await use(page, page.getByRole('link', { name: 'Add a facility' }).first());
  await arrived(page, 'Add a facility');
  await write(page, page.getByLabel('Time zone'), 'Atlantis');
  await write(page, page.getByLabel('Address'), '3 Mill Lane');
  const add = page.getByRole('button', { name: 'Add the facility' });
  await refusal(() => use(page, add));
  const summary = page.getByRole('alert');
  await expect(summary).toContainText('2 answers need another look');
  await expect(page.getByLabel('Name'), 'the first wrong field has the focus').toBeFocused();
  await expect(page.getByLabel('Name')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('Address')).toHaveValue('3 Mill Lane');
  expect(await bridge.act('facilities.list'), 'nothing was written').toEqual([]);

  for (let i = 0; i < 3; i++) {
    if (
      await summary
        .getByRole('button')
        .last()
        .evaluate((node) => node === document.activeElement)
    )
      break;
    await page.keyboard.press('Shift+Tab');
  }
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Time zone'), 'each problem leads to its field').toBeFocused();
  await expect(page.getByLabel('Time zone')).toHaveValue('Atlantis');
  await write(page, page.getByLabel('Time zone'), 'dublin');
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Shift+Tab');
  await expect(page.getByLabel('Name')).toBeFocused();
  await page.keyboard.type('Mill Lane');
  await page.keyboard.press('Enter');
  await arrived(page, 'Mill Lane');
  await expect(page.getByText('Mill Lane added.')).toBeVisible();
  const [kept] = await bridge.act('facilities.list');
  expect(kept.place).toMatchObject({ name: 'Mill Lane', zone: 'Europe/Dublin', address: '3 Mill Lane' });
});

test('courts are added, renamed and put away; the focus goes back to what was used', async ({
  page,
  openFile,
  bridge,
}) => {
  const { id } = await openFile(hall, ({ id }) => `#/places/${id}`);
  const courts = async () =>
    (await bridge.act('facilities.show', { facility: id })).courts.map((c) => [c.name, c.archived !== null]);
  const button = (name) => page.getByRole('button', { name });
  await use(page, button('Add a court'));
  await expect(page.getByLabel('Name'), 'a form begins at its first field').toBeFocused();
  await page.keyboard.type('Court 1');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Court 1 added.')).toBeVisible();
  await expect(button('Add a court')).toBeFocused();
  expect(await courts()).toEqual([['Court 1', false]]);

  await use(page, button(/^Change ?: Court 1$/));
  await write(page, page.getByLabel('Name'), 'Glass court');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Glass court changed.')).toBeVisible();
  await expect(button(/^Change ?: Glass court$/)).toBeFocused();
  expect(await courts()).toEqual([['Glass court', false]]);

  await use(page, button(/^Put away ?: Glass court$/));
  await expect(page.getByText('Glass court put away.')).toBeVisible();
  await expect(button(/^Bring back ?: Glass court$/)).toBeFocused();
  expect(await courts()).toEqual([['Glass court', true]]);
});

test('a facility is changed, put away, found among those put away and brought back', async ({
  page,
  openFile,
  bridge,
}) => {
  const { id } = await openFile(hall, '#/places');
  const place = () => bridge.act('facilities.show', { facility: id });
  await use(page, page.getByRole('link', { name: 'Harbour Hall' }));
  await arrived(page, 'Harbour Hall');
  const change = page.getByRole('button', { name: 'Change', exact: true });
  await use(page, change);
  await write(page, page.getByLabel('Town'), 'Saltmere');
  await use(page, page.getByRole('button', { name: 'Save' }));
  await expect(page.getByText('Harbour Hall changed.')).toBeVisible();
  await expect(change).toBeFocused();
  expect((await place()).place.town).toBe('Saltmere');
  await use(page, change);
  await write(page, page.getByLabel('Town'), 'Elsewhere');
  await page.keyboard.press('Escape');
  await expect(change, 'a form that is left gives the focus back').toBeFocused();
  expect((await place()).place.town, 'and writes nothing').toBe('Saltmere');

  await use(page, page.getByRole('button', { name: 'Put away', exact: true }));
  await expect(page.getByText('Harbour Hall put away.')).toBeVisible();
  await stillThere(page);
  expect((await place()).archived !== null).toBe(true);
  await page.keyboard.press('Alt+4');
  await arrived(page, 'Places');
  await expect(page.getByText('No place yet.')).toBeVisible();
  await tabTo(page, page.getByLabel('Those put away as well'));
  await page.keyboard.press('Space');
  await use(page, page.getByRole('link', { name: 'Harbour Hall' }));
  await use(page, page.getByRole('button', { name: 'Bring back' }));
  await expect(page.getByText('Harbour Hall brought back.')).toBeVisible();
  await stillThere(page);
  expect((await place()).archived !== null).toBe(false);
});
