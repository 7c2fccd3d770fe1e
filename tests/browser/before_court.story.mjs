// Before court, by keyboard alone: what is missing, going on with a reason, consents, a notice read and acknowledged,
// own papers, a scan that is too large, and an incident.
import { readyForCourt } from '../world/ready.mjs';
import { day, returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, noFindings, stillThere, test, use, write } from './story.mjs';

/** A student whose visit and lesson are today, with everything in place but a notice. */
async function today(act) {
  const made = await returningStudent(act);
  await act('visits.open', { visit: made.visit });
  const [lesson] = await act('lessons.list', { visit: made.visit });
  const draft = await act('intake.draft_notice', {});
  await act('intake.publish_notice', { title: '<b>Before</b> court', parts: draft.parts });
  return { ...made, lesson: lesson.id };
}

/** The page it was opened on is drawn; the focus is the browser's. */
const there = (page, name) => expect(page.getByRole('heading', { level: 1, name })).toBeVisible();

test('a reason opens the court, and a notice makes it unnecessary', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { student, visit, lesson } = await openFile(
    today,
    ({ visit, lesson }) => `#/court/${visit}/${lesson}`,
  );
  await expect(page.getByText('“<b>Before</b> court” is not acknowledged.')).toBeVisible();
  await expect(page.getByRole('button', { name: /^made/ })).toHaveCount(0);
  await noFindings(page);
  await page.keyboard.press('1');
  const [goal] = await bridge.act('goals.on_court', { visit });
  expect(goal.open, 'nothing is counted behind it').toBeNull();

  await use(page, page.getByRole('button', { name: 'Go on all the same' }));
  await refusal(async () => {
    await use(page, page.getByRole('button', { name: 'Go on', exact: true }));
    await expect(page.getByText('The reason is empty.').first()).toBeVisible();
  });
  await write(page, page.getByLabel('Reason'), 'Read it on paper yesterday');
  await use(page, page.getByRole('button', { name: 'Go on', exact: true }));
  await expect(page.getByRole('button', { name: /^made ?: Lob serve/ })).toBeEnabled();
  await stillThere(page);
  const [ready] = await bridge.act('intake.ready', { lesson });
  expect([ready.state, ready.went_on.reason]).toEqual(['not_ready', 'Read it on paper yesterday']);

  await page.goto(`${bridge.address}#/people/${student}/intake/${lesson}`);
  await arrived(page, 'Before court');
  await noFindings(page);
  await use(page, page.getByRole('link', { name: /^Read and acknowledge/ }));
  await arrived(page, '<b>Before</b> court');
  await noFindings(page);
  await write(page, page.getByLabel('Full name'), 'Zoë Łukasiewicz');
  await use(page, page.getByRole('button', { name: 'Acknowledge' }));
  await arrived(page, 'Before court');
  await expect(page.getByText('Acknowledged by Zoë Łukasiewicz')).toBeVisible();
  expect((await bridge.act('intake.ready', { lesson }))[0].state).toBe('ready');
});

test('consents are answered one by one and withdrawn, with what follows', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  const { student } = await openFile(today, ({ student }) => `#/people/${student}/intake`);
  await there(page, 'Before court');
  await use(page, page.getByRole('button', { name: /^Ask ?: photographs$/ }));
  const form = page.getByRole('dialog', { name: 'Consent' });
  await use(page, form.getByRole('button', { name: 'Write the answer down' }));
  await expect(form.getByText('Choose yes or no.').first()).toBeVisible();
  await choose(page, form.getByRole('group', { name: 'May photographs be taken?' }), 'yes');
  await refusal(async () => {
    await use(page, form.getByRole('button', { name: 'Write the answer down' }));
    await expect(form.getByText('The name is empty.').first()).toBeVisible();
  });
  await noFindings(page);
  await write(page, form.getByLabel('Full name'), 'Zoë Łukasiewicz');
  await use(page, form.getByRole('button', { name: 'Write the answer down' }));
  await expect(page.getByText('Consent written down.')).toBeVisible();
  await use(page, page.getByRole('button', { name: /^Withdraw ?: photographs$/ }));
  await write(page, page.getByLabel('Who withdraws it'), 'Zoë Łukasiewicz');
  await use(page, page.getByRole('button', { name: 'Withdraw it' }));
  await expect(page.getByText('Take no photographs. Delete those there are, or ask.')).toBeVisible();
  const kept = (await bridge.act('intake.consents', { student })).find((c) => c.kind === 'photographs');
  expect([kept.holds, kept.answer.given, kept.answer.withdrawn]).toEqual([false, true, day(0)]);
});

