// The spans a season is looked at over, and what stands in its rows.
import type { OftenSeen, Output } from '../../ipc';
import { readDate } from '../../kit/dates';

/** The whole season. */
export type Season = Output<'reports.season'>;

/** A goal that moved. */
export type Move = Season['moves'][number];

/** A span to choose at once. */
export interface Span {
  words: string;
  from: string;
  to: string;
}

const iso = (year: number, month: number, day: number) =>
  `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

/** The day after the same day so many months before; the last day of a shorter month. */
export function monthsBack(today: string, months: number): string {
  const date = readDate(today);
  if (!date) return today;
  const month = date.year * 12 + date.month - 1 - months;
  const [year, of] = [Math.floor(month / 12), (month % 12) + 1];
  const last = new Date(Date.UTC(year, of, 0)).getUTCDate();
  const at = new Date(Date.UTC(year, of - 1, Math.min(date.day, last) + 1));
  return iso(at.getUTCFullYear(), at.getUTCMonth() + 1, at.getUTCDate());
}

/** The spans that are offered on a day. */
export function spans(today: string): Span[] {
  const year = readDate(today)?.year;
  if (year === undefined) return [];
  return [
    { words: 'Twelve months', from: monthsBack(today, 12), to: today },
    { words: 'Three months', from: monthsBack(today, 3), to: today },
    { words: `${year}`, from: iso(year, 1, 1), to: today },
    { words: `${year - 1}`, from: iso(year - 1, 1, 1), to: iso(year - 1, 12, 31) },
  ];
}

/** Where a row of what was seen leads. */
export const seenHref = (seen: Pick<OftenSeen, 'visit' | 'student'>): string =>
  seen.visit ? `#/visits/${seen.visit}` : `#/people/${seen.student}`;

/** "5 times, at 3 students", "twice, at Ana Silva". */
export function seenWords(seen: Pick<OftenSeen, 'times' | 'students' | 'name'>): string {
  const times = seen.times === 1 ? 'once' : seen.times === 2 ? 'twice' : `${seen.times} times`;
  return seen.students === 1
    ? `${times}, at ${seen.name}`
    : `${times}, at ${seen.students} students, last at ${seen.name}`;
}
