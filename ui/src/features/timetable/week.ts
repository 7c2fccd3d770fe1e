// The week: how its cells are stepped through with the arrow keys, and where one goes from them.
import type { PersonDay } from '../../ipc';
import { addDays, weekday } from '../../kit/dates';

/** The keys that step through the cells. */
const STEPS: Record<string, readonly [number, number]> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/**
 * The next cell in the direction of a key that has something to go to; null for another key, or when there is none.
 * `filled` says of each row and column whether it has.
 */
export function stepTo(
  filled: readonly (readonly boolean[])[],
  at: readonly [number, number],
  key: string,
): [number, number] | null {
  const step = STEPS[key];
  if (!step) return null;
  let [row, column] = [at[0] + step[0], at[1] + step[1]];
  while (filled[row]?.[column] !== undefined) {
    if (filled[row]?.[column]) return [row, column];
    row += step[0];
    column += step[1];
  }
  return null;
}

/** The Monday of the week that holds a day. */
export function mondayOf(day: string): string {
  const days = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];
  return addDays(day, -days.indexOf(weekday(day)));
}

/** The address of the week that holds a day. */
export const weekHref = (day: string): string => `#/week/${mondayOf(day)}`;

/** Where someone who is in town without a lesson leads: to the plan of the days, once they have passed to the visit. */
export function inTownHref(cell: Pick<PersonDay, 'visit' | 'days' | 'day'>, today: string): string {
  const { visit, days } = cell;
  if (!days || cell.day < today) return `#/visits/${visit ?? ''}`;
  return `#/plan/${days.first}/${days.last}`;
}