test('a scan of 200 MB is refused before it is read, and nothing typed is lost', async ({
  page,
  openFile,
  bridge,
}) => {
  const { student } = await openFile(today, ({ student }) => `#/people/${student}/intake`);
  await there(page, 'Before court');
  await use(page, page.getByRole('button', { name: 'Note a signed form' }));
  const form = page.getByRole('dialog', { name: 'A facility’s own form' });
  await write(page, form.getByLabel('Where the signed form is'), 'at the desk');
  const field = form.locator('input[type=file]');
  await field.evaluate((input) => {
    const file = new File(['x'], 'form.pdf', { type: 'application/pdf' });
    Object.defineProperty(file, 'size', { value: 200 * 1024 * 1024 });
    const list = { 0: file, length: 1, item: () => file };
    Object.defineProperty(input, 'files', { value: list });
    input.dispatchEvent(new Event('change', { bubbles: true }));
  });
  await expect(form.getByText('“form.pdf” has 200 MB; there is room for 8.').first()).toBeVisible();
  await expect(form.getByLabel('Where the signed form is')).toHaveValue('at the desk');
  await noFindings(page);
  await use(page, form.getByRole('button', { name: 'Note it' }));
  await expect(page.getByText('The signed form is noted.')).toBeVisible();
  const [kept] = await bridge.act('intake.forms', { student });
  expect([kept.kept, kept.scan]).toEqual(['at the desk', null]);
});

test('a notice is written, published and asked for; papers and minors’ rules are kept', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  await openFile(async (act) => {
    const student = await act('students.add', { name: 'Olive Grant' });
    await readyForCourt(act, student.id);
  }, '#/coach/notices');
  await there(page, 'Notices and consents');
  await noFindings(page);
  await use(page, page.getByRole('link', { name: 'Write a notice' }));
  await arrived(page, 'Write a notice');
  await write(page, page.getByLabel('Text 5'), ' ');
  await refusal(async () => {
    await use(page, page.getByRole('button', { name: 'Publish' }));
    await expect(page.getByText('A notice says which risks are known.').first()).toBeVisible();
  });
  await expect(page.getByLabel('Text 5')).toBeFocused();
  await noFindings(page);
  await page.keyboard.type('Balls, racquets, walls.');
  await use(page, page.getByRole('button', { name: 'Publish' }));
  await arrived(page, 'Notices and consents');
  await expect(page.getByText('acknowledged by 0 students')).toBeVisible();

  await page.goto(`${bridge.address}#/coach/papers`);
  await arrived(page, 'Your papers, and minors');
  await use(page, page.getByRole('button', { name: 'Add a paper' }));
  await write(page, page.getByLabel('Its name'), 'First aid');
  await write(page, page.getByLabel('Holds until'), '2020-01-31');
  await use(page, page.getByRole('button', { name: 'Keep it' }));
  await expect(page.getByText('Ended on 31 January 2020.')).toBeVisible();
  await noFindings(page);
  await page.keyboard.press('Alt+1');
  await expect(page.getByText('Your “First aid” has ended.', { exact: true })).toBeVisible();
});

test('an incident with a bystander is written down in seconds, signed and added to', async ({
  page,
  openFile,
  bridge,
  refusal,
}) => {
  await openFile(
    async (act) => act('settings.change', { name: 'Robin Hale', closing: '' }),
    '#/incidents/new',
  );
  await expect(page.getByText('Help comes first.')).toBeVisible();
  await noFindings(page);
  await refusal(async () => {
    await use(page, page.getByRole('button', { name: 'Write it down' }));
    await expect(page.getByText('What happened is empty.').first()).toBeVisible();
  });
  await write(page, page.getByLabel('To whom'), 'Tomas Vale');
  await write(page, page.getByLabel('What happened'), 'A ball came over the wall and hit his arm.');
  await choose(page, page.getByRole('group', { name: /^A blow to the head/ }), /^no$/);
  await use(page, page.getByRole('button', { name: 'Write it down' }));
  await arrived(page, 'Incident: Tomas Vale');
  await use(page, page.getByRole('button', { name: 'Sign', exact: true }));
  const sign = page.getByRole('dialog', { name: 'Sign the report' });
  await write(page, sign.getByLabel('Your full name'), 'Robin Hale');
  await use(page, sign.getByRole('button', { name: 'Sign', exact: true }));
  await expect(page.getByText('signed by Robin Hale')).toBeVisible();
  await use(page, page.getByRole('button', { name: 'Add to it' }));
  await write(page, page.getByLabel('What came to be known'), 'He telephoned: all is well.');
  await use(page, page.getByRole('button', { name: 'Add it' }));
  await expect(page.getByText('He telephoned: all is well.')).toBeVisible();
  await noFindings(page);
  const [incident] = await bridge.act('intake.incidents', {});
  expect([incident.whole, incident.additions.length]).toEqual([true, 1]);
});
