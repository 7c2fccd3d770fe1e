// Acts on a coach file through the command line, as anyone could; the file must not be open elsewhere.
import { execFileSync } from 'node:child_process';
import { program } from './place.mjs';

const run = (args, input = '') =>
  JSON.parse(
    execFileSync(program('carryover-cli'), args, { input, stdio: ['pipe', 'pipe', 'pipe'] }).toString(),
  );

/** Runs a command on a file and gives its value. A refusal throws. */
export const act = (file, name, input = {}) =>
  run(['--file', file, 'call', name], JSON.stringify(input)).value;

/** Checks the whole file; what is unsound throws. */
export const check = (file) => run(['--file', file, 'check']);

/** Makes the sample season in a new file, up to a day. */
export const sample = (file, today) => run(['sample', file, '--today', today]);
