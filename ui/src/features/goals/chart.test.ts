// The carry chart's geometry: nothing lost, nothing on top of anything else.
import { expect, test } from 'vitest';
import type { Line, Mark } from '../../ipc';
import { clipped, columnsThatFit, draw, type Chart, size } from './chart';
import { widthOf } from './fit';

const all = { from: 0, most: 6, width: 1184 };

const mark = (kind: Mark['kind'], made: number, tries = 10): Mark => ({
  block: `${kind}${made}`,
  kind,
  source: 'total_entered',
  count: { made, tries },
  rate: made / tries,
  low: Math.max(0, made / tries - 0.2),
  high: Math.min(1, made / tries + 0.2),
  short: false,
});

const line = (over: Partial<Line>): Line => ({
  goal: 'g',
  title: 'Lob serve',
  condition: 'fed',
  criterion: { kind: 'of', need: 8, of: 10, least: null },
  state: 'working',
  why: 'just set',
  came_from: null,
  kept_at: null,
  waits: false,
  cells: [],
  ...over,
});

const chart = (lines: Line[], visits = ['a', 'b', 'c']): Chart => ({
  columns: visits.map((visit) => ({
    visit,
    head: 'Jan 26',
    note: '',
    first_day: '2026-01-01',
    last_day: '2026-01-02',
    open: false,
  })),
  lines,
});

const cell = (visit: string, ...marks: Mark[]) => ({
  visit,
  marks,
  practice: { made: 0, tries: 0 },
  games: [],
});

test('a visit passed without a retest is joined by a dotted thread', () => {
  const drawn = draw(
    chart([line({ cells: [cell('a', mark('end_test', 8)), cell('c', mark('retest', 4))] })]),
    all,
  );
  expect(drawn.row(0).threads).toMatchObject([{ gap: true }]);
});

test('a rate stands higher the better it is, and inside its row', () => {
  const drawn = draw(chart([line({ cells: [cell('a', mark('retest', 0), mark('end_test', 10))] })]), all);
  const [bad, good] = drawn.row(0).dots ?? [];
  expect(good?.y).toBeLessThan(bad?.y ?? 0);
  expect(good?.y).toBeGreaterThan(size.head);
  expect(bad?.y).toBeLessThan(size.head + size.row - 20);
});

test('no count stands on another, however many marks and however long', () => {
  const cells = ['a', 'b', 'c', 'd', 'e', 'f'].map((visit) =>
    cell(visit, mark('retest', 117, 200), mark('look_back', 118, 200), mark('end_test', 199, 200)),
  );
  const drawn = draw(chart([line({ cells })], ['a', 'b', 'c', 'd', 'e', 'f']), { ...all, width: 1280 });
  const counts = drawn.row(0).counts ?? [];
  expect(counts).toHaveLength(18);
  const ends = counts.map((c) => {
    const half = widthOf(c.words, 14.5) / 2;
    return { from: c.x - half, to: c.x + half, y: c.y };
  });
  const widest = ends.reduce((sum, { from, to }) => sum + to - from, 0);
  expect(widest, 'one line has no room for all').toBeGreaterThan(6 * size.column);
  expect(new Set(ends.map(({ y }) => y)).size).toBe(2);
  ends.forEach((a, i) =>
    ends
      .slice(i + 1)
      .filter((b) => b.y === a.y)
      .forEach((b) => expect(b.from >= a.to || b.to <= a.from, 'two counts on one line meet').toBe(true)),
  );
});

test('counts that fit stand on one line', () => {
  const cells = ['a', 'b', 'c'].map((visit) => cell(visit, mark('retest', 10), mark('end_test', 10)));
  const counts = draw(chart([line({ cells })]), all).row(0).counts ?? [];
  expect(counts).toHaveLength(6);
  expect(new Set(counts.map((c) => c.y)).size).toBe(1);
});

test('the word under a visit keeps to its column', () => {
  const c = chart([line({ cells: [cell('a')] })]);
  const note = 'a very late flight from the far end of the sea';
  c.columns = c.columns.map((column) => ({ ...column, note }));
  const drawn = draw(c, all);
  for (const column of drawn.columns) expect(widthOf(column.note, 14.5)).toBeLessThan(drawn.apart);
  expect(drawn.columns[0]?.note).toMatch(/…$/);
});

