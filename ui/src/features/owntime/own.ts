// The coach's own time as its forms hold it, every field as typed.
import type { Busy, Output } from '../../ipc';
import { readWhole, typedWhole } from '../../kit/whole';
import { emptyHours, type TypedHours } from '../facilities/hours';
import { nextKey, type Typed, withoutKey } from '../facilities/rows';

type OwnTime = Output<'own_time.show'>;

type Way = Typed<{ one: string; other: string; minutes: string }>;

/** The coach's week in its form. */
export interface TypedWeek {
  hours: TypedHours[];
  day_limit: string;
  week_limit: string;
  longest_run: string;
  meal_starts: string;
  meal_ends: string;
  meal_minutes: string;
  travel: string;
  ways: Way[];
}

/** An empty way. */
export const emptyWay = (): Way => ({ key: nextKey(), one: '', other: '', minutes: '' });

/** A week to change. */
export function toTyped(own: OwnTime): TypedWeek {
  return {
    hours: own.hours.map((row) => ({ ...emptyHours(), ...row })),
    day_limit: typedWhole(own.day_limit),
    week_limit: typedWhole(own.week_limit),
    longest_run: typedWhole(own.longest_run),
    meal_starts: own.meal_starts,
    meal_ends: own.meal_ends,
    meal_minutes: typedWhole(own.meal_minutes),
    travel: typedWhole(own.travel),
    ways: own.ways.map((way) => ({ ...emptyWay(), ...way, minutes: String(way.minutes) })),
  };
}

/** What is sent. */
export function toOwn(t: TypedWeek): OwnTime {
  return {
    hours: t.hours.map(withoutKey),
    day_limit: readWhole(t.day_limit),
    week_limit: readWhole(t.week_limit),
    longest_run: readWhole(t.longest_run),
    meal_starts: t.meal_starts,
    meal_ends: t.meal_ends,
    meal_minutes: readWhole(t.meal_minutes),
    travel: readWhole(t.travel),
    ways: t.ways.map(({ one, other, minutes }) => ({
      one,
      other,
      minutes: readWhole(minutes, -1),
    })),
  };
}

/** Something that takes the coach's time, in its form. */
export type TypedBusy = Omit<Busy, 'except'> & { except: string };

/** A thing to change, or a new one. */
export function toTypedBusy(busy: Busy | null): TypedBusy {
  return {
    what: busy?.what ?? '',
    first: busy?.first ?? '',
    last: busy?.last ?? '',
    starts: busy?.starts ?? '',
    ends: busy?.ends ?? '',
    zone: busy?.zone ?? '',
    again: busy?.again ?? 'never',
    weekdays: busy?.weekdays ?? [],
    except: (busy?.except ?? []).join(', '),
  };
}

/** What is sent; the days on which it does not take place stand between commas or spaces. */
export function toBusy(t: TypedBusy): Busy {
  return { ...t, except: t.except.split(/[\s,;]+/).filter(Boolean) };
}
