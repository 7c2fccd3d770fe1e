// What a decision rests on, in words.
import { expect, test } from 'vitest';
import type { Block, Kind, Shown, Source } from '../../ipc';
import { countBefore, evidenceWords } from './evidence';

const block = (visit: string, kind: Kind, made: number, tries: number, source: Source = 'counted_live') =>
  ({
    id: `${visit}-${kind}-${made}`,
    visit,
    kind,
    source,
    day: visit === 'march' ? '2026-03-12' : visit === 'may' ? '2026-05-20' : '2026-11-25',
    count: { made, tries },
    also: null,
    in_game: null,
    ended: true,
  }) as unknown as Block;

const VISITS = ['march', 'may', 'now'];

test('a test of an earlier visit comes before its later practice', () => {
  const blocks = [block('march', 'end_test', 8, 10), block('march', 'practice', 3, 10)];
  expect(countBefore(blocks, VISITS, 'now')?.count.made).toBe(8);
});

test('the latest test counts, told and empty ones do not', () => {
  const blocks = [
    block('march', 'end_test', 8, 10),
    block('may', 'retest', 6, 10),
    block('may', 'practice', 9, 10, 'told'),
    block('may', 'end_test', 0, 0),
    block('now', 'retest', 7, 10),
  ];
  expect(countBefore(blocks, VISITS, 'now')?.count.made).toBe(6);
  expect(countBefore(blocks, VISITS, 'march')).toBeNull();
});

test('the words set the counts before and here side by side, with the change where it was measured', () => {
  const here = block('now', 'retest', 4, 10);
  const shown = {
    goal: { apart: null },
    blocks: [block('march', 'end_test', 8, 10), here, block('now', 'practice', 6, 10)],
    visits: VISITS,
    standing: { steps: [{ block: here.id, since: { word: 'leaning down' } }] },
  } as unknown as Shown;
  expect(evidenceWords(shown, 'now')).toBe(
    'before: end test 8 of 10, March 2026 · here: retest 4 of 10 (leaning down), practice 6 of 10',
  );
});

test('a block still under way is marked, for it moves nothing yet', () => {
  const shown = {
    goal: { apart: null },
    blocks: [{ ...block('now', 'retest', 4, 6), ended: false }],
    visits: ['now'],
    standing: { steps: [] },
  } as unknown as Shown;
  expect(evidenceWords(shown, 'now')).toBe('here: retest 4 of 6 (not ended)');
});

test('a goal without counts says so', () => {
  const shown = {
    goal: { apart: null },
    blocks: [],
    visits: ['now'],
    standing: { steps: [] },
  } as unknown as Shown;
  expect(evidenceWords(shown, 'now')).toBe('here: nothing counted');
});
