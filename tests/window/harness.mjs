// Drives the real window: starts it under WebKit's own driver with a folder of its own, finds,
// clicks, types, takes pictures, and can end the program as a pulled plug would.
//
// Run by tests/ci/window.sh, which gives it a screen and a session bus. The driver cannot reach the
// system's file dialogs; a story that is not about a dialog names its path instead.
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { out, program } from '../world/place.mjs';

/** The name under which WebDriver gives an element (W3C WebDriver §12.2, "web element identifier"). */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf';

/** Keys by name, as W3C WebDriver §17.4.2 codes them. */
export const Key = {
  Tab: '\uE004',
  Enter: '\uE007',
  Shift: '\uE008',
  Control: '\uE009',
  Alt: '\uE00A',
  Escape: '\uE00C',
  Left: '\uE012',
  Up: '\uE013',
  Right: '\uE014',
  Down: '\uE015',
  Backspace: '\uE003',
  Space: ' ',
};

/** How long anything may take before the story fails. */
const PATIENCE = 15_000;

/** Asks until the answer is neither false nor a throw; then gives it. */
export async function until(what, ask) {
  const end = Date.now() + PATIENCE;
  for (let last; ;) {
    try {
      const answer = await ask();
      if (answer) return answer;
    } catch (error) {
      last = error;
    }
    if (Date.now() > end) throw new Error(`${what} did not come about${last ? `: ${last.message}` : ''}`);
    await pause(25);
  }
}

const freePort = () =>
  new Promise((resolve, reject) => {
    const server = createServer().once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => resolve(port));
    });
  });

/** Whether any thread of a process still runs; one that has ended may wait for its parent (state Z). */
const isThere = (pid) => {
  try {
    const threads = readdirSync(`/proc/${pid}/task`);
    return threads.length > 1 || !/\) Z /.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));
  } catch {
    return false;
  }
};

const childrenOf = (pid) =>
  readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean).map(Number);

/** Waits until a window of the system has drawn what it has to: two looks in a row are the same. */
async function stillness(id) {
  let before;
  await until('the dialog at rest', async () => {
    await pause(150);
    const now = execFileSync('import', ['-window', id, 'rgb:-'], { maxBuffer: 1 << 26 });
    const same = before?.equals(now);
    before = now;
    return same;
  });
}

/** Starts the program on a folder, with arguments such as `--file PATH`, and waits for its page. */
export const startWindow = (folder, ...args) => startProgram(program('carryover'), folder, args);

