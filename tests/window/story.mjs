// A story in the real window: a folder of its own, and no program left behind, whatever happens.
import { test } from 'node:test';
import { freshFolder } from '../world/place.mjs';
import { startWindow } from './harness.mjs';

/** Tells a story: `tell({ folder, start })`, where `start(...arguments)` opens the window. */
export function story(name, tell) {
  test(name, { timeout: 180_000 }, async (t) => {
    const folder = freshFolder();
    const started = [];
    t.after(async () => {
      for (const window of started) await window.pullThePlug().catch(() => {});
      folder.remove();
    });
    const start = async (...args) => {
      const window = await startWindow(folder.path, ...args);
      started.push(window);
      return window;
    };
    try {
      await tell({ folder: folder.path, start });
    } catch (error) {
      // What the page showed when it went wrong says more than what was waited for.
      const last = started.at(-1);
      const words = await last?.words().catch(() => 'the window is gone');
      await last?.picture('failed').catch(() => {});
      error.message += `\nThe page said:\n${words}`;
      throw error;
    }
  });
}
