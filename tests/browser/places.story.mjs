// Places by keyboard alone: a facility is added, refused, changed and put away, and so are its courts.
import { arrived, choose, expect, stillThere, tabTo, test, use, write } from './story.mjs';

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

test('the rules of a facility are written down row by row, refused where they are wrong, and stand in words', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { id } = await openFile(hall, ({ id }) => `#/places/${id}`);
  await use(page, page.getByRole('link', { name: 'Write the rules' }));
  await arrived(page, 'Rules of booking at Harbour Hall');
  const opening = page.getByRole('group', { name: 'Opening 1' });
  await use(page, page.getByRole('button', { name: 'Add: opening', exact: true }));
  await expect(opening.getByLabel('Opens'), 'a new row begins at its first field').toBeFocused();
  await page.keyboard.type('7');
  await write(page, opening.getByLabel('Closes'), '6:30');
  await use(page, page.getByRole('button', { name: 'Add: price' }));
  const price = page.getByRole('group', { name: 'Price 1' });
  await expect(price.getByLabel('An hour costs')).toBeFocused();
  await page.keyboard.type('18,5');
  await write(page, price.getByLabel('Kind of court'), 'indoor');
  await use(page, page.getByRole('button', { name: 'Add: opening of the book' }));
  await page.keyboard.type('7');
  await use(page, page.getByRole('button', { name: 'Add: deadline' }));
  await page.keyboard.type('24');
  await write(page, page.getByLabel('Bookings start every'), 'half an hour');
  const keep = page.getByRole('button', { name: 'Keep these rules' });
  await refusal(() => use(page, keep));
  await expect(page.getByRole('alert')).toContainText('3 answers need another look');
  await expect(opening.getByLabel('Closes'), 'the first wrong field has the focus').toBeFocused();
  await expect(page.getByLabel('Currency')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('Bookings start every')).toHaveValue('half an hour');
  await write(page, opening.getByLabel('Closes'), '23');
  await write(page, page.getByLabel('Currency'), 'eur');
  await write(page, page.getByLabel('Bookings start every'), '30');
  await use(page, page.getByRole('button', { name: 'Add: opening', exact: true }));
  await use(page, page.getByRole('button', { name: /^Leave out ?: Opening 2$/ }));
  await expect(opening.getByLabel('Opens'), 'leaving a row out goes to the one before').toBeFocused();
  await use(page, keep);
  await arrived(page, 'Harbour Hall');
  await expect(page.getByText('every day, 07:00 to 23:00')).toBeVisible();
  await expect(page.getByText('18.50 EUR, on indoor courts')).toBeVisible();
  await expect(page.getByText('until 24 hours before, later the whole price')).toBeVisible();
  expect(await bridge.act('facilities.rules', { facility: id })).toMatchObject({
    currency: 'EUR',
    grid: 30,
    hours: [{ opens: '07:00', closes: '23:00' }],
    ahead: [{ amount: 7, unit: 'days' }],
  });
  await use(page, page.getByRole('button', { name: 'Undo' }));
  await expect(page.getByText('No rules yet.')).toBeVisible();
});

test('the permission to teach, the desk and the kind of a court are noted', async ({
  page,
  openFile,
  bridge,
}) => {
  const { id } = await openFile(hall, ({ id }) => `#/places/${id}`);
  await expect(page.getByText('Nobody was asked yet whether you may teach here.')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Note the permission' }));
  await choose(page, page.getByRole('group', { name: 'May you teach here' }), 'granted');
  await write(page, page.getByLabel('Who said so'), 'Nuala');
  await write(page, page.getByRole('textbox', { name: /^Until/ }), '31 December 2099');
  await write(page, page.getByLabel('To be shown'), 'an insurance certificate');
  await page.keyboard.press('Enter');
  await expect(page.getByText('You may teach here, granted by Nuala, until 31 December 2099.')).toBeVisible();
  await expect(page.getByText('To show: an insurance certificate.')).toBeVisible();

  await use(page, page.getByRole('button', { name: 'Write it down' }));
  await write(page, page.getByLabel('At the desk'), 'Nuala');
  await write(page, page.getByLabel('Defibrillator'), 'between the changing rooms');
  await page.keyboard.press('Enter');
  await expect(page.getByText('between the changing rooms')).toBeVisible();

  await use(page, page.getByRole('button', { name: 'Add a court' }));
  await page.keyboard.type('Court 1');
  await write(page, page.getByLabel('Kind of court'), 'outdoor');
  await choose(page, page.getByRole('group', { name: 'Can it be seen into from outside' }), 'yes');
  await page.keyboard.press('Enter');
  await expect(page.getByText('outdoor · can be seen into')).toBeVisible();
  expect((await bridge.act('facilities.show', { facility: id })).courts).toMatchObject([
    { name: 'Court 1', ground: 'outdoor', seen: 'yes' },
  ]);
});

test('a lesson says what its court costs, when to ask for it, and which rule it breaks', async ({
  page,
  openFile,
}) => {
  const setup = async (act) => {
    const { id: facility } = await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
    await act('facilities.set_rules', {
      facility,
      rules: {
        currency: 'EUR',
        hours: [{ opens: '07:00', closes: '20:00' }],
        rates: [{ hour: '18' }],
        ahead: [{ amount: 7, unit: 'days', opens: '07:30' }],
        release: [{ hours: 24, later: 'full' }],
      },
    });
    const student = await act('students.add', { name: 'Olive Grant' });
    return act('visits.plan', {
      student: student.id,
      facility,
      first_day: '2099-03-11',
      last_day: '2099-03-14',
    });
  };
  await openFile(setup, ({ id }) => `#/visits/${id}`);
  await use(page, page.getByRole('button', { name: 'Plan a lesson' }).first());
  await write(page, page.getByLabel('Begins'), '19:30');
  await page.keyboard.press('Tab');
  await expect(page.getByText('On Wednesday 11 March 2099 it is open 07:00 to 20:00.')).toBeVisible();
  await expect(page.getByText('It costs 18.00 EUR.')).toBeVisible();
  await expect(page.getByText('It can be asked for from Wednesday 4 March 2099, 07:30.')).toBeVisible();
  await expect(
    page.getByText(
      'It can be given back free until Tuesday 10 March 2099, 19:30; later it costs the whole price.',
    ),
  ).toBeVisible();
  await page.keyboard.press('Shift+Tab');
  await write(page, page.getByLabel('Begins'), '18:00');
  await page.keyboard.press('Tab');
  await expect(page.getByText('Against the facility’s rules')).toBeHidden();
});
