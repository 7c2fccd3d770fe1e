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
    await tell({ folder: folder.path, start });
  });
}
