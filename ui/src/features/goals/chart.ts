// The geometry of the carry chart: where each mark, line and word stands. Pure; the component only draws it.
import type { Column, Line, Mark, Output } from '../../ipc';
import { askedWords, countWords, kindWords, stateWords } from './words';

/** The whole chart, as the core gives it. */
export type Chart = Output<'goals.chart'>;

/** Widths and heights of the chart's parts, in its own units. */
export const size = { left: 300, column: 112, right: 180, head: 60, row: 108 } as const;

/** One mark with its place. */
export interface Dot {
  x: number;
  y: number;
  low: number;
  high: number;
  /** Where its count stands, below. */
  countX: number;
  mark: Mark;
  visit: string;
}

/** One goal's row. */
export interface DrawnRow {
  line: Line;
  top: number;
  title: string[];
  asked: string;
  state: string;
  why: string[];
  criterion: { x1: number; x2: number; y: number } | null;
  dots: Dot[];
  threads: { x1: number; y1: number; x2: number; y2: number; gap: boolean }[];
  kept: { x: number; y: number } | null;
  cells: { visit: string; x: number; words: string; practice: string }[];
}

/** The whole drawing. */
export interface Drawing {
  width: number;
  height: number;
  columns: { column: Column; x: number }[];
  rows: DrawnRow[];
  joins: string[];
  legend: string;
}

/** Breaks words over lines of at most so many characters; a line too many ends in an ellipsis. */
export function wrapped(words: string, most: number, lines: number): string[] {
  const out: string[] = [];
  for (const word of words.split(/\s+/).filter(Boolean)) {
    let rest = word;
    const last = out[out.length - 1];
    if (last !== undefined && last.length + 1 + rest.length <= most) {
      out[out.length - 1] = `${last} ${rest}`;
      continue;
    }
    while (rest.length > most) {
      out.push(rest.slice(0, most));
      rest = rest.slice(most);
    }
    if (rest) out.push(rest);
  }
  if (out.length <= lines) return out;
  const kept = out.slice(0, lines);
  const last = kept[lines - 1] ?? '';
  kept[lines - 1] = `${last.slice(0, Math.max(0, most - 1)).trimEnd()}…`;
  return kept;
}

/** How many columns fit into a width. */
export function columnsThatFit(width: number): number {
  return Math.max(1, Math.floor((width - size.left - size.right) / size.column));
}

/** Moves labels apart so that none stands on another; keeps their order. */
export function spread(xs: readonly number[], apart: number): number[] {
  const out = [...xs];
  for (let i = 1; i < out.length; i++) {
    const before = out[i - 1] ?? 0;
    const here = out[i] ?? 0;
    if (here - before < apart) {
      const push = (apart - (here - before)) / 2;
      for (let k = 0; k < i; k++) out[k] = (out[k] ?? 0) - push;
      out[i] = here + push;
      if ((out[i] ?? 0) - (out[i - 1] ?? 0) < apart) out[i] = (out[i - 1] ?? 0) + apart;
    }
  }
  return out;
}

/** Draws a chart; `from` is the first column shown, `most` how many. */
export function draw(chart: Chart, from: number, most: number): Drawing {
  const shown = chart.columns.slice(from, from + most);
  const columns = shown.map((column, i) => ({ column, x: size.left + size.column * (i + 0.5) }));
  const xOf = new Map(columns.map((c) => [c.column.visit, c.x]));
  const lines = chart.lines.filter(
    (line) => line.cells.length === 0 || line.cells.some((cell) => xOf.has(cell.visit)),
  );
  const rows = lines.map((line, n) => row(line, size.head + size.row * n, chart, xOf));
  const width = size.left + size.column * Math.max(1, shown.length) + size.right;
  return {
    width,
    height: size.head + size.row * rows.length + 6,
    columns,
    rows,
    joins: joins(rows),
    legend: legend(chart),
  };
}

