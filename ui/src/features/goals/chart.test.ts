// The carry chart's geometry: nothing lost, nothing on top of anything else.
import { expect, test } from 'vitest';
import type { Line, Mark } from '../../ipc';
import { columnsThatFit, draw, type Chart, size, spread, wrapped } from './chart';

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
  criterion: { need: 8, of: 10 },
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
  state: 'working' as const,
  why: '',
});

test('a visit passed without a retest is joined by a dotted thread', () => {
  const drawn = draw(
    chart([line({ cells: [cell('a', mark('end_test', 8)), cell('c', mark('retest', 4))] })]),
    0,
    6,
  );
  expect(drawn.rows[0]?.threads).toMatchObject([{ gap: true }]);
});

test('a rate stands higher the better it is, and inside its row', () => {
  const drawn = draw(chart([line({ cells: [cell('a', mark('retest', 0), mark('end_test', 10))] })]), 0, 6);
  const [bad, good] = drawn.rows[0]?.dots ?? [];
  expect(good?.y).toBeLessThan(bad?.y ?? 0);
  expect(good?.y).toBeGreaterThan(size.head);
  expect(bad?.y).toBeLessThan(size.head + size.row - 20);
});

test('counts under one column stand apart', () => {
  const xs = spread([100, 110, 120], 44);
  for (let i = 1; i < xs.length; i++) expect((xs[i] ?? 0) - (xs[i - 1] ?? 0)).toBeGreaterThanOrEqual(44);
  expect(spread([0, 100], 44)).toEqual([0, 100]);
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
    0,
    6,
  );
  expect(drawn.rows[0]?.state).toBe('kept');
  expect(drawn.rows[0]?.kept).not.toBeNull();
  expect(drawn.joins).toHaveLength(1);
});

test('only the columns asked for are drawn, and goals without any of them are left out', () => {
  const drawn = draw(
    chart([line({ cells: [cell('a', mark('end_test', 8))] }), line({ goal: 'h', cells: [cell('c')] })]),
    1,
    2,
  );
  expect(drawn.columns.map((c) => c.column.visit)).toEqual(['b', 'c']);
  expect(drawn.rows.map((r) => r.line.goal)).toEqual(['h']);
});

test('words are broken, long ones too, and what does not fit ends in an ellipsis', () => {
  expect(wrapped('one two three', 7, 2)).toEqual(['one two', 'three']);
  expect(wrapped('x'.repeat(30), 10, 2)).toEqual(['xxxxxxxxxx', 'xxxxxxxxx…']);
  expect(wrapped('', 10, 2)).toEqual([]);
});

test('as many columns as fit, and at least one', () => {
  expect(columnsThatFit(1184)).toBe(6);
  expect(columnsThatFit(100)).toBe(1);
});
