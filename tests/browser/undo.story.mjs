// Undo by keyboard alone: whatever was done on whichever screen, afterwards the record is as it was.
import { returningStudent } from '../world/returning.mjs';
import { arrived, expect, stillThere, tabTo, test, use, write } from './story.mjs';

/** What the coach file says about all that the acts here touch. */
async function record(act, { student, visit }) {
  const asked = {
    'visits.list': { student },
    'goals.list': { student },
    'goals.proposals': { visit },
    'lessons.list': { visit },
    'students.show': { student },
    'facilities.list': { archived: true },
    'settings.show': {},
  };
  const said = {};
  for (const [name, input] of Object.entries(asked)) said[name] = await act(name, input);
  said.goals = [];
  for (const { goal } of said['goals.list']) said.goals.push(await act('goals.show', { goal: goal.id }));
  return said;
}

/** Does it, undoes it, and finds the record as before; `undo` says how. */
async function thereAndBack(page, bridge, made, doIt, words, undo) {
  const before = await record(bridge.act, made);
  await doIt();
  await expect(page.getByText(words)).toBeVisible();
  await stillThere(page);
  expect(await record(bridge.act, made), 'it changed something').not.toEqual(before);
  await undo();
  await expect(page.getByText(/^Undone: /)).toBeVisible();
  await stillThere(page);
  expect(await record(bridge.act, made), 'as it was before').toEqual(before);
}

test('what the line says is undone in the line, and the focus stays there', async ({
  page,
  openFile,
  bridge,
}) => {
  const made = await openFile(returningStudent, ({ visit }) => `#/visits/${visit}`);
  const undo = () => use(page, page.getByRole('button', { name: 'Undo', exact: true }));
  const start = page.getByRole('button', { name: 'Start the visit' });
  await thereAndBack(page, bridge, made, () => use(page, start), 'Visit started: Zoë Łukasiewicz', undo);
  await expect(page.getByRole('group', { name: 'What was just done' })).toBeFocused();
  await expect(start, 'the screen shows it').toBeVisible();
  await use(page, page.getByRole('button', { name: /^Put away ?: this line$/ }));
  await expect(page.getByText(/^Undone: /)).toBeHidden();
  await arrived(page, 'Zoë Łukasiewicz');

  await page.keyboard.press('Alt+4');
  await use(page, page.getByRole('link', { name: 'Harbour Hall' }));
  const away = page.getByRole('button', { name: 'Put away', exact: true });
  await thereAndBack(page, bridge, made, () => use(page, away), 'Harbour Hall put away.', undo);
  await expect(away).toBeVisible();
});

test('Ctrl+Z undoes what was just done from where one is, and in a field what was typed', async ({
  page,
  openFile,
  bridge,
}) => {
  const made = await openFile(returningStudent, ({ student }) => `#/people/${student}`);
  const undo = () => page.keyboard.press('ControlOrMeta+Z');
  const down = page.getByRole('button', { name: /^Down ?: / });
  await thereAndBack(page, bridge, made, () => use(page, down), 'Order of goals changed.', undo);

  await page.keyboard.press('Alt+7');
  const closing = page.getByLabel('Closing');
  const save = async () => {
    await write(page, closing, 'Until the next visit,');
    await use(page, page.getByRole('button', { name: 'Save', exact: true }));
  };
  await thereAndBack(page, bridge, made, save, 'Settings changed.', undo);
  await expect(closing, 'the field shows what the record says').toHaveValue('See you on court,');

  await save();
  await expect(page.getByText('Settings changed.')).toBeVisible();
  await tabTo(page, page.getByLabel('Your name'));
  await page.keyboard.type('X');
  await undo();
  expect((await bridge.act('settings.show')).closing, 'only the field was undone').toBe(
    'Until the next visit,',
  );
  await expect(page.getByText('Settings changed.')).toBeVisible();
});

test('an act of the history is undone without losing the place', async ({ page, openFile, bridge }) => {
  await openFile(async (act) => {
    await act('facilities.add', { name: 'Harbour Hall', zone: 'Europe/Dublin' });
    await act('facilities.add', { name: 'Mill Lane', zone: 'Europe/Dublin' });
  }, '#/coach');
  const row = page.getByRole('listitem').filter({ hasText: 'Mill Lane' });
  const [newest] = await bridge.act('journal.newest', { most: 1 });
  await use(page, page.getByRole('listitem').filter({ hasText: newest.label }).first().getByRole('button'));
  await expect(page.getByText(/^Undone: /)).toBeVisible();
  expect((await bridge.act('facilities.list')).map((f) => f.place.name)).toEqual(['Harbour Hall']);
  await stillThere(page);
  await expect(row.getByRole('button')).toHaveCount(0);
  await expect(
    page.locator('li:focus'),
    'the row keeps it, so that Enter does not undo the next act',
  ).toHaveCount(1);
});

test('with a pointer, nothing scrolls when the line is undone or put away', async ({ page, openFile }) => {
  await page.setViewportSize({ width: 1200, height: 320 });
  await openFile(returningStudent, ({ student }) => `#/people/${student}`);
  const away = page.getByRole('button', { name: 'Put away', exact: true });
  await away.click();
  await expect(page.getByText('Zoë Łukasiewicz put away.')).toBeVisible();
  const at = await page.evaluate(() => window.scrollY);
  expect(at, 'far down').toBeGreaterThan(200);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(page.getByText(/^Undone: /)).toBeVisible();
  await page.getByRole('button', { name: /^Put away ?: this line$/ }).click();
  await expect(page.getByText(/^Undone: /)).toBeHidden();
  await stillThere(page);
  expect(Math.abs((await page.evaluate(() => window.scrollY)) - at)).toBeLessThan(80);
});
