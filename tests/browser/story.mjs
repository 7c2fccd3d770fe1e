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
  /** A page whose faults fail the story. */
  page: async ({ page, bridge }, use) => {
    const faults = [];
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
  /** Opens the window's page on what lies on the desk, at a place such as `#/people`. */
  open: async ({ page, bridge }, use) => {
    await use(async (place = '') => {
      await page.goto(bridge.address + place);
      await expect(page.locator('main h1')).toBeVisible();
    });
  },
  /** Makes a coach file, lets `setup(act)` fill it, and opens the page on it; gives what `setup` gave. */
  openFile: async ({ bridge, open }, use) => {
    await use(async (setup = async () => undefined, place = '') => {
      await bridge.act('desk.create', { name: 'Story' });
      const made = await setup(bridge.act);
      await open(place);
      return made;
    });
  },
});

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
