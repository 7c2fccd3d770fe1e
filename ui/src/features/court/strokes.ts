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
export const ROW = 20;

/** Places a stroke for each try; the first `uncounted` are marked as not counted. */
export function strokes(tries: readonly boolean[], uncounted: number): Stroke[] {
  return tries.map((made, i) => {
    const at = i % ROW;
    const x = 8 + at * 13 + Math.floor(at / 5) * 12;
    const top = Math.floor(i / ROW) * 46;
    return {
      x1: x,
      y1: top + (made ? 4 : 24),
      x2: x + (made ? 3 : 2),
      y2: top + 40,
      made,
      counted: i >= uncounted,
    };
  });
}

/** The room the strokes need. */
export function room(tries: number): { width: number; height: number } {
  const rows = Math.max(1, Math.ceil(tries / ROW));
  return { width: 8 + ROW * 13 + 3 * 12 + 8, height: rows * 46 };
}

/** The strokes in words, for someone who hears them. */
export function strokeWords(tries: readonly boolean[], uncounted: number): string {
  const counted = tries.slice(uncounted);
  const made = counted.filter(Boolean).length;
  const first = Math.min(uncounted, tries.length);
  const not = first > 0 ? `, first ${first} not counted` : '';
  return `${made} made of ${counted.length}${not}`;
}
