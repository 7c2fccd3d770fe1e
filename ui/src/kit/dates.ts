// Words for civil dates. A date is a string, YYYY-MM-DD, in and out: no instant and no time zone is involved.
import { CalendarDate, parseDate } from '@internationalized/date';
import { counted } from './counted';

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Days from one fixed day to this one; differences of it are whole days. */
function ordinal(date: CalendarDate): number {
  return date.calendar.toJulianDay(date);
}

/** The date, or null when the text is not a real day written YYYY-MM-DD. */
export function readDate(text: string): CalendarDate | null {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return null;
  try {
    const date = parseDate(text);
    // 2026-02-31 must not quietly become the last of February.
    return date.toString() === text ? date : null;
  } catch {
    return null;
  }
}

/** The order in which the parts of a date are typed when all are numbers. */
export type Order = 'day first' | 'month first';

/** A real day from its parts, or null. */
function fromParts(year: number, monthNumber: number, day: number): string | null {
  const text = [
    String(year).padStart(4, '0'),
    ...[monthNumber, day].map((n) => String(n).padStart(2, '0')),
  ].join('-');
  return readDate(text) ? text : null;
}

/** The number of a month from its English name or at least its first three letters; 0 when it is none. */
function monthNumber(word: string): number {
  const lower = word.toLowerCase();
  return lower.length < 3 ? 0 : MONTHS.findIndex((m) => m.toLowerCase().startsWith(lower)) + 1;
}

/**
 * Reads a date as people type it: 12.3.2026, 12/3/2026, 12 3 2026, 12032026, 12 March 2026, mar 12, 2026, 2026-03-12.
 * The year may be left out only where `from` is given: then it is the first such day from that one on.
 * Null when it is no real day; a year of two digits is not guessed at.
 */
export function readTypedDate(typed: string, order: Order = 'day first', from?: string): string | null {
  const text = typed.trim();
  const yearFirst = /^(\d{4})[-./ ](\d{1,2})[-./ ](\d{1,2})$/.exec(text);
  if (yearFirst) return fromParts(Number(yearFirst[1]), Number(yearFirst[2]), Number(yearFirst[3]));

  let day: number;
  let month: number;
  let year: string | undefined;
  const numbers =
    /^(\d{1,2})[-./ ]+(\d{1,2})(?:[-./ ]+(\d{4}))?\.?$/.exec(text) ?? /^(\d{2})(\d{2})(\d{4})$/.exec(text);
  const dayWord = /^(\d{1,2})(?:st|nd|rd|th)?\.? *([A-Za-z]+)\.?(?:,? *(\d{4}))?$/.exec(text);
  const wordDay = /^([A-Za-z]+)\.? *(\d{1,2})(?:st|nd|rd|th)?(?:,? +(\d{4}))?$/.exec(text);
  if (numbers) {
    const [a, b] = [Number(numbers[1]), Number(numbers[2])];
    [day, month] = order === 'day first' ? [a, b] : [b, a];
    year = numbers[3];
  } else if (dayWord) {
    [day, month, year] = [Number(dayWord[1]), monthNumber(dayWord[2] ?? ''), dayWord[3]];
  } else if (wordDay) {
    [day, month, year] = [Number(wordDay[2]), monthNumber(wordDay[1] ?? ''), wordDay[3]];
  } else return null;

  if (year !== undefined) return fromParts(Number(year), month, day);
  if (from === undefined) return null;
  // Eight years reach from any leap day to the next, also over a century without one.
  const first = known(from).year;
  for (let y = first; y <= first + 8; y++) {
    const date = fromParts(y, month, day);
    if (date !== null && date >= from) return date;
  }
  return null;
}

/** As readDate, for dates that come from the core: anything else is a fault. */
function known(text: string): CalendarDate {
  const date = readDate(text);
  if (!date) throw new RangeError(`not a date: ${text}`);
  return date;
}

function month(date: CalendarDate): string {
  return MONTHS[date.month - 1] ?? '';
}

