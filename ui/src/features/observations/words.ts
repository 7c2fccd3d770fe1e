// The words of observations on screen.
import type { Observation, ObservationKind } from '../../ipc';
import { dayAndMonth } from '../../kit/dates';

/** Strength or fault. */
export const kindWords: Record<ObservationKind, string> = { strength: 'strength', fault: 'fault' };

/** "third time, two visits · last on 3 March 2026, game 2". */
export function seenWords(seen: Pick<Observation, 'often' | 'seen'>): string {
  const last = seen.seen.at(-1);
  if (!last) return seen.often;
  const place = last.place ? `, ${last.place}` : '';
  return `${seen.often} · last on ${dayAndMonth(last.day)}${place}`;
}
