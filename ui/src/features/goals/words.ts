// The words of goals on screen, complete by type: a new kind does not compile until it has words.
import type {
  Block,
  Choice,
  Condition,
  Counts,
  Criterion,
  CriterionKind,
  Kind,
  Since,
  Source,
  State,
} from '../../ipc';
import { counted } from '../../kit/counted';
import { dayAndMonth } from '../../kit/dates';

/** How the ball comes. */
export const conditionWords: Record<Condition, string> = {
  fed: 'fed',
  live: 'live',
  set_game: 'set game',
  match: 'match',
};

/** What counts as a yes. */
export const countsWords: Record<Counts, string> = {
  cue: 'the cue was kept',
  result: 'the result',
  choice: 'the choice of shot',
};

/** What a block is for. */
export const kindWords: Record<Kind, string> = {
  retest: 'retest',
  practice: 'practice',
  end_test: 'end test',
  look_back: 'look back',
};

/** How a count came to be known. */
export const sourceWords: Record<Source, string> = {
  counted_live: 'counted live',
  total_entered: 'total entered',
  game_chances: 'chances in a game',
  told: 'told by the student',
};

/** Where a goal stands. */
export const stateWords: Record<State, string> = {
  working: 'working',
  met: 'met',
  kept: 'kept',
  slipped: 'slipped',
  raised: 'raised',
  closed: 'closed',
  set_aside: 'set aside',
};

/** What was decided. */
export const choiceWords: Record<Choice, string> = {
  carry_on: 'carry on',
  raise: 'raise',
  close: 'close',
  set_aside: 'set aside',
  take_up: 'take up again',
};

/** "8 of 10". */
export function countWords(count: { made: number; tries: number }): string {
  return `${count.made} of ${count.tries}`;
}

/** The kinds of criterion. */
export const criterionKindWords: Record<CriterionKind, string> = {
  of: 'so many of so many',
  rate: 'a rate',
  at_most: 'at most so many a game',
};

/** "8 of 10", "70 % of at least 15 chances", "at most 3 a game, 3 games running". */
export function criterionWords({ kind, need, of, least }: Criterion): string {
  if (kind === 'rate') return `${need} % of at least ${counted(least ?? 1, 'chance')}`;
  if (kind === 'at_most') return `at most ${need} a game${of === 1 ? '' : `, ${of} games running`}`;
  return `${need} of ${of}`;
}

/** "fed · 8 of 10". */
export function askedWords(goal: { condition: Condition; criterion: Criterion }): string {
  return `${conditionWords[goal.condition]} · ${criterionWords(goal.criterion)}`;
}

/** What the second fact is called beside the first. */
export const apartWords: Record<Counts, string> = {
  cue: 'cue kept',
  result: 'made',
  choice: 'right choice',
};

/** "8 of 10", "8 of 10, right choice 9", "3 in the game". */
export function blockWords(
  block: Pick<Block, 'count' | 'also' | 'in_game'>,
  apart: Counts | null | undefined,
): string {
  if (block.in_game !== null && block.in_game !== undefined) return `${block.in_game} in the game`;
  const second = apart && block.also !== null && block.also !== undefined;
  return `${countWords(block.count)}${second ? `, ${apartWords[apart]} ${block.also}` : ''}`;
}

/** "67 %"; what is not quite none or all is not told as none or all. */
export function percent(rate: number): string {
  if (rate > 0 && rate < 0.01) return 'under 1 %';
  if (rate < 1 && rate > 0.99) return 'over 99 %';
  return `${Math.round(rate * 100)} %`;
}

/** "roughly 49 to 94 %". */
export function rangeWords(mark: { low: number; high: number }): string {
  return `roughly ${Math.round(mark.low * 100)} to ${Math.round(mark.high * 100)} %`;
}

/** A change in one sentence: "Change since 4 of 10 on 3 March 2026: 40 points, roughly −2 to 68; leaning up." */
export function changeWords(since: Since): string {
  const points = (share: number) => `${share < 0 ? '−' : ''}${Math.abs(Math.round(share * 100))}`;
  return `Change since ${countWords(since.before)} on ${dayAndMonth(since.day)}: ${points(since.change)} points, roughly ${points(since.low)} to ${points(since.high)}; ${since.word}.`;
}
