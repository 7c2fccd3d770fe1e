// Money in words: kinds of lines, states of invoices, ways to pay, what stands on an account.
import type { Input, Output } from '../../ipc';
import { daysBetween } from '../../kit/dates';

export type Invoice = Output<'invoices.show'>;
export type Line = Invoice['lines'][number];
export type Listed = Output<'invoices.list'>['invoices'][number];
export type What = Line['what'];
export type Price = Output<'prices.list'>[number];
export type PricedAs = Price['what'];
export type Tax = Output<'prices.taxes'>[number];
export type Category = Tax['category'];
export type Package = Output<'packages.list'>[number];
export type ToSettle = Output<'accounts.to_settle'>[number];
export type Settle = Input<'accounts.settle'>['lessons'][number];
export type Method = Input<'payments.receive'>['method'];
export type AccountLine = Output<'payments.account'>['lines'][number];

export const whatWords: Record<What, string> = {
  lesson: 'Lesson',
  late: 'Called off late or missed',
  court: 'Court',
  package: 'Package',
  analysis: 'Game analysis',
  travel: 'Travel',
  other: 'Other',
};

export const pricedWords: Record<PricedAs, string> = {
  lesson: 'A lesson',
  package: 'A package',
  analysis: 'A game analysis',
  travel: 'Travel',
  other: 'Anything else',
};

export const methodWords: Record<Method, string> = {
  transfer: 'by transfer',
  cash: 'in cash',
  card: 'by card, on another device',
  cheque: 'by cheque',
};

/** Categories of tax as EN 16931 takes them from UNTDID 5305, those a coach meets first. */
export const categoryWords: Record<Category, string> = {
  S: 'Taxed, at a rate above 0',
  Z: 'Zero rate',
  E: 'Exempt',
  O: 'Outside the scope of tax',
  AE: 'Reverse charge',
  K: 'Within the European Community',
  G: 'Export',
  L: 'Canary Islands',
  M: 'Ceuta and Melilla',
};

/** Whether a category wants the reason why no tax is charged. */
export const asksWhy = (category: Category | '') => ['E', 'AE', 'K', 'G', 'O'].includes(category);

export const options = <K extends string>(words: Record<K, string>) =>
  (Object.keys(words) as K[]).map((value) => ({ value, words: words[value] }));

/** "19 %", or why there is none. */
export function taxWords(line: { category: Category | null; rate: string; why?: string }): string {
  if (!line.category) return 'tax not set';
  if (line.category === 'S' || line.category === 'L' || line.category === 'M') return `${line.rate} %`;
  return line.why || categoryWords[line.category].toLowerCase();
}

/** A flag of tax in the year's rows, in words: "S 19" is "19 %". */
export function flagWords(flag: string): string {
  const [category = '', rate = ''] = flag.split(' ');
  if (!(category in categoryWords)) return flag;
  return taxWords({ category: category as Category, rate }).toLowerCase();
}

/** "R-2026-0003", or that it is a draft. */
export const numberWords = (of: { number: string; kind: Listed['kind'] }) =>
  of.number || (of.kind === 'credit_note' ? 'Credit note, draft' : 'Draft');

/** What an account stands at in one currency: only what is not nothing. */
export function standingWords(of: {
  currency: string;
  open: string;
  kept: string;
  to_pay_back: string;
  deferred?: string;
}): string {
  const parts = [
    [of.open, 'open'],
    [of.kept, 'paid and kept for later'],
    [of.to_pay_back, 'to pay back'],
    [of.deferred ?? '', 'owed in lessons, without tax'],
  ] as const;
  const said = parts
    .filter(([amount]) => /[1-9]/.test(amount))
    .map(([amount, words]) => `${amount} ${of.currency} ${words}`);
  return said.join(' · ') || `Nothing is open in ${of.currency}.`;
}

