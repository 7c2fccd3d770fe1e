// Visits in words.
import type { Visit } from '../../ipc';
import { monthAndYear, span } from '../../kit/dates';

/** "11 – 14 March 2026", or "expected May 2026". */
export function whenWords(visit: Visit): string {
  if (visit.days) return span(visit.days.first, visit.days.last);
  if (!visit.expected) return '';
  const { first, last } = visit.expected;
  return `expected ${monthAndYear(first) === monthAndYear(last) ? monthAndYear(first) : span(first, last)}`;
}

/** Where a visit is in its life. */
export const stageWords: Record<Visit['stage'], string> = {
  expected: 'expected',
  planned: 'planned',
  open: 'here now',
  closed: 'over',
  called_off: 'called off',
};

/** The first and the last day of a month given as YYYY-MM. */
export function daysOfMonth(month: string): { from: string; to: string } | null {
  const read = /^(\d{4})-(\d{2})$/.exec(month);
  if (!read) return null;
  const [year, m] = [Number(read[1]), Number(read[2])];
  if (m < 1 || m > 12) return null;
  const last = new Date(Date.UTC(year, m, 0)).getUTCDate();
  return { from: `${month}-01`, to: `${month}-${String(last).padStart(2, '0')}` };
}

/** The months from this day's on: value YYYY-MM. */
export function monthsFrom(day: string, many: number): string[] {
  const [year, month] = [Number(day.slice(0, 4)), Number(day.slice(5, 7))];
  return Array.from({ length: many }, (_, i) => {
    const at = year * 12 + month - 1 + i;
    return `${Math.floor(at / 12)}-${String((at % 12) + 1).padStart(2, '0')}`;
  });
}

/** The day on which a new lesson is planned unless said otherwise: today within the visit, else its first. */
export function dayToPlan(visit: Pick<Visit, 'days'>, today: string): string {
  if (!visit.days) return '';
  const { first, last } = visit.days;
  return first <= today && today <= last ? today : first;
}
