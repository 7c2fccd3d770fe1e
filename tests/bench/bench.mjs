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
import { chart } from './chart.mjs';
import { start } from './start.mjs';

const json = (name, ...args) =>
  JSON.parse(execFileSync(join(root, 'target', 'release', name), args, { encoding: 'utf8' }));

const mib = (kib) => `${(kib / 1024).toFixed(0)} MiB`;

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

const started = await start();
const window = { ...started.start, aim: 1.25 };
say('start until the day sheet is shown', window.ours_ms, 'bare window', window.bare_ms, window);
const memory = { ...started.memory, aim: 1.3 };
console.log(
  `memory with the day sheet: ${mib(memory.ours_kib.median)}; bare window: ${mib(memory.bare_kib.median)}; ratio ${memory.ratio.toFixed(2)}, aim at most ${memory.aim.toFixed(2)}`,
);
const drawn = { ...(await chart()), aim: 2 };
say(
  'the longest frame while the carry chart of 40 visits and 60 goals is drawn',
  drawn.ours_ms,
  'a bare frame',
  drawn.bare_ms,
  drawn,
);
console.log(`  frames until what is in sight of it stands: ${drawn.in_sight.join(', ')}; aim at most 2`);

const letter = json('carryover-bench-print');
say('letter written as PDF', letter.ours_ms, 'krilla', letter.krilla_ms, letter);

const aims_of_plans = { real_s: 0.3, hard_s: 3, hard_mib: 200, move_ms: 16 };
const plans = {
  ...json('carryover-bench-plans', join(root, 'tests/outside/plan_optima.jsonl')),
  aims: aims_of_plans,
};
console.log(
  `plans of a real trip, ${plans.real.asks} asks: ${ms(plans.real.median_s * 1000)}, the slowest ${ms(plans.real.worst_s * 1000)}, aim at most ${ms(aims_of_plans.real_s * 1000)}`,
);
console.log(
  `the hardest known case: ${plans.hard.seconds.toFixed(2)} s${plans.hard.proven ? ', proven' : ', not proven'}, ${mib(plans.hard.most_memory_kib)} at most; aim at most ${aims_of_plans.hard_s} s and ${aims_of_plans.hard_mib} MiB`,
);
console.log(
  `a move by hand checked: ${ms(plans.move_ms.median)} (p99 ${ms(plans.move_ms.p99)}), aim at most ${aims_of_plans.move_ms} ms`,
);

// In memory: the file is made act by act, and is read from memory in any case.
const place = existsSync('/dev/shm') ? '/dev/shm' : out;
const year = { ...json('carryover-bench-screens', 'year', place), aim_ms: 16 };
console.log(`a year of ${year.lessons} lessons (aim at most ${year.aim_ms} ms for 99 in 100):`);
for (const [name, took] of Object.entries(year.read_ms)) {
  const above = took.p99 > year.aim_ms ? ', above it' : '';
  console.log(`  ${name}: ${ms(took.median)} (p99 ${ms(took.p99)})${above}`);
}
const money = { ...json('carryover-bench-screens', 'money', place), aim_ms: 16, issue_aim_ms: 100 };
console.log(
  `money after ten years and ${money.invoices} invoices: one issued with its document and files in ${ms(money.issue_ms.median)} (p99 ${ms(money.issue_ms.p99)}), aim at most ${money.issue_aim_ms} ms`,
);
for (const [name, took] of Object.entries(money.read_ms)) {
  const above = took.p99 > money.aim_ms ? ', above it' : '';
  console.log(`  ${name}: ${ms(took.median)} (p99 ${ms(took.p99)})${above}`);
}
const mail = { ...json('carryover-bench-screens', 'mail', place), aim_ms: 16 };
console.log(`the out-tray with ${mail.messages} messages (aim at most ${mail.aim_ms} ms for 99 in 100):`);
for (const [name, took] of Object.entries(mail.read_ms)) {
  const above = took.p99 > mail.aim_ms ? ', above it' : '';
  console.log(`  ${name}: ${ms(took.median)} (p99 ${ms(took.p99)})${above}`);
}
const aims = { 1: 16, 10: 3 * 16 };
const screens = Object.entries(aims).map(([times, aim_ms]) => ({
  ...json('carryover-bench-screens', place, times),
  aim_ms,
}));
for (const file of screens) {
  const slowest = Object.entries(file.read_ms).toSorted(([, a], [, b]) => b.p99 - a.p99);
  console.log(
    `what screens ask for, ${file.students} students, ${file.visits} visits, ${file.tries} tries (aim at most ${file.aim_ms} ms for 99 in 100):`,
  );
  for (const [name, took] of slowest) {
    console.log(
      `  ${name}: ${ms(took.median)} (p99 ${ms(took.p99)})${took.p99 > file.aim_ms ? ', above it' : ''}`,
    );
  }
}

machine.load_after = loadavg()[0];
console.log(
  `${machine.cores} cores, load ${machine.load_before.toFixed(1)} before, ${machine.load_after.toFixed(1)} after`,
);
writeFileSync(
  join(out, 'bench.json'),
  `${JSON.stringify({ machine, touch, start: window, memory, chart: drawn, letter, plans, year, money, mail, screens }, null, 2)}\n`,
);
