// What every browser story stands on: a bridge on a folder of its own, a page that must stay free of
// faults and of breaches of the content policy, and the check for accessibility.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test as base } from '@playwright/test';
import { startBridge } from '../world/bridge.mjs';
import { freshFolder } from '../world/place.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2, levels A and AA, as axe-core tags its rules. */
const STANDARD = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

export const test = base.extend({
  /** The real core, with an empty folder. */
  bridge: async ({}, use) => {
    const folder = freshFolder();
    const bridge = await startBridge(folder.path);
    await use(bridge);
    await bridge.stop();
    folder.remove();
  },
  /** What went wrong in the page so far. */
  faults: async ({}, use) => use([]),
  /** A page whose faults fail the story. */
  page: async ({ page, bridge, faults }, use) => {
    page.on('pageerror', (error) => faults.push(`fault: ${error.message}`));
    page.on('console', (said) => {
      if (said.type() === 'error' || said.type() === 'warning') faults.push(`console: ${said.text()}`);
    });
    page.on('request', (request) => {
      if (!request.url().startsWith(bridge.address) && !request.url().startsWith('data:')) {
        faults.push(`asked elsewhere: ${request.url()}`);
      }
    });
    await use(page);
    expect(faults, 'the page ran without a fault or a breach of its content policy').toEqual([]);
  },
  /** Runs what the core must refuse, once, and takes the line that the browser writes about that off the faults. */
  refusal: async ({ faults }, use) => {
    await use(async (refused) => {
      const before = faults.length;
      await refused();
      await expect
        .poll(() => faults.slice(before), { message: 'the core refused it, and nothing else went wrong' })
        .toEqual([expect.stringMatching(/^console: Failed to load resource: .* 422 /)]);
      faults.splice(before);
    });
  },
  /** Opens the window's page on what lies on the desk, at a place such as `#/people`. */
  open: async ({ page, bridge }, use) => {
    await use(async (place = '') => {
      await page.goto(bridge.address + place);
      await expect(page.locator('main h1')).toBeVisible();
    });
  },
  /**
   * Makes a coach file, lets `setup(act)` fill it, and opens the page on it, at a place or at the one that
   * `place` says for what `setup` gave; gives what `setup` gave.
   */
  openFile: async ({ bridge, open }, use) => {
    await use(async (setup = async () => undefined, place = '') => {
      await bridge.act('desk.create', { name: 'Story' });
      const made = await setup(bridge.act);
      await open(typeof place === 'function' ? place(made) : place);
      return made;
    });
  },
});

/** Presses Tab until what is looked for has the focus; fails when it never has. */
export async function tabTo(page, target, most = 80) {
  await expect(target).toBeVisible();
  for (let i = 0; i < most; i++) {
    if (await target.evaluate((node) => node === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  await expect(target, 'it can be reached with Tab').toBeFocused({ timeout: 1 });
}

/** Goes to an act with Tab and uses it. */
export async function use(page, target) {
  await tabTo(page, target);
  await page.keyboard.press('Enter');
}

/** Goes to a field with Tab and types over what stands in it. */
export async function write(page, field, text) {
  await tabTo(page, field);
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
}

/** Goes to a few choices with Tab and moves among them with the arrows. */
export async function choose(page, group, option) {
  const radios = group.getByRole('radio');
  for (let i = 0; !(await inside(group)); i++) {
    expect(i, 'it can be reached with Tab').toBeLessThan(80);
    await page.keyboard.press('Tab');
  }
  const wanted = group.getByRole('radio', { name: option });
  for (let i = await radios.count(); i > 0 && !(await wanted.isChecked()); i--) {
    await page.keyboard.press('ArrowDown');
  }
  await expect(wanted, 'it can be chosen with the arrows').toBeChecked({ timeout: 1 });
}

const inside = (group) => group.evaluate((node) => node.contains(document.activeElement));

/** The title of the screen has the focus: what the address leads to is read out from its beginning. */
export async function arrived(page, name) {
  await expect(page.getByRole('heading', { level: 1, name })).toBeFocused();
}

/** Something on the page has the focus, and it can be seen where: nobody has to begin anew at the top. */
export async function stillThere(page) {
  const at = () =>
    page.evaluate(() => {
      const node = document.activeElement;
      if (!node || node === document.body) return 'nowhere';
      const seen = node.matches('h1') || getComputedStyle(node).outlineStyle !== 'none';
      return seen ? 'somewhere' : `out of sight, at ${node.outerHTML.slice(0, 120)}`;
    });
  await expect.poll(at, { message: 'the focus is not lost' }).toBe('somewhere');
}

/** Nothing that axe-core finds against WCAG 2.2 AA, in light and in dark. */
export async function noFindings(page) {
  await page.evaluate(axe);
  for (const colorScheme of ['light', 'dark']) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const found = await page.evaluate(async (values) => {
      const { violations, passes } = await globalThis.axe.run(document, {
        runOnly: { type: 'tag', values },
      });
      return {
        looked: passes.length,
        wrong: violations.map((v) => `${v.id}: ${v.help}; ${v.nodes.map((n) => n.html).join(' ')}`),
      };
    }, STANDARD);
    expect(found.looked, 'axe-core looked at something').toBeGreaterThan(5);
    expect(found.wrong, `in ${colorScheme}`).toEqual([]);
  }
}

export { expect };
