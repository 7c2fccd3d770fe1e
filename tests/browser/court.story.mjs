// On court by keyboard alone: touches, a note, a block and the lesson ended, each as it is in the coach file.
import { returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, stillThere, tabTo, test, use, write } from './story.mjs';

/** The visit of today, started, and its lesson. */
async function onCourt(act) {
  const made = await returningStudent(act);
  await act('visits.open', { visit: made.visit });
  const [lesson] = await act('lessons.list', { visit: made.visit });
  return { ...made, lesson: lesson.id };
}
const address = ({ visit, lesson }) => `#/court/${visit}/${lesson}`;

/** The tries of each open block by its goal, as they are on disk: "++-". */
async function tries(bridge, visit) {
  const goals = await bridge.act('goals.on_court', { visit });
  return Object.fromEntries(
    goals.map((g) => [g.goal.goal.title, g.open?.tries.map((made) => (made ? '+' : '-')).join('') ?? 'none']),
  );
}

test('keys count, take back and are each on disk', async ({ page, openFile, bridge }) => {
  const { visit } = await openFile(onCourt, address);
  const [lob, wall] = (await bridge.act('goals.on_court', { visit })).map((g) => g.goal.goal.title);
  const onDisk = (of) => expect.poll(() => tries(bridge, visit)).toEqual(of);
  await expect(page.getByRole('button', { name: /^made ?: Lob serve/ })).toBeEnabled();

  await page.keyboard.type('1123');
  await onDisk({ [lob]: '++-', [wall]: '+' });
  await page.keyboard.down('4');
  await page.keyboard.down('4');
  await page.keyboard.down('4');
  await page.keyboard.up('4');
  await onDisk({ [lob]: '++-', [wall]: '+-' });
  await page.keyboard.press('u');
  await expect(page.getByText(`One touch taken back: ${wall}`)).toBeVisible();
  await onDisk({ [lob]: '++-', [wall]: '+' });

  await tabTo(page, page.getByRole('button', { name: /^made ?: Lob serve/ }));
  await page.keyboard.press('Enter');
  await page.keyboard.press('Space');
  await onDisk({ [lob]: '++-++', [wall]: '+' });
  await expect(
    page.getByRole('button', { name: /^made ?: Lob serve/ }),
    'a touch keeps its place',
  ).toBeFocused();

  await page.keyboard.press('?');
  const keys = page.getByRole('dialog', { name: 'Keys' });
  await expect(keys.getByText(`Missed: ${wall}`)).toBeVisible();
  await page.keyboard.type('1');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: /^made ?: Lob serve/ })).toBeFocused();
  await onDisk({ [lob]: '++-++', [wall]: '+' });
});

