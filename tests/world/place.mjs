// Where things are: the built programs, and a fresh folder for each story.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The top of the project. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** A program built by `cargo build --workspace`. */
export const program = (name) => join(root, 'target', 'debug', name);

/** Where pictures and traces of a run go. */
export const out = join(root, 'tests', 'out');

/** A folder of its own, and how to be rid of it. */
export function freshFolder() {
  const path = mkdtempSync(join(tmpdir(), 'carryover-'));
  return {
    path,
    remove: () => rmSync(path, { recursive: true, force: true, maxRetries: 10, retryDelay: 50 }),
  };
}
