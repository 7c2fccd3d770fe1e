// Real mail servers on loopback (from the outside tools), and what they took.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const tests = join(dirname(fileURLToPath(import.meta.url)), '..');
const python = process.env.CARRYOVER_PYTHON ?? join(tests, '.venv/bin/python');

/** Starts the servers, and has this process's children trust their authority until they are stopped. */
export async function startMail() {
  const child = spawn(python, [join(tests, 'outside/mail_servers.py')], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  const lines = createInterface({ input: child.stdout });
  const failed = new Promise((_, reject) =>
    child.once('exit', (code) => reject(new Error(`the mail servers ended with ${code}`))),
  );
  failed.catch(() => {});
  const where = JSON.parse(
    await Promise.race([new Promise((resolve) => lines.once('line', resolve)), failed]),
  );
  const before = process.env.SSL_CERT_FILE;
  process.env.SSL_CERT_FILE = where.trusted;
  return {
    ...where,
    /** The messages that were taken, as they arrived. */
    taken: () =>
      readdirSync(where.folder)
        .filter((name) => name.endsWith('.eml'))
        .sort()
        .map((name) => readFileSync(join(where.folder, name), 'utf8')),
    /** What goes wrong next: "mail", "rcpt", "data", "auth", "lose", "keep" or "later". */
    plan: (fault) => child.stdin.write(`${fault}\n`),
    async stop() {
      if (before === undefined) delete process.env.SSL_CERT_FILE;
      else process.env.SSL_CERT_FILE = before;
      child.stdin.end();
      await ended;
    },
  };
}
