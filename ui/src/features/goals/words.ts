// The words of goals on screen, complete by type: a new kind does not compile until it has words.
import type { Choice, Condition, Counts, Kind, Source, State } from '../../ipc';

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

/** "fed · 8 of 10". */
export function askedWords(goal: { condition: Condition; criterion: { need: number; of: number } }): string {
  return `${conditionWords[goal.condition]} · ${goal.criterion.need} of ${goal.criterion.of}`;
}
