// A goal and what is kept about a student, changed by keyboard alone.
import { returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, stillThere, tabTo, test, use, write } from './story.mjs';

test('a goal gets new words, is set aside with a reason and taken up again', async ({
  page,
  openFile,
  bridge,
}) => {
  const { wall } = await openFile(returningStudent, ({ student }) => `#/people/${student}`);
  const goal = async () => bridge.act('goals.show', { goal: wall });
  const button = (name) => page.getByRole('button', { name, exact: true });
  await use(page, page.getByRole('list', { name: 'Goals' }).getByRole('link', { name: /^Backhand/ }));
  await arrived(page, 'Backhand off the back wall');

  await use(page, button('New words'));
  await expect(page.getByLabel('Cue')).toBeFocused();
  await expect(page.getByLabel('Cue')).toHaveValue('Feet with the ball');
  await write(page, page.getByLabel('Cue'), 'Wait for it');
  await page.keyboard.press('Enter');
  await expect(page.getByText('New words from today.')).toBeVisible();
  await expect(button('New words')).toBeFocused();
  expect((await goal()).goal.words.map((w) => w.cue)).toEqual(['Feet with the ball', 'Wait for it']);

  await use(page, button('Set aside'));
  await expect(page.getByLabel('Reason')).toBeFocused();
  await page.keyboard.type('First the serve');
  await use(page, button('Set it aside'));
  await expect(page.getByText('Goal set aside.')).toBeVisible();
  await expect(button('Set aside')).toHaveCount(0);
  await stillThere(page);
  expect((await goal()).standing.state).toBe('set_aside');
  await use(page, button('Take up again'));
  await expect(page.getByText('Taken up again.')).toBeVisible();
  await expect(button('Take up again')).toHaveCount(0);
  await stillThere(page);
  expect((await goal()).standing.state).toBe('working');
});

test('a reason that is not given is asked for, and nothing is decided', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { wall } = await openFile(returningStudent, ({ wall }) => `#/goals/${wall}`);
  const close = page.getByRole('button', { name: 'Close', exact: true }).first();
  await use(page, close);
  await refusal(() => use(page, page.getByRole('button', { name: 'Close it' })));
  await expect(page.getByLabel('Reason')).toBeFocused();
  await expect(page.getByLabel('Reason')).toHaveAttribute('aria-invalid', 'true');
  expect((await bridge.act('goals.show', { goal: wall })).standing.state).toBe('working');
  await page.keyboard.press('Escape');
  await expect(close).toBeFocused();
});

test('a student is changed, with a guardian, and what was typed is never moved away from', async ({
  page,
  openFile,
  bridge,
}) => {
  const { student } = await openFile(returningStudent, ({ student }) => `#/people/${student}`);
  await use(page, page.getByRole('link', { name: 'Change', exact: true }));
  await arrived(page, 'Change a student');
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Zoë Łukasiewicz');
  await write(page, page.getByLabel(/^Telephone/), '+44 20 7946 0018');
  await choose(page, page.getByRole('group', { name: 'Racquet hand' }), 'right');
  await write(page, page.getByLabel(/^Birth date/), '12.3.2011');
  await use(page, page.getByRole('button', { name: 'Add a guardian' }));
  await expect(page.getByLabel('Guardian’s name'), 'the fields that came have the focus').toBeFocused();
  await page.keyboard.type('Maja Łukasiewicz');
  await use(page, page.getByRole('button', { name: 'Someone else pays' }));
  await expect(page.getByLabel('Payer’s name')).toBeFocused();
  await page.keyboard.type('Harbour Club');
  await tabTo(page, page.getByRole('button', { name: 'Save' }));
  await page.keyboard.press('Space');
  await arrived(page, 'Zoë Łukasiewicz');
  await expect(page.getByText('Zoë Łukasiewicz changed.')).toBeVisible();
  const { profile } = await bridge.act('students.show', { student });
  expect(profile).toMatchObject({
    phone: '+44 20 7946 0018',
    hand: 'right',
    born: '2011-03-12',
    guardian: { name: 'Maja Łukasiewicz' },
    payer: { name: 'Harbour Club' },
  });
});
