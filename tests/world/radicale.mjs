// A real calendar server on loopback (Radicale, from the outside tools), and another client of it: the coach's
// telephone, as it were.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const tests = join(dirname(fileURLToPath(import.meta.url)), '..');
const python = process.env.CARRYOVER_PYTHON ?? join(tests, '.venv/bin/python');

/** Who may sign in there. */
export const account = { user: 'nuala', password: 'rückhand' };

async function freePort() {
  const server = createServer();
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address();
  await new Promise((done) => server.close(done));
  return port;
}

/** Starts a server with one calendar, "Private". */
export async function startRadicale() {
  const folder = mkdtempSync(join(tmpdir(), 'carryover-radicale-'));
  const users = join(folder, 'users');
  writeFileSync(users, `${account.user}:${account.password}\n`);
  const port = await freePort();
  const options = {
    'server-hosts': `127.0.0.1:${port}`,
    'auth-type': 'htpasswd',
    'auth-htpasswd-filename': users,
    'auth-htpasswd-encryption': 'plain',
    'auth-delay': '0',
    'rights-type': 'owner_only',
    'storage-filesystem-folder': join(folder, 'collections'),
  };
  const given = Object.entries(options).map(([name, value]) => `--${name}=${value}`);
  const child = spawn(python, ['-m', 'radicale', '--config', '', ...given], { stdio: 'ignore' });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  const address = `http://127.0.0.1:${port}/`;
  const authorization = `Basic ${Buffer.from(`${account.user}:${account.password}`).toString('base64')}`;

  /** One request of another client; gives the answer's text. */
  async function ask(method, path, body, headers = {}) {
    const response = await fetch(new URL(path, address), {
      method,
      body,
      headers: { authorization, ...headers },
    });
    if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${await response.text()}`);
    return response.text();
  }

  const until = Date.now() + 30_000;
  for (;;) {
    try {
      await fetch(address);
      break;
    } catch (refused) {
      if (Date.now() > until || child.exitCode !== null) throw refused;
      await new Promise((then) => setTimeout(then, 50));
    }
  }
  const set = '<set xmlns="DAV:"><prop><displayname>Private</displayname></prop></set>';
  await ask(
    'MKCALENDAR',
    `${account.user}/private/`,
    `<C:mkcalendar xmlns:C="urn:ietf:params:xml:ns:caldav">${set}</C:mkcalendar>`,
  );

  /** The paths of what lies in a calendar. */
  async function paths(calendar) {
    const asked = '<propfind xmlns="DAV:"><prop><getetag/></prop></propfind>';
    const listed = await ask('PROPFIND', calendar, asked, { depth: '1' });
    return [...listed.matchAll(/<href>([^<]+\.ics)<\/href>/g)].map((found) => found[1]);
  }

  return {
    address,
    ask,
    paths,
    /** The texts of what lies in a calendar. */
    async texts(calendar) {
      return Promise.all((await paths(calendar)).map((path) => ask('GET', path)));
    },
    /** The path of the calendar with that name. */
    async called(name) {
      const asked = '<propfind xmlns="DAV:"><prop><displayname/></prop></propfind>';
      const listed = await ask('PROPFIND', `${account.user}/`, asked, { depth: '1' });
      const each = listed.split('</response>').find((r) => r.includes(`<displayname>${name}</displayname>`));
      return /<href>([^<]+)<\/href>/.exec(each)[1];
    },
    async stop() {
      child.kill();
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A calendar's text with one event. */
export function eventText(uid, lines) {
  const event = ['BEGIN:VEVENT', `UID:${uid}`, 'DTSTAMP:20260101T000000Z', ...lines, 'END:VEVENT'];
  return ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Phone//EN', ...event, 'END:VCALENDAR', ''].join(
    '\r\n',
  );
}
