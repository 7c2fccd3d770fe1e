// The year: its figures in words, and the address of what each of them counts.
import type { CountedWhat, Figures } from '../../ipc';
import { monthAndYear } from '../../kit/dates';

/** A figure as it stands in a cell. */
export interface Figure {
  what: CountedWhat;
  words: string;
}

const VISITS = [
  ['held', 'held'],
  ['agreed', 'agreed'],
  ['expected', 'expected'],
] as const;
const LESSONS = [
  ['given', 'given'],
  ['to_come', 'to come'],
  ['missed', 'missed'],
] as const;

const said = (figures: Figures, kinds: readonly (readonly [CountedWhat, string])[]): Figure[] =>
  kinds
    .filter(([what]) => figures[what] > 0)
    .map(([what, words]) => ({ what, words: `${figures[what]} ${words}` }));

/** "2 held", "1 agreed", "1 expected". */
export const visitFigures = (figures: Figures): Figure[] => said(figures, VISITS);

/** "4 given", "3 to come", "1 missed". */
export const lessonFigures = (figures: Figures): Figure[] => said(figures, LESSONS);

/** The rows that someone has: visits, lessons, or both. */
export function kindsOf(total: Figures): { words: string; figures: typeof visitFigures }[] {
  const kinds = [
    { words: 'visits', figures: visitFigures },
    { words: 'lessons', figures: lessonFigures },
  ];
  return kinds.filter((kind) => kind.figures(total).length > 0);
}

/** What is counted, as a title: "Lessons to come". */
export const countedTitles: Record<CountedWhat, string> = {
  held: 'Visits held',
  agreed: 'Visits agreed',
  expected: 'Visits expected',
  given: 'Lessons given',
  to_come: 'Lessons to come',
  missed: 'Lessons missed',
};

/** What is counted, by its name in an address; null when it is none. */
export function countedWhat(text: string): CountedWhat | null {
  return Object.hasOwn(countedTitles, text) ? (text as CountedWhat) : null;
}

/** The year or month in an address: "2026", 1 to 12; null for "all" and for what is none. */
export function wholeIn(text: string): number | null {
  return /^\d{1,4}$/.test(text) ? Number(text) : null;
}

/** Where a figure leads: to what it counts. Left out, month and student stand for all. */
export function countedHref(year: number, what: CountedWhat, month?: number, student?: string): string {
  return `#/year/${year}/${month ?? 'all'}/${student ?? 'all'}/${what}`;
}

/** The twelve months' heads: "Jan". */
export const MONTH_HEADS: readonly string[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((month) =>
  monthWords(2000, month).slice(0, 3),
);

/** "March 2026". */
export function monthWords(year: number, month: number): string {
  return monthAndYear(`${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-01`);
}