test('what was only practised is told, and makes room for the counts beside it', () => {
  const practised = { ...cell('b'), practice: { made: 123, tries: 145 } };
  const drawn = draw(chart([line({ cells: [cell('a', mark('end_test', 8)), practised] })]), all);
  expect(drawn.row(0).counts.map((c) => c.words)).toEqual(['8/10', '(123 of 145)']);
  expect(drawn.row(0).cells[1]?.words).toBe('not tested, practice 123 of 145');
});

test('a line from an earlier visit comes in at the edge, at the height it has there', () => {
  const cells = [cell('a', mark('end_test', 2)), cell('c', mark('retest', 8))];
  const whole = draw(chart([line({ cells })]), all).row(0).threads[0];
  const later = draw(chart([line({ cells })]), { ...all, from: 1 }).row(0);
  expect(later?.dots).toHaveLength(1);
  expect(later?.threads).toMatchObject([{ x1: size.left, gap: true }]);
  expect(later?.threads[0]?.y1).toBeLessThan(whole?.y1 ?? 0);
  expect(later?.threads[0]?.y1).toBeGreaterThan(whole?.y2 ?? Infinity);
  expect(later?.criterion?.x1).toBe(size.left);
});

test('a stroke outside the frame is not drawn', () => {
  expect(clipped({ x1: 0, y1: 0, x2: 10, y2: 10 }, 20, 40)).toBeNull();
  expect(clipped({ x1: 50, y1: 0, x2: 60, y2: 10 }, 20, 40)).toBeNull();
  expect(clipped({ x1: 0, y1: 0, x2: 60, y2: 60 }, 20, 40)).toEqual({ x1: 20, y1: 20, x2: 40, y2: 40 });
});

test('a goal raised before the visits shown has no thread hanging in the air', () => {
  const raised = chart([
    line({ goal: 'old', state: 'raised', cells: [cell('a', mark('end_test', 8)), cell('b')] }),
    line({ goal: 'new', came_from: 'old', cells: [cell('a'), cell('c', mark('retest', 5))] }),
  ]);
  expect(draw(raised, all).joins(2)).toHaveLength(1);
  expect(draw(raised, { ...all, from: 1 }).joins(2)).toEqual([]);
});

test('the drawing fills its width and keeps words beside the last column', () => {
  const drawn = draw(chart([line({ cells: [cell('a')] })]), all);
  expect(drawn.width).toBe(1184);
  expect(drawn.wordsX).toBe(size.left + 3 * drawn.apart + 14);
  const narrow = draw(chart([line({ cells: [cell('a')] })]), { from: 0, most: 1, width: 100 });
  expect(narrow.width).toBe(size.left + size.column + size.right);
});

test('the legend tells only the signs that are drawn', () => {
  const signs = (c: Chart) => draw(c, all).legend.map((m) => m.sign);
  expect(signs(chart([line({ cells: [cell('a')] })]))).toEqual(['criterion']);
  expect(
    signs(chart([line({ state: 'kept', kept_at: 'a', cells: [cell('a', mark('look_back', 8))] })])),
  ).toEqual(['look_back', 'range', 'criterion', 'kept']);
});

test('a kept goal that was raised says kept and is joined to what it became', () => {
  const drawn = draw(
    chart([
      line({
        goal: 'old',
        state: 'raised',
        kept_at: 'b',
        cells: [cell('a', mark('end_test', 8)), cell('b', mark('retest', 8))],
      }),
      line({ goal: 'new', came_from: 'old', cells: [cell('b')] }),
    ]),
    all,
  );
  expect(drawn.row(0).state).toBe('kept');
  expect(drawn.row(0).kept).not.toBeNull();
  expect(drawn.joins).toHaveLength(1);
});

test('only the columns asked for are drawn, and goals without any of them are left out', () => {
  const drawn = draw(
    chart([line({ cells: [cell('a', mark('end_test', 8))] }), line({ goal: 'h', cells: [cell('c')] })]),
    { from: 1, most: 2, width: 1184 },
  );
  expect(drawn.columns.map((c) => c.column.visit)).toEqual(['b', 'c']);
  expect(drawn.lines.map((l) => l.goal)).toEqual(['h']);
  expect(drawn.elsewhere).toBe(1);
});

test('as many columns as fit, and at least one', () => {
  expect(columnsThatFit(1184)).toBe(6);
  expect(columnsThatFit(100)).toBe(1);
});
