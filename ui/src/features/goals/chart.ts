// The geometry of the carry chart: where each mark, line and word stands. Pure; the component only draws it.
import type { Column, Line, Mark, Output } from '../../ipc';
import { spread, widthOf, wrapped } from './fit';
import { askedWords, countWords, kindWords, stateWords } from './words';

/** The whole chart, as the core gives it. */
export type Chart = Output<'goals.chart'>;

/** Widths and heights of the chart's parts, in its own units. */
export const size = {
  left: 276,
  column: 112,
  widest: 150,
  right: 204,
  head: 60,
  row: 108,
  astray: 24,
} as const;

/** One mark with its place. */
export interface Dot {
  x: number;
  y: number;
  low: number;
  high: number;
  mark: Mark;
  visit: string;
}

/** A straight stroke, from left to right. */
export interface Stroke {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
}

/** A stroke between two marks; dotted where a visit passed without a retest. */
export interface Thread extends Stroke {
  gap: boolean;
}

/** A count in words and the middle of where it stands. */
export interface DrawnCount {
  words: string;
  x: number;
  y: number;
}

/** One goal at one visit, to be opened. */
export interface DrawnCell {
  visit: string;
  x: number;
  words: string;
  /** What was practised, where nothing was tested, in brackets; of whole games, how often it happened. */
  practice: string;
}

/** One sign of the chart and what it means. */
export interface Meaning {
  sign: 'retest' | 'end_test' | 'look_back' | 'range' | 'criterion' | 'kept';
  words: string;
}

/** One goal's row. */
export interface DrawnRow {
  top: number;
  title: string[];
  asked: string;
  state: string;
  why: string[];
  criterion: { x1: number; x2: number; y: number } | null;
  dots: Dot[];
  counts: DrawnCount[];
  threads: Thread[];
  kept: { x: number; y: number } | null;
  cells: DrawnCell[];
}

/** The whole drawing. */
export interface Drawing {
  width: number;
  height: number;
  /** From the middle of one column to the next. */
  apart: number;
  /** Where states and reasons begin. */
  wordsX: number;
  columns: { column: Column; x: number; note: string }[];
  /** The goals that have a row, from the top. */
  lines: Line[];
  /** The row of a goal, counted from the top; drawn when it is first asked for. */
  row: (n: number) => DrawnRow;
  /** The threads from raised goals to those they became, among the first so many rows. */
  joins: (many: number) => string[];
  legend: Meaning[];
  /** How many goals have no visit among those shown. */
  elsewhere: number;
}

/** All marks of a goal in the chart. */
export function marksOf(chart: Chart | null, goal: string): Mark[] {
  return chart?.lines.find((line) => line.goal === goal)?.cells.flatMap((cell) => cell.marks) ?? [];
}

/** How many columns fit into a width. */
export function columnsThatFit(width: number): number {
  return Math.max(1, Math.floor((width - size.left - size.right) / size.column));
}

/** What of a chart is drawn: the first column shown, how many of them, and the width there is. */
export interface View {
  from: number;
  most: number;
  width: number;
}

/** The drawing's frame: where columns begin and end, and how far apart they stand. */
interface Frame {
  left: number;
  right: number;
  /** Which column a visit is, counted from the first shown. */
  place: (visit: string) => number;
  /** The middle of a visit's column, also of one outside the frame; undefined for no column. */
  middle: (visit: string) => number | undefined;
  inside: (x: number) => boolean;
}