test('a note is written from wherever one is, and the focus goes back there', async ({
  page,
  openFile,
  bridge,
}) => {
  const { visit, wall } = await openFile(onCourt, address);
  const button = page.getByRole('button', { name: /^missed ?: Backhand/ });
  await tabTo(page, button);
  await page.keyboard.press('n');
  await expect(page.getByLabel('What you saw')).toBeFocused();
  await page.keyboard.type('1, 2 and u are letters here');
  await tabTo(page, page.getByLabel('About'));
  await page.keyboard.type('Backhand');
  await use(page, page.getByRole('button', { name: 'Write it down' }));
  await expect(page.getByText('Note written.')).toBeVisible();
  await expect(button).toBeFocused();
  const [note] = await bridge.act('goals.jottings', { visit });
  expect([note.words, note.goal]).toEqual(['1, 2 and u are letters here', wall]);
  const counted = Object.values(await tries(bridge, visit));
  expect(counted, 'typing counts nothing').toEqual(['none', 'none']);
  await page.keyboard.press('t');
  await expect(page.getByLabel('Made of tries')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(button, 'a form that is left gives the focus back').toBeFocused();
});

test('a block is ended and opened again by Undo; then the lesson ends', async ({
  page,
  openFile,
  bridge,
}) => {
  const { visit, lesson } = await openFile(onCourt, address);
  await expect(page.getByRole('button', { name: /^made ?: Lob serve/ })).toBeEnabled();
  await page.keyboard.type('1112');
  await expect.poll(async () => (await tries(bridge, visit))['Lob serve']).toBe('+++-');
  const before = await bridge.act('goals.on_court', { visit });

  await use(page, page.getByRole('button', { name: /^End the block ?: Lob serve$/ }));
  await expect(page.getByText('retest ended: 0 of 1')).toBeVisible();
  await expect(page.getByRole('button', { name: /^End the block/ })).toHaveCount(0);
  await expect(
    page.getByRole('heading', { level: 2, name: 'Lob serve' }),
    'the focus stays with the goal, on no act that a second press would do',
  ).toBeFocused();
  expect((await tries(bridge, visit))['Lob serve']).toBe('none');

  await use(page, page.getByRole('button', { name: 'Undo', exact: true }));
  await expect(page.getByText(/^Undone: /)).toBeVisible();
  await stillThere(page);
  expect(await bridge.act('goals.on_court', { visit }), 'as it was before').toEqual(before);

  await use(page, page.getByRole('button', { name: 'End the lesson' }));
  await choose(page, page.getByRole('group', { name: 'The lesson was' }), 'cut short');
  await write(page, page.getByLabel('Minutes taught'), '45');
  await write(page, page.getByLabel('Reason'), 'The hall closed early');
  await write(page, page.getByLabel('What is next'), 'Begin with the wall');
  await use(page, page.getByRole('dialog').getByRole('button', { name: 'End the lesson' }));
  await arrived(page, 'Zoë Łukasiewicz');
  await expect(page).toHaveURL(new RegExp(`#/visits/${visit}$`));
  const ended = (await bridge.act('lessons.list', { visit })).find((l) => l.id === lesson);
  expect([ended.state, ended.given, ended.reason, ended.next]).toEqual([
    'cut_short',
    45,
    'The hall closed early',
    'Begin with the wall',
  ]);
  expect((await tries(bridge, visit))['Lob serve'], 'its block ended with it').toBe('none');
});

test('a court opened again asks which touch to take back; a waiting goal is brought up', async ({
  page,
  openFile,
  bridge,
}) => {
  const { visit, student } = await openFile(async (act) => {
    const made = await onCourt(act);
    for (const title of ['Return', 'Overhead']) {
      const set = { title, condition: 'live', counts: 'result', need: 8, of: 10 };
      await act('goals.set', { student: made.student, visit: made.visit, ...set });
    }
    for (const goal of [made.lob, made.wall]) {
      const block = await act('goals.start_block', {
        goal,
        visit: made.visit,
        lesson: made.lesson,
        kind: 'retest',
      });
      await act('goals.touch', { block: block.id, made: true });
    }
    return made;
  }, address);
  await expect(page.getByRole('button', { name: /^made ?: Lob serve/ })).toBeEnabled();
  const undo = page.getByRole('button', { name: 'Undo last touch' });
  await use(page, undo);
  const dialog = page.getByRole('dialog', { name: 'Which touch?' });
  await expect(dialog).toBeVisible();
  await use(page, dialog.getByRole('button', { name: 'Backhand off the back wall' }));
  await expect(page.getByText('One touch taken back: Backhand off the back wall')).toBeVisible();
  await expect(undo).toBeFocused();
  expect(await tries(bridge, visit)).toMatchObject({ 'Lob serve': '+', 'Backhand off the back wall': '' });

  await use(page, page.getByRole('button', { name: /^Bring it up ?: Overhead$/ }));
  await expect(page.getByText('Now on court: Overhead')).toBeVisible();
  await stillThere(page);
  expect((await bridge.act('goals.list', { student })).map((g) => g.goal.title).slice(0, 4)).toEqual([
    'Lob serve',
    'Backhand off the back wall',
    'Overhead',
    'Return',
  ]);
});

test('a visit is started from the court, and its first block is not a retest', async ({
  page,
  openFile,
  bridge,
}) => {
  const { visit } = await openFile(returningStudent, ({ visit }) => `#/court/${visit}`);
  const stage = async () => (await bridge.act('visits.show', { visit })).stage;
  const made = page.getByRole('button', { name: /^made ?: Lob serve/ });
  await use(page, page.getByRole('button', { name: 'Start the visit' }));
  await expect(made).toBeEnabled();
  await stillThere(page);
  expect(await stage()).toBe('open');
  await use(page, page.getByRole('button', { name: /^Not now ?: Lob serve$/ }));
  await use(page, page.getByRole('button', { name: /^End test ?: Lob serve$/ }));
  await stillThere(page);
  await page.keyboard.press('1');
  await expect
    .poll(async () => (await bridge.act('goals.on_court', { visit }))[0].open?.kind)
    .toBe('end_test');
});
