// Times from the start of a process until the screen shows its page: the program's day sheet on the
// sample season, and a bare window of the same shell with one heading, turn by turn.
//
// The screen is Xvfb's, whose pixels lie in a file (-fbdir): looking at them asks nothing of either
// program. What a window has to show in the end is learned first, from a start under WebKit's driver
// in which the page itself is asked whether its heading and its rows are there; the timed starts are
// not driven, and end when every pixel of the screen is that picture's.
import assert from 'node:assert/strict';
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, copyFileSync, mkdirSync, openSync, readFileSync, readSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { startProgram, until } from '../window/harness.mjs';
import { freshFolder, root } from '../world/place.mjs';

const ROUNDS = 12;
const WARM_UP = 2;
/** How long between two looks at the screen, and so how exact a time is. */
const LOOK_MS = 4;
/** How long the screen must stay as it is to count as at rest. */
const REST_MS = 600;
const PATIENCE_MS = 30_000;
/** How far one colour of a pixel may be off, of 255, and still be the same to the eye. */
const SHADE = 8;

const release = (name) => join(root, 'target', 'release', name);

/** The pixels of the screen. */
function screen() {
  const path = join(process.env.CARRYOVER_SCREEN, 'Xvfb_screen0');
  const bytes = Buffer.alloc(statSync(path).size);
  const file = openSync(path, 'r');
  readSync(file, bytes, 0, bytes.length, 0);
  closeSync(file);
  return bytes;
}

/** Whether two pictures are the same; the engine's threads may round a shade differently. */
function same(one, other) {
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at++) {
    const apart = one[at] - other[at];
    if (apart > SHADE || apart < -SHADE) return false;
  }
  return true;
}

async function atRest() {
  let [before, since] = [screen(), performance.now()];
  while (performance.now() - since < REST_MS) {
    await pause(50);
    const now = screen();
    if (!same(now, before)) [before, since] = [now, performance.now()];
  }
  return before;
}

/** Where a round's programs keep what they keep: nothing is left from the round before. */
const kept = (folder) => ({
  CARRYOVER_FOLDER: join(folder, 'carryover'),
  XDG_DATA_HOME: join(folder, 'data'),
});

async function inFreshFolder(what, work) {
  const { path, remove } = freshFolder();
  try {
    mkdirSync(join(path, 'carryover'));
    return await work(path, what.prepare(path));
  } finally {
    remove();
  }
}

/** The picture the window ends with, once its page has said that all is there. */
const picture = (what) =>
  inFreshFolder(what, async (folder, args) => {
    Object.assign(process.env, kept(folder));
    const window = await startProgram(what.binary, join(folder, 'carryover'), args);
    await until(what.name, () => window.execute(what.ready));
    const shown = await atRest();
    await window.pullThePlug();
    return shown;
  });

/** A process and all that came from it. */
const family = (pid) => [
  pid,
  ...readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean).flatMap(family),
];

/** The memory of a process and its page's processes in KiB, what is shared counted in parts (PSS). */
const memory = (pid) =>
  family(pid)
    .map((one) => Number(/^Pss:\s+(\d+) kB/m.exec(readFileSync(`/proc/${one}/smaps_rollup`, 'utf8'))[1]))
    .reduce((sum, kib) => sum + kib, 0);

/** Milliseconds from the start of the process until the screen shows the picture; then its memory. */
const timed = (what, shown, empty) =>
  inFreshFolder(what, async (folder, args) => {
    const start = performance.now();
    const child = spawn(what.binary, args, {
      env: { ...process.env, ...kept(folder) },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    try {
      while (!same(screen(), shown)) {
        assert.equal(child.exitCode, null, `${what.name} ended`);
        assert.ok(performance.now() - start < PATIENCE_MS, `${what.name} did not come to its picture`);
        await pause(LOOK_MS);
      }
      const ms = performance.now() - start;
      await atRest();
      return { ms, kib: memory(child.pid) };
    } finally {
      child.kill('SIGKILL');
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
      await until('the empty screen', () => same(screen(), empty));
      // The page's own processes end after the window.
      await atRest();
    }
  });

const middle = (took) => took.toSorted((a, b) => a - b)[Math.floor(took.length / 2)];

/** The medians of both, of time and of memory, and how they stand to each other. */
export async function start() {
  const made = freshFolder();
  try {
    const season = join(made.path, 'season.carryover');
    const today = new Date().toLocaleDateString('sv');
    execFileSync(release('carryover-cli'), ['sample', season, '--today', today], { stdio: 'pipe' });
    const ours = {
      name: 'the day sheet',
      binary: release('carryover'),
      prepare(folder) {
        const file = join(folder, 'Season.carryover');
        copyFileSync(season, file);
        return ['--file', file];
      },
      ready: `() => document.querySelectorAll('main .acts').length >= 5 && /day \\d/.test(document.querySelector('main h1').innerText)`,
    };
    const bare = {
      name: 'the bare window',
      binary: release('carryover-bare-window'),
      prepare: () => [],
      ready: `() => document.querySelector('main h1').innerText === 'A bare window'`,
    };
    const empty = await atRest();
    const shown = new Map();
    for (const what of [ours, bare]) {
      shown.set(what, await picture(what));
      await until('the empty screen', () => same(screen(), empty));
    }
    const took = new Map([
      [ours, []],
      [bare, []],
    ]);
    for (let round = -WARM_UP; round < ROUNDS; round++) {
      // Each goes first in every other round.
      for (const what of round % 2 ? [ours, bare] : [bare, ours]) {
        const one = await timed(what, shown.get(what), empty);
        if (round >= 0) took.get(what).push(one);
      }
    }
    const of = (what, of) => {
      const each = took.get(what).map((one) => one[of]);
      return { median: middle(each), each };
    };
    const [ours_ms, bare_ms] = [of(ours, 'ms'), of(bare, 'ms')];
    const [ours_kib, bare_kib] = [of(ours, 'kib'), of(bare, 'kib')];
    return {
      start: { ours_ms, bare_ms, ratio: ours_ms.median / bare_ms.median, rounds: ROUNDS },
      memory: { ours_kib, bare_kib, ratio: ours_kib.median / bare_kib.median, rounds: ROUNDS },
    };
  } finally {
    made.remove();
  }
}
