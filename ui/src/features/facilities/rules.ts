// A facility's rules as the form holds them, every field as typed, and the same rules in words.
import type { Input, Output } from '../../ipc';
import { counted } from '../../kit/counted';
import { longDay, readDate } from '../../kit/dates';
import { weekdayWords } from '../../kit/weekdays';
import { readWhole, typedWhole } from '../../kit/whole';
import { emptyHours, type TypedHours } from './hours';
import { nextKey, type Typed, withoutKey } from './rows';

/** Rules as they are kept. */
type Rules = Output<'facilities.rules'>;
type Kept = Input<'facilities.set_rules'>['rules'];

type Closure = Typed<{
  court: string;
  first: string;
  last: string;
  weekdays: number[];
  starts: string;
  ends: string;
  reason: string;
}>;
type Rate = Typed<{
  who: string;
  ground: string;
  weekdays: number[];
  starts: string;
  ends: string;
  hour: string;
}>;
type Unit = 'hours' | 'days' | 'months';
type Ahead = Typed<{ who: string; ground: string; amount: string; unit: Unit; opens: string }>;
type Counted = 'elapsed' | 'wall';
type Later = 'full' | 'fee' | 'nothing';
type Release = Typed<{ ground: string; hours: string; counted: Counted; later: Later; fee: string }>;

/** The numbers among the rules; an empty field is 0, which stands for no such rule. */
export const NUMBERS = [
  'grid',
  'shortest',
  'longest',
  'day_limit',
  'week_limit',
  'day_bookings',
  'people',
  'grace',
  'youngest',
] as const;
type NumberField = (typeof NUMBERS)[number];
const TEXTS = ['currency', 'books_as', 'booking_fee', 'guest_fee', 'needs', 'source', 'source_seen'] as const;
const FLAGS = ['apart', 'one_by_one', 'weather_free'] as const;

/** What stands in the form. */
export type TypedRules = Record<NumberField | (typeof TEXTS)[number], string> &
  Record<(typeof FLAGS)[number], boolean> & {
    hours: TypedHours[];
    closures: Closure[];
    rates: Rate[];
    ahead: Ahead[];
    release: Release[];
  };

/** Empty rows. */
export const empty = {
  closures: (): Closure => ({
    key: nextKey(),
    court: '',
    first: '',
    last: '',
    weekdays: [],
    starts: '',
    ends: '',
    reason: '',
  }),
  rates: (): Rate => ({ key: nextKey(), who: '', ground: '', weekdays: [], starts: '', ends: '', hour: '' }),
  ahead: (): Ahead => ({ key: nextKey(), who: '', ground: '', amount: '', unit: 'days', opens: '' }),
  release: (): Release => ({
    key: nextKey(),
    ground: '',
    hours: '',
    counted: 'elapsed',
    later: 'full',
    fee: '',
  }),
};

/** Rules to change. */
export function toTyped(r: Partial<Rules>): TypedRules {
  const numbers = Object.fromEntries(NUMBERS.map((n) => [n, typedWhole(r[n])])) as Record<
    NumberField,
    string
  >;
  const texts = Object.fromEntries(TEXTS.map((t) => [t, r[t] ?? ''])) as Record<
    (typeof TEXTS)[number],
    string
  >;
  const flags = Object.fromEntries(FLAGS.map((f) => [f, r[f] ?? false])) as Record<
    (typeof FLAGS)[number],
    boolean
  >;
  return {
    ...numbers,
    ...texts,
    ...flags,
    hours: (r.hours ?? []).map((row) => ({ ...emptyHours(), ...row })),
    closures: (r.closures ?? []).map((row) => ({ ...empty.closures(), ...row, court: row.court ?? '' })),
    rates: (r.rates ?? []).map((row) => ({ ...empty.rates(), ...row })),
    ahead: (r.ahead ?? []).map((row) => ({ ...empty.ahead(), ...row, amount: String(row.amount ?? 0) })),
    release: (r.release ?? []).map((row) => ({ ...empty.release(), ...row, hours: String(row.hours ?? 0) })),
  };
}

/** What is sent. */
export function toRules(t: TypedRules): Kept {
  const numbers = Object.fromEntries(NUMBERS.map((n) => [n, readWhole(t[n])])) as Record<NumberField, number>;
  return {
    ...t,
    ...numbers,
    hours: t.hours.map(withoutKey),
    closures: t.closures.map((row) => ({ ...withoutKey(row), court: row.court || null })),
    rates: t.rates.map(withoutKey),
    ahead: t.ahead.map((row) => ({ ...withoutKey(row), amount: readWhole(row.amount, -1) })),
    release: t.release.map((row) => ({ ...withoutKey(row), hours: readWhole(row.hours, -1) })),
  };
}

