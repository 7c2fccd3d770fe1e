// What the goal form is open for, and what it begins with.
import type { Condition, Counts, CriterionKind, Observation, Shown } from '../../ipc';

/** Setting a goal, raising one, or making one of what was seen. */
export type Purpose =
  { what: 'set' } | { what: 'raise'; from: Shown } | { what: 'seen'; observation: Observation };

/** The title of the form. */
export const purposeTitles: Record<Purpose['what'], string> = {
  set: 'Set a goal',
  raise: 'Raise a goal',
  seen: 'Make it a goal',
};

/** What stands in the form when it opens. */
export interface Typed {
  skill: string;
  title: string;
  condition: Condition;
  counts: Counts;
  apart: boolean;
  cue: string;
  aim: string;
  criterion: CriterionKind;
  need: string;
  of: string;
  least: string;
  uncounted: string;
}

/** The condition that is the next harder one; the hardest stays. */
export const harder: Record<Condition, Condition> = {
  fed: 'live',
  live: 'set_game',
  set_game: 'match',
  match: 'match',
};

const plain: Typed = {
  skill: '',
  title: '',
  condition: 'fed',
  counts: 'result',
  apart: false,
  cue: '',
  aim: '',
  criterion: 'of',
  need: '16',
  of: '20',
  least: '',
  uncounted: '3',
};

/** A raise begins with the goal as it is, one condition harder; what was seen gives title and skill. */
export function begin(purpose: Purpose): Typed {
  if (purpose.what === 'seen') {
    const { skill, words } = purpose.observation;
    return { ...plain, skill, title: words };
  }
  if (purpose.what === 'set') return { ...plain };
  const { goal } = purpose.from;
  const words = goal.words.at(-1);
  return {
    skill: goal.skill,
    title: goal.title,
    condition: harder[goal.condition],
    counts: goal.counts,
    apart: Boolean(goal.apart),
    cue: words?.cue ?? '',
    aim: words?.aim ?? '',
    criterion: goal.criterion.kind,
    need: String(goal.criterion.need),
    of: goal.criterion.kind === 'rate' ? '' : String(goal.criterion.of),
    least: goal.criterion.least ? String(goal.criterion.least) : '',
    uncounted: String(goal.uncounted),
  };
}