/** Starts any program on the same shell, and waits for its page. */
export async function startProgram(binary, folder, args) {
  const port = await freePort();
  const driver = spawn('WebKitWebDriver', [`--port=${port}`, '--host=127.0.0.1'], {
    env: { ...process.env, CARRYOVER_FOLDER: folder, TAURI_WEBVIEW_AUTOMATION: 'true' },
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  const base = `http://127.0.0.1:${port}`;
  const ask = async (method, path, body) => {
    const response = await fetch(base + path, {
      method,
      body: method === 'POST' ? JSON.stringify(body ?? {}) : undefined,
      signal: AbortSignal.timeout(60_000),
    });
    const { value } = await response.json();
    if (!response.ok) throw new Error(`${method} ${path}: ${value.error}: ${value.message}`);
    return value;
  };
  try {
    await until('the driver', async () => (await ask('GET', '/status')).ready);
    const { sessionId } = await ask('POST', '/session', {
      capabilities: { alwaysMatch: { 'webkitgtk:browserOptions': { binary, args } } },
    });
    const window = new Window(driver, ask, `/session/${sessionId}`, binary);
    await until('the page', () => window.find('main h1'));
    return window;
  } catch (error) {
    driver.kill('SIGKILL');
    throw error;
  }
}

class Window {
  #driver;
  #ask;
  #session;

  constructor(driver, ask, session, binary) {
    this.#driver = driver;
    this.#session = session;
    this.#ask = (method, path, body) => ask(method, session + path, body);
    /** The program's process. */
    this.pid = childrenOf(driver.pid).find((pid) =>
      readFileSync(`/proc/${pid}/cmdline`, 'utf8').startsWith(binary),
    );
  }

  /** The first element a CSS selector (or an XPath) finds, now; throws when there is none. */
  async find(selector) {
    const using = selector.startsWith('/') ? 'xpath' : 'css selector';
    return (await this.#ask('POST', '/element', { using, value: selector }))[ELEMENT];
  }

  /** Waits for an element. */
  see(selector) {
    return until(selector, () => this.find(selector));
  }

  /** Waits for words anywhere on the page. */
  read(words) {
    return until(`the words "${words}"`, async () => (await this.words()).includes(words));
  }

  /** What can be read on the page. */
  async words(selector = 'body') {
    // The page's own account of its words: the driver's leaves out lines that are cut to a height.
    return this.execute('(selector) => document.querySelector(selector).innerText.trim()', selector);
  }

  /**
   * Clicks an element, once it is there: brought to the middle at once first, as a page that still scrolls moves it
   * away, and again if what was just read moved it meanwhile.
   */
  async click(selector) {
    await until(`a click on ${selector}`, async () => {
      const element = await this.find(selector);
      await this.execute("(element) => element.scrollIntoView({ block: 'center', behavior: 'instant' })", {
        [ELEMENT]: element,
      });
      await this.#ask('POST', `/element/${element}/click`);
      return true;
    });
  }

  /** Clicks the button or link of that name. */
  act(name) {
    const quoted = JSON.stringify(name);
    return this.click(
      `//*[self::button or self::a][not(ancestor::*[@hidden])][normalize-space()=${quoted} or @aria-label=${quoted}]`,
    );
  }

  /** The field with that label. */
  field(label) {
    const quoted = JSON.stringify(label);
    return `//*[@id = //label[normalize-space()=${quoted}]/@for or @aria-label=${quoted}]`;
  }

  /** Types into an element, after what it holds. */
  async type(selector, text) {
    await this.#ask('POST', `/element/${await this.see(selector)}/value`, { text });
  }

  /** Presses keys together, wherever the focus is: `press(Key.Alt, '1')`. */
  async press(...keys) {
    const down = keys.map((value) => ({ type: 'keyDown', value }));
    const up = keys.toReversed().map((value) => ({ type: 'keyUp', value }));
    await this.#ask('POST', '/actions', {
      actions: [{ type: 'key', id: 'keys', actions: [...down, ...up] }],
    });
  }

  /** Runs a function in the page and gives what it returns, or what its promise comes to. */
  async execute(body, ...args) {
    const script = `
      const done = arguments[arguments.length - 1];
      const given = Array.from(arguments).slice(0, -1);
      Promise.resolve().then(() => (${body})(...given)).then((value) => done({ value }), (error) => done({ error: error?.message ?? error }));`;
    const answer = await this.#ask('POST', '/execute/async', { script, args });
    if ('error' in answer) throw new Error(JSON.stringify(answer.error));
    return answer.value;
  }

  /** Answers the system's own dialog with that title: with a path, or without one by giving it up. */
  async answerDialog(title, path) {
    const tell = (...args) => execFileSync('xdotool', args);
    const shown = () =>
      spawnSync('xdotool', ['search', '--onlyvisible', '--name', `^${title}$`])
        .stdout.toString()
        .split('\n')[0];
    const dialog = await until(`the dialog "${title}"`, shown);
    tell('windowactivate', '--sync', dialog);
    await stillness(dialog);
    if (path) {
      // In a dialog to open, a slash brings up the field for a path, and keys pressed meanwhile are
      // lost; in one to save the field is there, and holds a name.
      tell('key', '--window', '0', 'slash');
      await stillness(dialog);
      tell('key', '--window', '0', 'ctrl+a');
      tell('type', '--window', '0', '--delay', '10', path);
      await stillness(dialog);
    }
    // The dialog completes paths in its own time and may take the first key for its list of them.
    await until(`the end of the dialog "${title}"`, async () => {
      tell('key', '--window', '0', path ? 'Return' : 'Escape');
      for (let looks = 0; looks < 20 && shown(); looks++) await pause(50);
      return !shown();
    });
  }

  /** The page's title. */
  title() {
    return this.#ask('GET', '/title');
  }

  /** The page's address. */
  address() {
    return this.#ask('GET', '/url');
  }

  /** The window's place and size on the screen. */
  rect() {
    return this.#ask('GET', '/window/rect');
  }

  /** Gives the window another size. */
  resize(width, height) {
    return this.#ask('POST', '/window/rect', { width, height });
  }

  /** A picture of the page, kept in tests/out; gives its bytes. */
  async picture(name) {
    const bytes = Buffer.from(await this.#ask('GET', '/screenshot'), 'base64');
    mkdirSync(out, { recursive: true });
    writeFileSync(join(out, `${name}.png`), bytes);
    return bytes;
  }

  /** Closes the window as a coach would, and waits until the program has ended. The driver's own way to close kills. */
  async close() {
    const [shown] = execFileSync('xdotool', ['search', '--onlyvisible', '--pid', String(this.pid)])
      .toString()
      .split('\n');
    execFileSync('xdotool', ['windowactivate', '--sync', shown, 'key', '--window', '0', 'alt+F4']);
    await this.#ended();
  }

  /** Ends the program at once, as a pulled plug would. */
  async pullThePlug() {
    process.kill(this.pid, 'SIGKILL');
    await this.#ended();
  }

  async #ended() {
    try {
      await until('the end of the program', () => !isThere(this.pid));
    } finally {
      if (isThere(this.pid)) process.kill(this.pid, 'SIGKILL');
      this.#driver.kill('SIGKILL');
    }
  }
}
