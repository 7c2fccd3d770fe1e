// What a season is looked at by; kept for as long as one can go back to it.

/** What can have become of a goal. */
export type Became = 'met' | 'kept' | 'slipped' | 'raised';

/** So many rows stand at first, so many more come with each asking, and no more than so many are given. */
export const FEW = 12;
const MORE = 100;
export const ALL = 1000;

/** How many rows to show after so many. */
export const more = (shown: number) => Math.min(shown === FEW ? MORE : shown + MORE, ALL);

/** The days, what alone is shown of what moved, and how much of each list. */
export class Review {
  from = $state('');
  to = $state('');
  only = $state<Became | ''>('');
  mostMoves = $state(FEW);
  mostWaits = $state(FEW);
}