/** Draws a chart, its rows as they are asked for. A line that comes from an earlier visit, or goes on to a later one, is cut at the frame. */
export function draw(chart: Chart, view: View): Drawing {
  const shown = chart.columns.slice(view.from, view.from + view.most);
  const many = Math.max(1, shown.length);
  const apart = Math.max(
    size.column,
    Math.min(size.widest, Math.floor((view.width - size.left - size.right) / many)),
  );
  const width = Math.max(size.left + apart * many + size.right, view.width);
  const place = new Map(chart.columns.map((c, i) => [c.visit, i - view.from]));
  const frame: Frame = {
    left: size.left,
    right: size.left + apart * many,
    place: (visit) => place.get(visit) ?? 0,
    middle: (visit) => {
      const at = place.get(visit);
      return at === undefined ? undefined : size.left + apart * (at + 0.5);
    },
    inside: (x) => x > size.left && x < size.left + apart * many,
  };
  const columns = shown.map((column, i) => ({
    column,
    x: size.left + apart * (i + 0.5),
    note: column.open ? 'here now' : (wrapped(column.note, apart - 8, 1, 14.5)[0] ?? ''),
  }));
  const visible = new Set(shown.map((column) => column.visit));
  const lines = chart.lines.filter(
    (line) => line.cells.length === 0 || line.cells.some((cell) => visible.has(cell.visit)),
  );
  const rows: DrawnRow[] = [];
  const at = (n: number): DrawnRow =>
    (rows[n] ??= row(lines[n] as Line, size.head + size.row * n, chart, frame));
  return {
    width,
    height: size.head + size.row * lines.length + 6,
    apart,
    wordsX: frame.right + 14,
    columns,
    lines,
    row: at,
    joins: (many) => joins(lines.slice(0, many), at, frame),
    legend: legend(chart),
    elsewhere: chart.lines.length - lines.length,
  };
}

function row(line: Line, top: number, chart: Chart, frame: Frame): DrawnRow {
  const y = (rate: number) => top + size.row - 26 - rate * (size.row - 48);
  // Those outside the frame too: threads run to them, and are cut at its edge.
  const all: Dot[] = line.cells.flatMap((cell) => {
    const x = frame.middle(cell.visit);
    if (x === undefined) return [];
    return cell.marks.map((mark, k): Dot => {
      const shift = cell.marks.length < 2 ? 0 : 14 * ((2 * k) / (cell.marks.length - 1) - 1);
      return {
        x: x + shift,
        y: y(mark.rate),
        low: y(mark.low),
        high: y(mark.high),
        mark,
        visit: cell.visit,
      };
    });
  });
  const threads = all.slice(1).flatMap((b, i): Thread[] => {
    const a = all[i] as Dot;
    const gap = frame.place(b.visit) - frame.place(a.visit) > 1;
    const cut = clipped({ x1: a.x, y1: a.y, x2: b.x, y2: b.y }, frame.left, frame.right);
    return cut ? [{ ...cut, gap }] : [];
  });
  const cells = line.cells.flatMap((cell): DrawnCell[] => {
    const x = frame.middle(cell.visit);
    if (x === undefined || !frame.inside(x)) return [];
    const said = cell.marks.map((m) => `${kindWords[m.kind]} ${countWords(m.count)}`);
    const practised = cell.practice.tries > 0 ? countWords(cell.practice) : '';
    const games = cell.games.length > 0 ? `in games ${cell.games.join(', ')}` : '';
    const tested = said.length > 0 ? said.join(', ') : games || 'not tested';
    return [
      {
        visit: cell.visit,
        x,
        words: practised ? `${tested}, practice ${practised}` : tested,
        practice: said.length > 0 ? '' : cell.games.join(', ') || (practised ? `(${practised})` : ''),
      },
    ];
  });
  const dots = all.filter((dot) => frame.inside(dot.x));
  const keptDot = all.filter((dot) => dot.visit === line.kept_at).at(-1);
  const keptX = keptDot?.x ?? (line.kept_at ? frame.middle(line.kept_at) : undefined);
  const kept = line.kept_at !== null && line.state !== 'slipped';
  const why =
    line.state === 'raised' ? 'raised to a harder goal' : line.waits ? `waits · ${line.why}` : line.why;
  return {
    top,
    title: wrapped(line.title, size.left - 24, 2, 16),
    asked: askedWords(line),
    state: line.state === 'raised' && kept ? 'kept' : stateWords[line.state],
    why: wrapped(why, size.right - 14, 3, 14.5),
    criterion:
      line.criterion.kind === 'at_most'
        ? null
        : criterion(line, y(line.criterion.need / line.criterion.of), chart, frame),
    dots,
    counts: counts(dots, cells, frame, top + size.row - 7),
    threads,
    kept:
      kept && keptX !== undefined && frame.inside(keptX) ? { x: keptX + 20, y: keptDot?.y ?? y(0.5) } : null,
    cells,
  };
}