/** The day of the week in words: "Thursday". */
export function weekday(text: string): string {
  // Julian day 0 was a Monday; Sunday is our first.
  return DAYS[(ordinal(known(text)) + 1) % 7] ?? '';
}

/** "12 March", with its year when that is not the year of `today`. Without `today` the year always stands. */
export function dayAndMonth(text: string, today?: string): string {
  const date = known(text);
  const words = `${date.day} ${month(date)}`;
  return today !== undefined && known(today).year === date.year ? words : `${words} ${date.year}`;
}

/** "Thursday 12 March", with its year when that is not the year of `today`. */
export function longDay(text: string, today?: string): string {
  return `${weekday(text)} ${dayAndMonth(text, today)}`;
}

/** "Thu 12 Mar", for narrow columns. */
export function shortDay(text: string): string {
  const date = known(text);
  return `${weekday(text).slice(0, 3)} ${date.day} ${month(date).slice(0, 3)}`;
}

/** A month with its year, short, as a column head of a chart: "Nov 25". */
export function monthMark(text: string): string {
  const date = known(text);
  return `${month(date).slice(0, 3)} ${String(date.year % 100).padStart(2, '0')}`;
}

/** A month with its year: "November 2025". */
export function monthAndYear(text: string): string {
  const date = known(text);
  return `${month(date)} ${date.year}`;
}

/** A run of days: "11 – 14 March", "28 February – 3 March", "30 December 2026 – 2 January 2027". */
export function span(from: string, to: string, today?: string): string {
  const a = known(from);
  const b = known(to);
  if (ordinal(b) < ordinal(a)) throw new RangeError(`a run of days ends before it starts: ${from}, ${to}`);
  if (from === to) return dayAndMonth(from, today);
  if (a.year !== b.year) return `${dayAndMonth(from)} – ${dayAndMonth(to)}`;
  if (a.month !== b.month) return `${a.day} ${month(a)} – ${dayAndMonth(to, today)}`;
  return `${a.day} – ${dayAndMonth(to, today)}`;
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: string, to: string): number {
  return ordinal(known(to)) - ordinal(known(from));
}

/** The date so many days later (or earlier). */
export function addDays(text: string, days: number): string {
  return known(text).add({ days }).toString();
}

/** The date so many months later; where that month is shorter, its last day. */
export function addMonths(text: string, months: number): string {
  return known(text).add({ months }).toString();
}

/** Complete months between two dates, the earlier first. */
function wholeMonths(a: CalendarDate, b: CalendarDate): number {
  const months = (b.year - a.year) * 12 + b.month - a.month;
  return b.day < a.day ? months - 1 : months;
}

/** How far away a day is: "today", "tomorrow", "in 3 days", "9 weeks ago". Never more exact than is useful. */
export function away(text: string, today: string): string {
  const days = daysBetween(today, text);
  if (days === 0) return 'today';
  if (days === 1) return 'tomorrow';
  if (days === -1) return 'yesterday';
  const size = Math.abs(days);
  const [a, b] = days > 0 ? [known(today), known(text)] : [known(text), known(today)];
  let words: string;
  if (size < 14) words = counted(size, 'day');
  else if (size < 70) words = counted(Math.floor(size / 7), 'week');
  else if (wholeMonths(a, b) < 24) words = counted(wholeMonths(a, b), 'month');
  else words = counted(Math.floor(wholeMonths(a, b) / 12), 'year');
  return days > 0 ? `in ${words}` : `${words} ago`;
}

/** "3 days late", or null when it is not late. */
export function late(due: string, today: string): string | null {
  const days = daysBetween(due, today);
  return days > 0 ? `${counted(days, 'day')} late` : null;
}

/** How many days a run has, both ends counted. */
export function daysIn(from: string, to: string): number {
  return daysBetween(from, to) + 1;
}

/** How old someone born on `born` is on `day`, in whole years. On a birthday the new year counts. */
export function age(born: string, day: string): number {
  return Math.floor(wholeMonths(known(born), known(day)) / 12);
}
