// Tries as pencil strokes in fives: long for made, short for missed. Pure geometry.

/** One stroke. */
export interface Stroke {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  made: boolean;
  counted: boolean;
}

/** Strokes a row of this many fit into the width; further ones begin a new row. */
export const ROW = 15;
const STEP = 16;
const GAP = 14;
const EDGE = 8;
const LINE = 60;

/** Places a stroke for each try; the first `uncounted` are marked as not counted. */
export function strokes(tries: readonly boolean[], uncounted: number): Stroke[] {
  return tries.map((made, i) => {
    const at = i % ROW;
    const x = EDGE + at * STEP + Math.floor(at / 5) * GAP;
    const top = Math.floor(i / ROW) * LINE;
    return {
      x1: x,
      y1: top + (made ? 4 : 32),
      x2: x + (made ? 3 : 2),
      y2: top + 54,
      made,
      counted: i >= uncounted,
    };
  });
}

/** The room the strokes need. */
export function room(tries: number): { width: number; height: number } {
  const rows = Math.max(1, Math.ceil(tries / ROW));
  return { width: 2 * EDGE + ROW * STEP + (ROW / 5 - 1) * GAP, height: rows * LINE };
}

/** The strokes in words, for someone who hears them. */
export function strokeWords(tries: readonly boolean[], uncounted: number): string {
  const counted = tries.slice(uncounted);
  const made = counted.filter(Boolean).length;
  const first = Math.min(uncounted, tries.length);
  const not = first > 0 ? `, first ${first} not counted` : '';
  return `${made} made of ${counted.length}${not}`;
}