function row(line: Line, top: number, chart: Chart, xOf: Map<string, number>): DrawnRow {
  const y = (rate: number) => top + size.row - 26 - rate * (size.row - 48);
  const dots: Dot[] = [];
  const cells: DrawnRow['cells'] = [];
  for (const cell of line.cells) {
    const x = xOf.get(cell.visit);
    if (x === undefined) continue;
    const here = cell.marks.map((mark, k): Dot => {
      const shift = cell.marks.length < 2 ? 0 : 14 * ((2 * k) / (cell.marks.length - 1) - 1);
      return {
        x: x + shift,
        y: y(mark.rate),
        low: y(mark.low),
        high: y(mark.high),
        countX: x + shift,
        mark,
        visit: cell.visit,
      };
    });
    spread(
      here.map((dot) => dot.x),
      44,
    ).forEach((countX, k) => {
      const dot = here[k];
      if (dot) dot.countX = countX;
    });
    dots.push(...here);
    const said = cell.marks.map((m) => `${kindWords[m.kind]} ${countWords(m.count)}`);
    cells.push({
      visit: cell.visit,
      x,
      words: said.length > 0 ? said.join(', ') : 'not tested',
      practice: cell.marks.length === 0 && cell.practice.tries > 0 ? countWords(cell.practice) : '',
    });
  }
  const place = (visit: string) => chart.columns.findIndex((c) => c.visit === visit);
  const threads = dots.slice(1).map((b, i) => {
    const a = dots[i] as Dot;
    return { x1: a.x, y1: a.y, x2: b.x, y2: b.y, gap: place(b.visit) - place(a.visit) > 1 };
  });
  const xs = cells.map((cell) => cell.x);
  const closed = line.state === 'kept' || line.state === 'raised' || line.state === 'closed';
  const last = Math.max(...xs, ...(closed ? [] : [...xOf.values()]));
  const keptX = line.kept_at ? xOf.get(line.kept_at) : undefined;
  const keptDot = dots.filter((dot) => dot.visit === line.kept_at).at(-1);
  const kept = line.kept_at !== null && line.state !== 'slipped';
  return {
    line,
    top,
    title: wrapped(line.title, 34, 2),
    asked: askedWords(line),
    state: line.state === 'raised' && kept ? 'kept' : stateWords[line.state],
    why: wrapped(
      line.state === 'raised' ? 'raised to a harder goal' : line.waits ? `waits · ${line.why}` : line.why,
      25,
      3,
    ),
    criterion:
      xs.length > 0
        ? { x1: Math.min(...xs) - 20, x2: last + 20, y: y(line.criterion.need / line.criterion.of) }
        : null,
    dots,
    threads,
    kept: kept && keptX !== undefined ? { x: (keptDot?.x ?? keptX) + 20, y: keptDot?.y ?? y(0.5) } : null,
    cells,
  };
}

/** Threads from a raised goal down to the goal it became. */
function joins(rows: readonly DrawnRow[]): string[] {
  return rows.flatMap((to) => {
    const from = rows.find((r) => r.line.goal === to.line.came_from);
    const end = to.dots[0];
    if (!from) return [];
    const x1 = from.kept ? from.kept.x + 3 : (from.dots.at(-1)?.x ?? size.left);
    const y1 = from.kept ? from.kept.y + 14 : (from.dots.at(-1)?.y ?? from.top) + 10;
    const x2 = end?.x ?? to.cells[0]?.x ?? x1;
    const y2 = end ? end.y - 11 : to.top + size.row / 2;
    return [`M${x1} ${y1}C${x1} ${to.top + 12} ${x2} ${to.top - 4} ${x2} ${y2}`];
  });
}

/** What the marks mean; only those that are there. */
function legend(chart: Chart): string {
  const kinds = new Set(chart.lines.flatMap((l) => l.cells.flatMap((c) => c.marks.map((m) => m.kind))));
  return [
    kinds.has('retest') ? '○ retest, before any coaching' : '',
    kinds.has('end_test') ? '● end test' : '',
    kinds.has('look_back') ? '◌ a later look' : '',
    'upright line: rough range of the true rate',
    'red line: the criterion',
    chart.lines.some((l) => l.kept_at) ? '‖ kept' : '',
  ]
    .filter(Boolean)
    .join(' · ');
}
