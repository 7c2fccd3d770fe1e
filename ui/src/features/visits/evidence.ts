// What a decision rests on: the count a goal came with, and what was counted at the visit.
import type { Block, Counts, Shown, Source } from '../../ipc';
import { monthAndYear } from '../../kit/dates';
import { blockWords as counted, kindWords } from '../goals/words';

/** How a count that was not counted on court came to be known. */
const heard: Record<Source, string> = {
  counted_live: '',
  total_entered: '',
  game_chances: ' (in a game)',
  told: ' (told)',
};

/** "end test 8 of 10". */
export function blockWords(
  block: Pick<Block, 'kind' | 'count' | 'source' | 'also' | 'in_game'>,
  apart: Counts | null = null,
): string {
  // A whole game is no test of its own; the word for it is in its count.
  if (block.in_game !== null) return `${counted(block, null)}${block.source === 'told' ? heard.told : ''}`;
  return `${kindWords[block.kind]} ${counted(block, apart)}${heard[block.source]}`;
}

const wasTried = (b: Block) => b.count.tries > 0 || b.in_game !== null;

/** The last count before a visit that says something: a test if there is one, what is told left out. */
export function countBefore(
  blocks: readonly Block[],
  visits: readonly string[],
  visit: string,
): Block | null {
  const at = visits.indexOf(visit);
  const earlier = new Set(at < 0 ? visits : visits.slice(0, at));
  const counted = blocks.filter((b) => earlier.has(b.visit) && wasTried(b) && b.source !== 'told');
  return counted.findLast((b) => b.kind !== 'practice') ?? counted.at(-1) ?? null;
}

/** "before: end test 8 of 10, March 2026 · here: retest 6 of 10 (leaning down)"; a block still under way is marked so. */
export function evidenceWords(shown: Shown, visit: string): string {
  const before = countBefore(shown.blocks, shown.visits, visit);
  const here = shown.blocks.filter((b) => b.visit === visit && wasTried(b));
  const change = (block: Block) => shown.standing.steps.find((s) => s.block === block.id)?.since?.word;
  const more = (block: Block) => (block.ended ? change(block) : 'not ended');
  const counted = here.map((b) => blockWords(b, shown.goal.apart) + (more(b) ? ` (${more(b)})` : ''));
  return [
    before ? `before: ${blockWords(before)}, ${monthAndYear(before.day)}` : '',
    `here: ${counted.join(', ') || 'nothing counted'}`,
  ]
    .filter(Boolean)
    .join(' · ');
}
