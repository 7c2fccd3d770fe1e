// The project's measurements: prints a line for each, and writes all as JSON to tests/out/bench.json.
// Each stands beside something bare that was timed in the same run, turn by turn: on a busy machine
// the times move, their ratio much less.
//
// Run by tests/ci/bench.sh, which builds what is measured and gives it a screen.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { out, root } from '../world/place.mjs';
import { start } from './start.mjs';

const json = (name, ...args) =>
  JSON.parse(execFileSync(join(root, 'target', 'release', name), args, { encoding: 'utf8' }));

const ms = (n) => `${n.toFixed(n < 10 ? 3 : 0)} ms`;

function say(what, ours, name, theirs, measured) {
  const of = (times) => ms(times.median) + (times.p95 ? ` (p95 ${ms(times.p95)})` : '');
  const aim = measured.aim ? `, aim at most ${measured.aim.toFixed(2)}` : '';
  console.log(`${what}: ${of(ours)}; ${name}: ${of(theirs)}; ratio ${measured.ratio.toFixed(2)}${aim}`);
}

mkdirSync(out, { recursive: true });
const machine = { cores: cpus().length, load_before: loadavg()[0] };

const touch = { ...json('carryover-bench-touch', out), aim: 1.5 };
say('touch until committed', touch.ours_ms, 'bare insert', touch.bare_ms, touch);

const window = { ...(await start()), aim: 1.25 };
say('start until the day sheet is shown', window.ours_ms, 'bare window', window.bare_ms, window);

const letter = json('carryover-bench-print');
say('letter written as PDF', letter.ours_ms, 'krilla', letter.krilla_ms, letter);

// In memory: the file is made act by act, and is read from memory in any case.
const screens = { ...json('carryover-bench-screens', existsSync('/dev/shm') ? '/dev/shm' : out), aim_ms: 16 };
const slowest = Object.entries(screens.read_ms).toSorted(([, a], [, b]) => b.p99 - a.p99);
console.log(
  `what screens ask for, ${screens.students} students, ${screens.visits} visits, ${screens.tries} tries (aim at most ${screens.aim_ms} ms of 99 in 100):`,
);
for (const [name, took] of slowest) {
  console.log(
    `  ${name}: ${ms(took.median)} (p99 ${ms(took.p99)})${took.p99 > screens.aim_ms ? ', above it' : ''}`,
  );
}

machine.load_after = loadavg()[0];
console.log(
  `${machine.cores} cores, load ${machine.load_before.toFixed(1)} before, ${machine.load_after.toFixed(1)} after`,
);
writeFileSync(
  join(out, 'bench.json'),
  `${JSON.stringify({ machine, touch, start: window, letter, screens }, null, 2)}\n`,
);
