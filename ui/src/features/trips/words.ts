// What a trip earns, in words: its rows, what is expected, what it takes to reach zero, and what a form sends.
import type { Input, Output } from '../../ipc';
import { counted } from '../../kit/counted';
import { lengthWords } from '../../kit/times';
import type { CostKind } from '../costs/words';

export type Result = Output<'trips.result'>;
export type Money = Result['money'][number];
export type Row = Result['rows'][number];
export type Compared = Output<'trips.others'>[number];
export type Outlook = Output<'trips.outlook'>;
export type OutlookMoney = Outlook['money'][number];
export type Line = NonNullable<Input<'trips.outlook'>['lines']>[number];
type Expected = NonNullable<Input<'trips.outlook'>['costs']>[number];

const forWords: Record<Row['what'], string> = {
  lesson: 'lesson',
  late: 'called off late or missed',
  court: 'court, charged to students',
  travel: 'travel, charged to students',
  cost: 'cost',
};

const fromWords: Record<Row['from'], string> = {
  entered: '',
  draft: 'on a draft',
  to_settle: 'to settle',
  planned: 'planned',
  expected: 'expected',
};

/** What a row is for and how sure it is: "court, charged to students · on a draft". */
export const rowWords = (row: Row): string =>
  [forWords[row.what], fromWords[row.from]].filter(Boolean).join(' · ');

/** Where a row stands, as an address; left out where it stands nowhere by itself. */
export function rowHref(row: Row): string | undefined {
  if (row.invoice) return `#/money/invoices/${row.invoice}`;
  if (row.package) return `#/money/packages/${row.package}`;
  return undefined;
}

/** An amount with its currency; "–" where there is none. */
export const amountWords = (amount: string | null, currency: string): string =>
  amount === null ? '–' : `${amount} ${currency}`;

/** Whether an amount is other than nothing. */
export const something = (amount: string): boolean => /[1-9]/.test(amount);

/** "6 lessons given, 6 h on court. 72 h away." */
export function hoursWords(of: Pick<Result, 'lessons' | 'court_minutes' | 'away'>, given = true): string {
  const lessons = `${counted(of.lessons, 'lesson')}${given ? ' given' : ''}`;
  const court = of.lessons > 0 ? `, ${lengthWords(of.court_minutes)} on court` : '';
  return `${lessons}${court}. ${lengthWords(of.away.minutes)} away: ${of.away.words.charAt(0).toLowerCase()}${of.away.words.slice(1)}`;
}

/** How many more lessons reach zero: "5 more lessons, as those to come are on average (28.00 EUR each)". */
export const evenWords = (one: OutlookMoney['break_even'][number], currency: string): string =>
  `${one.lessons} more: ${one.like}, ${one.each} ${currency} each`;

/** A time as the core takes it; anything else is not sent. */
export const timeTyped = (typed: string): string => (/^\d\d:\d\d$/.test(typed) ? typed : '');

/** Kinds of cost that come with a trip, the first the most usual. */
export const tripKinds = ['drive', 'fare', 'lodging', 'day_rate', 'meals', 'other'] as const;

/** An expected cost as its form holds it. */
export interface ExpectedValues {
  key: number;
  kind: CostKind;
  words: string;
  amount: string;
  currency: string;
  nights: string;
  distance: string;
  unit: 'km' | 'mile';
}

let made = 0;
export const expectedForm = (currency: string): ExpectedValues => ({
  key: ++made,
  kind: 'drive',
  words: '',
  amount: '',
  currency,
  nights: '',
  distance: '',
  unit: 'km',
});

/** What is sent of an expected cost: only the fields that its kind asks for. */
export function expectedTyped(form: ExpectedValues): Expected {
  const { kind, words } = form;
  if (kind === 'drive') return { kind, words, distance: form.distance, unit: form.unit };
  if (kind === 'day_rate') return { kind, words };
  const paid = { kind, words, amount: form.amount, currency: form.currency };
  return kind === 'lodging' ? { ...paid, nights: form.nights } : paid;
}