/** The criterion from the first visit of its goal to the last, or to the newest while it is worked on. */
function criterion(line: Line, y: number, chart: Chart, frame: Frame): DrawnRow['criterion'] {
  const over = line.state === 'kept' || line.state === 'raised' || line.state === 'closed';
  const visits = line.cells.map((cell) => cell.visit);
  const newest = chart.columns.at(-1);
  if (!over && newest && visits.length > 0) visits.push(newest.visit);
  const xs = visits.flatMap((visit) => frame.middle(visit) ?? []);
  if (xs.length === 0) return null;
  const ends = { x1: Math.min(...xs) - 20, y1: y, x2: Math.max(...xs) + 20, y2: y };
  const cut = clipped(ends, frame.left, frame.right);
  return cut ? { x1: cut.x1, x2: cut.x2, y } : null;
}

/** The counts under a row's marks, and what was only practised, none on another. */
function counts(
  dots: readonly Dot[],
  cells: readonly DrawnCell[],
  frame: Frame,
  bottom: number,
): DrawnCount[] {
  const wanted = [
    ...dots.map((dot) => ({ x: dot.x, words: `${dot.mark.count.made}/${dot.mark.count.tries}` })),
    ...cells.filter((cell) => cell.practice).map((cell) => ({ x: cell.x, words: cell.practice })),
  ].sort((a, b) => a.x - b.x);
  const placed = (those: typeof wanted) =>
    spread(
      those.map((one) => ({ x: one.x, width: widthOf(one.words, 14.5) })),
      6,
      frame.left - 10,
      frame.right + 10,
    );
  const xs = placed(wanted);
  const near = wanted.every((one, i) => Math.abs((xs[i] ?? one.x) - one.x) <= size.astray);
  if (near) return wanted.map((one, i) => ({ words: one.words, x: xs[i] ?? one.x, y: bottom }));
  // Too many or too long for one line: every second one stands a line higher.
  return [0, 1].flatMap((odd) => {
    const those = wanted.filter((_, i) => i % 2 === odd);
    const at = placed(those);
    return those.map((one, i) => ({ words: one.words, x: at[i] ?? one.x, y: bottom - 14 * odd }));
  });
}

/** The part of a stroke between two uprights; null when there is none. */
export function clipped(stroke: Stroke, left: number, right: number): Stroke | null {
  const { x1, y1, x2, y2 } = stroke;
  if (x2 <= left || x1 >= right) return null;
  const at = (x: number) => (x2 === x1 ? y1 : y1 + ((y2 - y1) * (x - x1)) / (x2 - x1));
  const from = Math.max(x1, left);
  const to = Math.min(x2, right);
  return { x1: from, y1: at(from), x2: to, y2: at(to) };
}

/** Threads from a raised goal down to the goal it became, where both ends are drawn. */
function joins(lines: readonly Line[], row: (n: number) => DrawnRow, frame: Frame): string[] {
  return lines.flatMap((line, n) => {
    const before = line.came_from === null ? -1 : lines.findIndex((other) => other.goal === line.came_from);
    if (before < 0) return [];
    const from = row(before);
    const to = row(n);
    const last = from.dots.at(-1);
    const start = from.kept
      ? { x: from.kept.x + 3, y: from.kept.y + 14 }
      : last && { x: last.x, y: last.y + 10 };
    const first = line.cells[0]?.visit;
    const x = first === undefined ? undefined : frame.middle(first);
    if (!start || x === undefined || !frame.inside(x)) return [];
    const dot = to.dots.find((d) => d.visit === first);
    const end = dot ? { x: dot.x, y: dot.y - 11 } : { x, y: to.top + size.row / 2 };
    return [`M${start.x} ${start.y}C${start.x} ${to.top + 12} ${end.x} ${to.top - 4} ${end.x} ${end.y}`];
  });
}

/** What the marks mean; only those that are there. */
function legend(chart: Chart): Meaning[] {
  const kinds = new Set(chart.lines.flatMap((l) => l.cells.flatMap((c) => c.marks.map((m) => m.kind))));
  const all: [boolean, Meaning][] = [
    [kinds.has('retest'), { sign: 'retest', words: 'retest, before any coaching' }],
    [kinds.has('end_test'), { sign: 'end_test', words: 'end test' }],
    [kinds.has('look_back'), { sign: 'look_back', words: 'look back at a kept goal' }],
    [kinds.size > 0, { sign: 'range', words: 'rough range of the true rate' }],
    [true, { sign: 'criterion', words: 'the criterion' }],
    [chart.lines.some((l) => l.kept_at), { sign: 'kept', words: 'kept' }],
  ];
  return all.filter(([there]) => there).map(([, meaning]) => meaning);
}
