// Writes src/ipc/bindings.ts from the command table on standard input, or with --check only compares.
//   carryover-cli commands | npm run bindings
import { readFileSync, writeFileSync } from 'node:fs';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { bindings } from './schemas.mjs';

const file = fileURLToPath(new URL('../src/ipc/bindings.ts', import.meta.url));
const stop = (words) => {
  console.error(words);
  process.exit(1);
};

let commands;
try {
  commands = JSON.parse(await text(process.stdin));
} catch (error) {
  stop(`Standard input is not the JSON of "carryover-cli commands": ${error.message}`);
}
const made = await bindings(commands).catch((error) => stop(error.message));
if (process.argv.includes('--check')) {
  let kept = '';
  try {
    kept = readFileSync(file, 'utf8');
  } catch (error) {
    if (error.code !== 'ENOENT') throw error;
  }
  if (made !== kept)
    stop(
      'src/ipc/bindings.ts does not fit the command table. Run: carryover-cli commands | npm run bindings',
    );
} else {
  writeFileSync(file, made);
}
