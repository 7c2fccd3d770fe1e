// What the coach spent, in words: kinds, rates, sums, and what a form sends.
import type { Input, Output } from '../../ipc';
import { counted } from '../../kit/counted';
import { dayAndMonth, daysIn, span } from '../../kit/dates';

export type Cost = Output<'costs.list'>['costs'][number];
export type CostSum = Output<'costs.list'>['sums'][number];
export type CostRate = Output<'costs.rates'>[number];
export type CostKind = Cost['kind'];

export const kindWords: Record<CostKind, string> = {
  drive: 'Drive',
  fare: 'Fare, parking, tolls',
  lodging: 'Lodging',
  meals: 'Meals, as paid',
  day_rate: 'Meals, by day rate',
  court: 'Court',
  equipment: 'Equipment',
  dues: 'Dues and insurance',
  other: 'Other',
};

const perWords: Record<CostRate['per'], string> = { mile: 'a mile', km: 'a kilometre', day: 'a day away' };
export const perOptions = [
  { value: 'mile', words: 'A mile driven' },
  { value: 'km', words: 'A kilometre driven' },
  { value: 'day', words: 'A day away' },
] as const;

/** Whether a cost of this kind may run over several days. */
export const overDays = (kind: CostKind) => kind === 'lodging' || kind === 'day_rate';

/** Whether its amount is worked out from a rate. */
export const byRate = (kind: CostKind) => kind === 'drive' || kind === 'day_rate';

/** "12 March 2026", or "10 – 12 March 2026" with how many days. */
export function whenWords(cost: Cost): string {
  if (cost.day === cost.last) return dayAndMonth(cost.day);
  // Nights are fewer than days: how many were paid for, the receipt says.
  if (cost.kind === 'lodging') return span(cost.day, cost.last);
  return `${span(cost.day, cost.last)}, ${counted(daysIn(cost.day, cost.last), 'day')}`;
}

/** What stands behind a cost: what kind, where, how it was worked out, or why it counts no longer. */
export function whyWords(cost: Cost): string {
  const taken = cost.taken_back ? `taken back: ${cost.why}` : '';
  const tax = cost.tax ? `tax contained ${cost.tax}` : '';
  return [kindWords[cost.kind], cost.town, cost.worked, tax, passedWords(cost), taken]
    .filter(Boolean)
    .join(' · ');
}

/** "passed on: Ana Silva 33.34 (draft), Ben Costa 33.33 (2026-0007)"; empty when nothing is. */
export function passedWords(cost: Cost): string {
  if (cost.passed.length === 0) return '';
  const shares = cost.passed.map((one) => `${one.name} ${one.amount} (${one.number || 'draft'})`);
  return `passed on: ${shares.join(', ')}`;
}

/** Whether something of a cost can still be passed on. */
export const canPass = (cost: Cost): boolean =>
  cost.taken_back === null && Number(cost.passed_on || '0') < Number(cost.amount);

/** "0.725 USD a mile". */
export function rateWords(rate: CostRate): string {
  const part = rate.edge ? `, first and last day ${rate.edge} %` : '';
  return `${rate.amount} ${rate.currency} ${perWords[rate.per]}${part}`;
}

/** From when until when a rate holds. */
export function holdsWords(rate: CostRate): string {
  return rate.until
    ? `${dayAndMonth(rate.since)} to ${dayAndMonth(rate.until)}`
    : `from ${dayAndMonth(rate.since)}`;
}

/** A cost as its form begins. */
export function costForm(cost: Cost | undefined, day: string, town: string) {
  return {
    kind: cost?.kind ?? 'drive',
    day: cost?.day ?? day,
    last: cost && cost.last !== cost.day ? cost.last : '',
    words: cost?.words ?? '',
    town: cost?.town ?? town,
    amount: cost && !byRate(cost.kind) ? cost.amount : '',
    currency: cost && !byRate(cost.kind) ? cost.currency : '',
    tax: cost && !byRate(cost.kind) ? cost.tax : '',
    distance: cost?.distance ?? '',
    unit: (cost?.unit ?? 'km') as 'mile' | 'km',
  };
}

/** What a form sends: only the fields that its kind asks for, so that nothing hidden is refused. */
export function costTyped(form: ReturnType<typeof costForm>): Input<'costs.note'>['cost'] {
  const { kind, day, words, town } = form;
  const cost: Input<'costs.note'>['cost'] = { kind, day, words, town };
  if (overDays(kind)) cost.last = form.last;
  if (kind === 'drive') {
    cost.distance = form.distance;
    cost.unit = form.unit;
  } else if (kind !== 'day_rate') {
    cost.amount = form.amount;
    cost.currency = form.currency;
    cost.tax = form.tax;
  }
  return cost;
}