/** A rule in words: what it is about, and what it says. */
export interface Said {
  about: string;
  words: string;
}

const span = (from: string | undefined, to: string | undefined) =>
  from && to ? `${from} to ${to === '00:00' ? 'midnight' : to}` : '';
const day = (iso: string) => (readDate(iso) ? longDay(iso) : iso);
const season = (first: string | undefined, last: string | undefined) =>
  !first || !last ? '' : first === last ? `on ${day(first)}` : `from ${day(first)} to ${day(last)}`;
const joined = (parts: (string | undefined | false)[], by = ', ') => parts.filter(Boolean).join(by);

/** Rules in words, in the order of the form. `courts` gives a court's name by its id. */
export function rulesWords(r: Partial<Rules>, courts: ReadonlyMap<string, string>): Said[] {
  const said: Said[] = [];
  const say = (about: string, words: string) => said.push({ about, words });
  for (const row of r.hours ?? [])
    say(
      'open',
      joined([weekdayWords(row.weekdays ?? []), span(row.opens, row.closes), season(row.first, row.last)]),
    );
  for (const row of r.closures ?? [])
    say(
      'not to be had',
      joined([
        row.court ? (courts.get(row.court) ?? 'a court') : '',
        (row.weekdays ?? []).length > 0 || !row.first ? weekdayWords(row.weekdays ?? []) : '',
        span(row.starts, row.ends),
        season(row.first, row.last),
        row.reason,
      ]),
    );
  for (const row of r.rates ?? [])
    say(
      'an hour',
      joined([
        `${row.hour} ${r.currency}`,
        row.who && `for ${row.who}`,
        row.ground && `on ${row.ground} courts`,
        (row.weekdays ?? []).length > 0 && weekdayWords(row.weekdays ?? []),
        span(row.starts, row.ends),
      ]),
    );
  for (const row of r.ahead ?? []) {
    const unit = row.unit === 'hours' ? 'hour' : row.unit === 'months' ? 'month' : 'day';
    say(
      'to ask for',
      joined([
        `${counted(row.amount ?? 0, unit, `${unit}s`)} ahead`,
        row.opens && `from ${row.opens}`,
        row.who && `for ${row.who}`,
        row.ground && `on ${row.ground} courts`,
      ]),
    );
  }
  for (const row of r.release ?? []) {
    const later =
      row.later === 'fee'
        ? `${row.fee} ${r.currency}`
        : row.later === 'nothing'
          ? 'nothing'
          : 'the whole price';
    say(
      'to give back',
      joined([
        `until ${counted(row.hours ?? 0, 'hour', 'hours')} before${row.counted === 'wall' ? ' by the clock' : ''}`,
        `later ${later}`,
        row.ground && `on ${row.ground} courts`,
      ]),
    );
  }
  const minutes = (n: number | undefined) => counted(n ?? 0, 'minute', 'minutes');
  const limits = joined([
    r.grid && `every ${minutes(r.grid)}`,
    r.shortest && `at least ${minutes(r.shortest)}`,
    r.longest && `at most ${minutes(r.longest)}`,
    r.day_limit && `${minutes(r.day_limit)} a day`,
    r.week_limit && `${minutes(r.week_limit)} in seven days`,
    r.day_bookings && `${counted(r.day_bookings, 'booking', 'bookings')} a day`,
    r.apart && 'no two in a row',
    r.one_by_one && 'one played before the next is made',
    r.people && `at most ${counted(r.people, 'person', 'people')} on a court`,
    r.youngest && `from the age of ${r.youngest}`,
  ] as (string | false)[]);
  if (limits) say('bookings', limits);
  const more = joined([
    r.booking_fee && `${r.booking_fee} ${r.currency} a booking`,
    r.guest_fee && `${r.guest_fee} ${r.currency} a guest`,
    r.grace && `lost when ${minutes(r.grace)} late`,
    r.weather_free && 'nothing to pay when the weather takes it',
    r.needs,
  ] as (string | false)[]);
  if (more) say('besides', more);
  if (r.source || r.source_seen) say('read', joined([r.source, r.source_seen && `on ${day(r.source_seen)}`]));
  return said;
}
