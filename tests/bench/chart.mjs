// Times how the page draws the carry chart of a student with 40 visits and 60 goals, in the real window: of all
// frames from leaving the list of people for the student until the chart stands there, the longest; and in how many
// frames, from the first of the chart, all of it that is in sight stands. While a frame is long, the page does not answer.
// Bare beside it: the frames of the same window in the same run in each of which one word of the heading changes.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { startProgram, until } from '../window/harness.mjs';
import { freshFolder, root } from '../world/place.mjs';

const ROUNDS = 12;
const GOALS = 60;
const BARE = 20;
const release = (name) => join(root, 'target', 'release', name);

/** The time of every frame while the heading changes in each. */
const bare = `() => new Promise((done) => {
  const heading = document.querySelector('main h1');
  const words = heading.textContent;
  const frames = [];
  const frame = (at) => {
    frames.push(at);
    heading.textContent = frames.length > ${BARE} ? words : words + frames.length;
    if (frames.length > ${BARE}) done(frames);
    else requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
})`;

/** Goes to the student and notes the time of every frame, and the rows that then stood, until a while after the last. */
const watch = `(student) => {
  const seen = (window.seen = { frames: [], rows: [], whole: null, inSight: null });
  const rows = () => document.querySelectorAll('main .chart a');
  const frame = (at) => {
    seen.frames.push(at);
    seen.rows.push(rows().length);
    if (seen.whole === null && rows().length >= ${GOALS}) seen.whole = seen.frames.length - 1;
    if (seen.whole === null || seen.frames.length <= seen.whole + 4) return requestAnimationFrame(frame);
    seen.inSight = [...rows()].filter((row) => row.getBoundingClientRect().top < innerHeight).length;
  };
  requestAnimationFrame((at) => {
    seen.frames.push(at);
    seen.rows.push(0);
    location.hash = '#/people/' + student;
    requestAnimationFrame(frame);
  });
  return true;
}`;

const lengths = (frames) => frames.slice(1).map((at, n) => at - frames[n]);
const median = (numbers) => numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];

/** The longest frame and the bare one in milliseconds, their ratio, and the frames until what is in sight stands. */
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
    const longest = [];
    const bares = [];
    const inSight = [];
    for (let round = 0; round < ROUNDS; round++) {
      await window.execute(`() => { location.hash = '#/people'; return true; }`);
      await until('the list of people', () =>
        window.execute(`() => location.hash === '#/people' && !document.querySelector('main .chart')`),
      );
      bares.push(...lengths(await window.execute(bare)));
      await window.execute(watch, made.student);
      const seen = await until('the chart', async () => {
        const now = await window.execute(`() => window.seen`);
        return now.inSight !== null && now;
      });
      longest.push(Math.max(...lengths(seen.frames)));
      const first = seen.rows.findIndex((rows) => rows > 0);
      inSight.push(seen.rows.findIndex((rows) => rows >= seen.inSight) - first + 1);
    }
    await window.pullThePlug();
    const ours_ms = { median: median(longest), each: longest };
    const bare_ms = { median: median(bares) };
    return { ours_ms, bare_ms, ratio: ours_ms.median / bare_ms.median, in_sight: inSight, rounds: ROUNDS };
  } finally {
    remove();
  }
}
