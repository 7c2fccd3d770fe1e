// Times how long the page takes to draw the carry chart of a student with 40 visits and 60 goals, in the real
// window: of all frames from leaving the list of people for the student until the chart stands there, the longest. While a
// frame is longer than the screen's own, the page does not answer.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { startProgram, until } from '../window/harness.mjs';
import { freshFolder, root } from '../world/place.mjs';

const ROUNDS = 12;
const GOALS = 60;
const release = (name) => join(root, 'target', 'release', name);

/** Goes to the student and notes the time of every frame until a while after the chart stood there. */
const watch = `(student) => {
  const seen = (window.seen = { frames: [], chart: null, done: false });
  const rows = () => document.querySelectorAll('main .chart a').length;
  const frame = (at) => {
    seen.frames.push(at);
    if (seen.chart === null && rows() >= ${GOALS}) seen.chart = seen.frames.length - 1;
    if (seen.chart !== null && seen.frames.length > seen.chart + 4) seen.done = true;
    else requestAnimationFrame(frame);
  };
  requestAnimationFrame((at) => {
    seen.frames.push(at);
    location.hash = '#/people/' + student;
    requestAnimationFrame(frame);
  });
  return true;
}`;

/** The frame in which the chart came, and the longest of all, in milliseconds. */
export async function chart() {
  const { path, remove } = freshFolder();
  try {
    mkdirSync(join(path, 'carryover'));
    const file = join(path, 'chart.carryover');
    const made = JSON.parse(
      execFileSync(release('carryover-bench-screens'), ['chart', file], { encoding: 'utf8' }),
    );
    assert.equal(made.goals, GOALS);
    const window = await startProgram(release('carryover'), join(path, 'carryover'), ['--file', file]);
    const drawn = [];
    for (let round = 0; round < ROUNDS; round++) {
      await window.execute(`() => { location.hash = '#/people'; return true; }`);
      await until('the list of people', () =>
        window.execute(`() => location.hash === '#/people' && !document.querySelector('main .chart')`),
      );
      await window.execute(watch, made.student);
      const seen = await until('the chart', async () => {
        const now = await window.execute(`() => window.seen`);
        return now.done && now;
      });
      const lengths = seen.frames.slice(1).map((at, n) => at - seen.frames[n]);
      drawn.push(Math.max(...lengths));
    }
    await window.pullThePlug();
    const sorted = drawn.toSorted((a, b) => a - b);
    return {
      longest_frame_ms: { median: sorted[Math.floor(sorted.length / 2)], each: drawn },
      rounds: ROUNDS,
    };
  } finally {
    remove();
  }
}
