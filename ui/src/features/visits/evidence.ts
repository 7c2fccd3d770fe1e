// What a decision rests on: the count a goal came with, and what was counted at the visit.
import type { Block, Kind, Shown, Source } from '../../ipc';
import { monthAndYear } from '../../kit/dates';
import { countWords, kindWords } from '../goals/words';

/** How a count that was not counted on court came to be known. */
const heard: Record<Source, string> = {
  counted_live: '',
  total_entered: '',
  game_chances: ' (in a game)',
  told: ' (told)',
};

/** "end test 8 of 10". */
export function blockWords(block: {
  kind: Kind;
  count: { made: number; tries: number };
  source: Source;
}): string {
  return `${kindWords[block.kind]} ${countWords(block.count)}${heard[block.source]}`;
}

/** The last count before a visit that says something: a test if there is one, what is told left out. */
export function countBefore(
  blocks: readonly Block[],
  visits: readonly string[],
  visit: string,
): Block | null {
  const at = visits.indexOf(visit);
  const earlier = new Set(at < 0 ? visits : visits.slice(0, at));
  const counted = blocks.filter((b) => earlier.has(b.visit) && b.count.tries > 0 && b.source !== 'told');
  return counted.findLast((b) => b.kind !== 'practice') ?? counted.at(-1) ?? null;
}

/** "before: end test 8 of 10, March 2026 · here: retest 6 of 10 (leaning down)"; a block still under way is marked so. */
export function evidenceWords(shown: Shown, visit: string): string {
  const before = countBefore(shown.blocks, shown.visits, visit);
  const here = shown.blocks.filter((b) => b.visit === visit && b.count.tries > 0);
  const change = (block: Block) => shown.standing.steps.find((s) => s.block === block.id)?.since?.word;
  const more = (block: Block) => (block.ended ? change(block) : 'not ended');
  const counted = here.map((b) => blockWords(b) + (more(b) ? ` (${more(b)})` : ''));
  return [
    before ? `before: ${blockWords(before)}, ${monthAndYear(before.day)}` : '',
    `here: ${counted.join(', ') || 'nothing counted'}`,
  ]
    .filter(Boolean)
    .join(' · ');
}
