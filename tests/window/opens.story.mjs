// The window opens, keeps its walls, and opens the file it is given.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { check } from '../world/cli.mjs';
import { makeFile } from '../world/bridge.mjs';
import { until } from './harness.mjs';
import { story } from './story.mjs';

story('a new machine begins at the start, drawn in the window', async ({ start }) => {
  const window = await start();
  assert.equal(await window.title(), 'Welcome – Carryover');
  await window.read('Open the sample season');
  // An empty page of this size compresses to less than five thousand bytes; words are read before they are drawn.
  await until('the drawn page', async () => (await window.picture('start')).length > 15_000);
  await window.close();
});

story(
  'a file named at the start opens, and is whole once the window is closed',
  async ({ folder, start }) => {
    const file = await makeFile(folder, (act) => act('settings.change', { name: 'Nadia Brandt' }), 'Named');
    const window = await start('--file', file);
    await window.read('This file is still empty.');
    const look = await window.execute(
      "() => window.__TAURI_INTERNALS__.invoke('call', { name: 'desk.look', input: {} })",
    );
    assert.equal(look.value.open.path, file);
    await window.close();
    assert.ok(!existsSync(`${file}-wal`), 'all of it lies in the one file');
    assert.equal(check(file).sound, true);
  },
);

story('the file that was open last opens again, also after a pulled plug', async ({ folder, start }) => {
  const file = await makeFile(folder, undefined, 'Last');
  const first = await start('--file', file);
  await first.read('This file is still empty.');
  await first.pullThePlug();
  const second = await start();
  await second.read('This file is still empty.');
  await second.close();
  assert.equal(check(file).sound, true);
});

story('the page can run the one command and reach nothing else', async ({ folder, start }) => {
  await makeFile(folder);
  const window = await start();
  const refused = async (command, args) =>
    assert.rejects(
      window.execute('(command, args) => window.__TAURI_INTERNALS__.invoke(command, args)', command, args),
      /not allowed|not found|missing/i,
      `${command} is refused`,
    );
  await refused('plugin:dialog|open', { options: {} });
  await refused('plugin:dialog|message', { message: 'x' });
  await refused('plugin:opener|open_url', { url: 'https://example.org' });
  await refused('plugin:window|close', { label: 'main' });
  await refused('plugin:window-state|save_window_state', { flags: 1 });
  await refused('plugin:webview|create_webview_window', { options: { label: 'x' } });
  await refused('plugin:event|listen', { event: 'x', target: { kind: 'Any' }, handler: 1 });

  const at = await window.address();
  await window.execute("() => { location.href = 'https://example.org/'; }");
  await window.execute("() => { location.href = 'data:text/html,elsewhere'; }");
  assert.equal(await window.address(), at, 'the window stays on its page');
  assert.equal(await window.execute("() => window.open('https://example.org/') === null"), true);
  assert.equal(
    await window.execute(
      "() => { const s = document.createElement('script'); s.textContent = 'window.broken = 1'; document.head.append(s); return window.broken ?? 0; }",
    ),
    0,
    'a script in the page is not run: the content policy is in force',
  );
  assert.equal(
    await window.execute("() => fetch('http://127.0.0.1:9/').then(() => 'reached', (e) => String(e.name))"),
    'TypeError',
  );
  assert.equal(await window.execute('() => typeof window.__TAURI__'), 'undefined');
  await window.close();
  assert.ok(!existsSync(join(folder, 'faults.log')), 'none of this is a fault of the program');
});

story('the window comes back in the size it was left in', async ({ start }) => {
  const first = await start();
  await first.resize(940, 700);
  const left = await until('the new size', async () => {
    const rect = await first.rect();
    return Math.abs(rect.width - 940) < 60 && rect;
  });
  await first.close();
  const second = await start();
  const came = await second.rect();
  assert.deepEqual([came.width, came.height], [left.width, left.height]);
  await second.close();
});
