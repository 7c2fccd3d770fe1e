// How wide words are drawn, and how they are broken and set apart, where nothing but a drawing can do it.

// Advance widths of Atkinson Hyperlegible Next in hundredths of its size, rounded up: of each character the wider
// of the regular and the semi-bold.
const ADVANCES: readonly (readonly [number, string])[] = [
  [20, "'"],
  [32, ' !,.:;`ijl|’·'],
  [40, '-"[]_frt{}()'],
  [51, '/1I\\*csyz–“”'],
  [62, '235679?EFJLPSTZ$abdeghknopquvx~+<>^'],
  [74, '048=#ABCDHKRUVXY'],
  [80, '&GNOQw@…'],
  [90, 'MWm'],
  [102, '%ÆæŒœ'],
];
const advance = new Map(ADVANCES.flatMap(([wide, all]) => [...all].map((one) => [one, wide / 100])));
/** A letter of no script that is known to be narrower. */
const OTHER = 0.75;
/** Full-width scripts fill a square. */
const FULL = /[\u1100-\u11ff\u2e80-\u9fff\uac00-\ud7a3\uf900-\ufaff\uff01-\uff60\u{1f000}-\u{3ffff}]/u;

/** Most words are of these characters alone, each of which stands for itself. */
const PLAIN = /^[\x20-\x7e]*$/;
const parts = new Intl.Segmenter('en', { granularity: 'grapheme' });
/** What a reader takes for one character, with its accents. */
const characters = (words: string) =>
  PLAIN.test(words) ? Array.from(words) : Array.from(parts.segment(words), (part) => part.segment);

/** About how wide words are at a size; rather too wide than too narrow. */
export function widthOf(words: string, size: number): number {
  let wide = 0;
  for (const one of characters(words)) {
    wide += advance.get(one) ?? advance.get(one.normalize('NFD').charAt(0)) ?? (FULL.test(one) ? 1 : OTHER);
  }
  return wide * size;
}

/** Breaks words into lines that fit a width; what is left over after the last line ends in an ellipsis. */
export function wrapped(words: string, width: number, lines: number, size: number): string[] {
  const fits = (text: string) => widthOf(text, size) <= width;
  const out: string[] = [];
  for (const word of words.split(/\s+/).filter(Boolean)) {
    const last = out.at(-1);
    if (last !== undefined && fits(`${last} ${word}`)) {
      out[out.length - 1] = `${last} ${word}`;
      continue;
    }
    let line = '';
    for (const one of characters(word)) {
      if (line && !fits(line + one)) {
        out.push(line);
        line = '';
      }
      line += one;
    }
    out.push(line);
  }
  if (out.length <= lines) return out;
  const kept = out.slice(0, lines);
  const last = characters(kept[lines - 1] ?? '');
  while (last.length > 0 && !fits(`${last.join('')}…`)) last.pop();
  kept[lines - 1] = `${last.join('').trimEnd()}…`;
  return kept;
}

/** A label: where its middle would like to be, and how wide it is. */
export interface Label {
  x: number;
  width: number;
}

/**
 * Moves labels apart so that none stands on another, each as little as can be, and none outside `from` to `to` while
 * there is room. Keeps their order. (Least squares by pooling neighbours that violate it, as isotonic regression does.)
 */
export function spread(labels: readonly Label[], gap: number, from = -Infinity, to = Infinity): number[] {
  let sum = 0;
  const offsets = labels.map((label, i) => {
    const before = labels[i - 1];
    if (before) sum += (before.width + label.width) / 2 + gap;
    return sum;
  });
  const pools: { sum: number; count: number }[] = [];
  labels.forEach((label, i) => {
    let pool = { sum: label.x - (offsets[i] ?? 0), count: 1 };
    for (
      let last = pools.at(-1);
      last && last.sum / last.count > pool.sum / pool.count;
      last = pools.at(-1)
    ) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
    }
    pools.push(pool);
  });
  const low = from + (labels[0]?.width ?? 0) / 2;
  const high = to - (labels.at(-1)?.width ?? 0) / 2 - sum;
  const at = pools.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count));
  return at.map((z, i) => Math.max(low, Math.min(high, z)) + (offsets[i] ?? 0));
}
