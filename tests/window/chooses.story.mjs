// Files by the system's own dialog, and a second start of the program.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { makeFile } from '../world/bridge.mjs';
import { act, check } from '../world/cli.mjs';
import { freshFolder, program } from '../world/place.mjs';
import { story } from './story.mjs';

const call = (window, name, input = {}) =>
  window.execute("(name, input) => window.__TAURI_INTERNALS__.invoke('call', { name, input })", name, input);

story('a dialog given up changes nothing; a file chosen in it opens', async ({ start }) => {
  const elsewhere = freshFolder();
  try {
    const file = await makeFile(elsewhere.path, undefined, 'Elsewhere');
    const window = await start();
    await window.act('Choose a file');
    await window.answerDialog('Open a coach file');
    assert.equal((await call(window, 'desk.look')).value.open, null, 'nothing was chosen');
    await window.read('Open the sample season');

    await window.act('Choose a file');
    await window.answerDialog('Open a coach file', file);
    await window.read('This file is still empty.');
    assert.equal((await call(window, 'desk.look')).value.open.path, file);

    const backup = join(elsewhere.path, 'copy.carryover');
    const saving = call(window, 'desk.back_up');
    await window.answerDialog('Save a backup', backup);
    assert.equal((await saving).value.path, backup);
    await window.close();
    assert.equal(check(backup).sound, true);
  } finally {
    elsewhere.remove();
  }
});

story('a second start comes to the window that is there', async ({ folder, start }) => {
  const elsewhere = freshFolder();
  try {
    const one = await makeFile(elsewhere.path, undefined, 'One');
    const two = await makeFile(elsewhere.path, undefined, 'Two');
    const window = await start();
    await window.read('Open the sample season');
    const again = (file) =>
      spawnSync(program('carryover'), ['--file', file], {
        env: { ...process.env, CARRYOVER_FOLDER: folder },
        timeout: 20_000,
      });
    assert.equal(again(one).status, 0, 'the second start ends at once');
    await window.read('This file is still empty.');
    assert.equal(again(two).status, 0);
    assert.equal((await call(window, 'desk.look')).value.open.path, one, 'a file in hand stays');
    await window.close();
  } finally {
    elsewhere.remove();
  }
});

story(
  'a file that is open in the window is refused to others, and free again once it is closed',
  async ({ folder, start }) => {
    const file = await makeFile(folder, undefined, 'Used');
    const window = await start('--file', file);
    await window.read('This file is still empty.');
    assert.throws(() => act(file, 'students.list'), /open in another window or program/);
    await window.close();
    assert.ok(existsSync(file));
    assert.deepEqual(act(file, 'students.list'), []);
  },
);