/** That a reminder is due, by how many days late the terms propose one; empty while it is not. */
export function remindWords(due: string | null, today: string, after: readonly number[]): string {
  if (!due) return '';
  const late = daysBetween(due, today);
  const passed = after.filter((days) => days <= late).length;
  if (passed === 0) return '';
  return after.length > 1 ? `Reminder ${passed} of ${after.length} is due.` : 'A reminder is due.';
}

/** What of a sum the terms ask for beforehand, in the decimals that the sum has; empty for nothing. */
export function depositOf(sum: string, percent: number | null): string {
  if (!percent) return '';
  const decimals = sum.split('.')[1]?.length ?? 0;
  const part = Math.round((Math.round(Number(sum) * 10 ** decimals) * percent) / 100);
  return part > 0 ? (part / 10 ** decimals).toFixed(decimals) : '';
}

/** How a lesson would be settled, in words. */
export function proposalWords(of: ToSettle): string {
  const p = of.proposal;
  const court = p.court ? `, court ${p.court} ${p.court_currency}` : '';
  switch (p.how) {
    case 'package':
      return `${p.package_words}${court}`;
    case 'invoice':
      return `Invoice ${p.amount} ${p.currency}${court}`;
    case 'free':
      return `Nothing is charged${court}`;
    default:
      return p.asks.join(' ');
  }
}

/** A lesson to be settled as it is proposed. */
export const asProposed = (of: ToSettle): Settle | null =>
  of.proposal.how ? { lesson: of.lesson, student: of.student, how: of.proposal.how } : null;

/** A line as its form holds it. */
export interface LineValues {
  id: string | null;
  what: What;
  words: string;
  day: string;
  facility: string | null;
  quantity: string;
  price: string;
  allowance: string;
  reason: string;
  category: Category | '';
  rate: string;
  why: string;
}

export function lineForm(line?: Line): LineValues {
  return {
    id: line?.id ?? null,
    what: line?.what ?? 'lesson',
    words: line?.words ?? '',
    day: line?.day ?? '',
    facility: line?.facility ?? null,
    quantity: line?.quantity ?? '1',
    price: line?.price ?? '',
    allowance: line && /[1-9]/.test(line.allowance) ? line.allowance : '',
    reason: line?.reason ?? '',
    category: line?.category ?? '',
    rate: line?.rate ?? '',
    why: line?.why ?? '',
  };
}

/** A line as it is sent: without a category it is asked of what the coach set. */
export function lineTyped(form: LineValues): Input<'invoices.change'>['lines'][number] {
  const { category, rate, why, ...line } = form;
  return category ? { ...line, tax: { category, rate, why: asksWhy(category) ? why : '' } } : line;
}

/** What is taken off the whole or put on it, as its form holds it. */
export interface ExtraValues {
  takes_off: 'off' | 'on';
  words: string;
  amount: string;
  category: Category | '';
  rate: string;
  why: string;
}

export function extraForm(extra?: Invoice['extras'][number]): ExtraValues {
  return {
    takes_off: extra?.takes_off === false ? 'on' : 'off',
    words: extra?.words ?? '',
    amount: extra?.amount ?? '',
    category: extra?.category ?? '',
    rate: extra?.rate ?? '',
    why: extra?.why ?? '',
  };
}

/** An extra as it is sent: without a category it has the tax of the lines. */
export function extraTyped(form: ExtraValues) {
  const { takes_off, words, amount, category, rate, why } = form;
  const extra = { takes_off: takes_off === 'off', words, amount };
  return category ? { ...extra, tax: { category, rate, why: asksWhy(category) ? why : '' } } : extra;
}

/** Accounts of the year, in words. */
export const accountWords: Record<Output<'accounts.year'>['rows'][number]['account'], string> = {
  bank: 'Into the bank',
  cash: 'In cash',
  card: 'By card',
  cheque: 'By cheque',
  receivable: 'Open',
  credit: 'Kept for later',
  to_pay_back: 'To pay back',
  deferred: 'Owed in lessons',
  earned: 'Earned',
  lapsed: 'Lessons that ran out',
  tax_due: 'Tax charged',
  rounding: 'Rounding for cash',
  written_off: 'Given up',
};
