// The home plan by keyboard: made from the goals that go on, refused in words without losing what was typed, and at
// the next visit told line by line.
import { day, returningStudent } from '../world/returning.mjs';
import { arrived, choose, expect, noFindings, stillThere, tabTo, test, use, write } from './story.mjs';

const opened = async (act) => {
  const made = await returningStudent(act);
  await act('visits.open', { visit: made.visit });
  return made;
};

test('a plan is made, put in order and refused in words', async ({ page, openFile, bridge, refusal }) => {
  const { visit, lob } = await openFile(opened, ({ visit }) => `#/visits/${visit}`);
  await use(page, page.getByRole('link', { name: 'Make a home plan' }));
  await arrived(page, 'At home');
  await use(page, page.getByRole('button', { name: /^Take it in.*Lob serve$/ }));
  const field = (name, nth = 0) => page.getByLabel(name).nth(nth);
  await expect(field('How much at a time'), 'the line that came has the focus').toBeFocused();
  await expect(field('Shot or exercise')).toHaveValue('Lob serve');
  await expect(page.getByRole('button', { name: /^Take it in.*Lob serve$/ })).toHaveCount(0);
  await write(page, field('How much at a time'), '10,000');
  await use(page, page.getByRole('button', { name: 'Another line' }));
  await expect(field('Shot or exercise', 1)).toBeFocused();
  await page.keyboard.type('Split step to a clap');
  await write(page, field('How much at a time', 1), '5');
  await choose(page, page.getByRole('group', { name: 'Counted in' }).nth(1), 'minutes');
  await write(page, field('Times a week', 1), '7');
  await refusal(() => use(page, page.getByRole('button', { name: 'Keep the plan' })));
  await expect(field('How much at a time')).toBeFocused();
  await expect(field('How much at a time'), 'nothing typed is lost').toHaveValue('10,000');
  await expect(field('Shot or exercise', 1)).toHaveValue('Split step to a clap');
  await expect(page.getByText(/^10000 tries at a time are too many to do well/).first()).toBeVisible();
  await noFindings(page);
  await write(page, field('How much at a time'), '20');
  await use(page, page.getByRole('button', { name: /^Up.*Split step/ }));
  await stillThere(page);
  await expect(field('Shot or exercise')).toHaveValue('Split step to a clap');
  await use(page, page.getByRole('button', { name: 'Keep the plan' }));
  await arrived(page, 'Zoë Łukasiewicz');
  await expect(page.getByText('Split step to a clap: 5 minutes, every day')).toBeVisible();
  const { plan } = await bridge.act('home.show', { visit });
  expect(plan.lines.map((l) => [l.what, l.amount, l.unit, l.a_week, l.goal])).toEqual([
    ['Split step to a clap', 5, 'minutes', 7, null],
    ['Lob serve', 20, 'tries', 3, lob],
  ]);
  const saved = await bridge.act('desk.open_home_plan', { visit });
  expect(saved.path).toMatch(/Home plans\/At home Zoë Łukasiewicz .*\.pdf$/);
});

test('at the next visit the plan is there, and what is told is kept as told', async ({
  page,
  openFile,
  bridge,
}) => {
  const { next, visit } = await openFile(
    async (act) => {
      const made = await opened(act);
      const line = (what) => ({ what, amount: 20, unit: 'tries', a_week: 3 });
      await act('home.plan', {
        visit: made.visit,
        warm_up: 'Rope',
        lines: [line('Lob serve'), line('Pinch')],
      });
      await act('visits.close', { visit: made.visit });
      const { facility } = await act('visits.show', { visit: made.visit });
      const next = await act('visits.plan', {
        student: made.student,
        facility,
        first_day: day(10),
        last_day: day(12),
      });
      await act('visits.open', { visit: next.id });
      return { ...made, next: next.id };
    },
    ({ next }) => `#/visits/${next}`,
  );
  const told = page.getByLabel(/^Pinch: 20 tries, three times a week/);
  await write(page, told, 'Twice, then the court closed.');
  await use(page, page.getByRole('button', { name: 'Write down what was told' }));
  await expect(page.getByText('Written down, as told by the student.')).toBeVisible();
  await stillThere(page);
  const lines = async () => (await bridge.act('home.show', { visit })).plan.lines.map((l) => l.told);
  expect(await lines()).toEqual(['', 'Twice, then the court closed.']);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(told, 'taken back, it is gone from the field').toHaveValue('');
  expect(await lines()).toEqual(['', '']);
  await use(page, page.getByRole('link', { name: 'Make a home plan' }));
  await expect(page.getByLabel(/^Standing warm-up/)).toHaveValue('Rope');
  await tabTo(page, page.getByRole('button', { name: 'Leave it' }));
  await page.keyboard.press('Enter');
  await arrived(page, 'Zoë Łukasiewicz');
  expect((await bridge.act('home.show', { visit: next })).plan, 'nothing was kept').toBeNull();
});
