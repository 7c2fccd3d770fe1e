// The coach's own time as its forms hold it, every field as typed.
import type { Busy, Output } from '../../ipc';

type OwnTime = Output<'own_time.show'>;

let made = 0;
const key = () => ++made;

type Hours = { key: number; weekdays: number[]; opens: string; closes: string; first: string; last: string };
type Way = { key: number; one: string; other: string; minutes: string };

/** The coach's week in its form. */
export interface TypedWeek {
  hours: Hours[];
  day_limit: string;
  longest_run: string;
  meal_starts: string;
  meal_ends: string;
  travel: string;
  ways: Way[];
}

/** Empty rows. */
export const empty = {
  hours: (): Hours => ({ key: key(), weekdays: [], opens: '', closes: '', first: '', last: '' }),
  ways: (): Way => ({ key: key(), one: '', other: '', minutes: '' }),
};

const text = (n: number) => (n ? String(n) : '');
/** A whole number as typed; what is none becomes −1, which is refused in words. */
const whole = (typed: string) =>
  typed.trim() === '' ? 0 : /^\d{1,4}$/.test(typed.trim()) ? Number(typed.trim()) : -1;

/** A week to change. */
export function toTyped(own: OwnTime): TypedWeek {
  return {
    hours: own.hours.map((row) => ({ ...empty.hours(), ...row })),
    day_limit: text(own.day_limit),
    longest_run: text(own.longest_run),
    meal_starts: own.meal_starts,
    meal_ends: own.meal_ends,
    travel: text(own.travel),
    ways: own.ways.map((way) => ({ ...empty.ways(), ...way, minutes: String(way.minutes) })),
  };
}

/** What is sent. */
export function toOwn(t: TypedWeek): OwnTime {
  return {
    hours: t.hours.map(({ weekdays, opens, closes, first, last }) => ({
      weekdays,
      opens,
      closes,
      first,
      last,
    })),
    day_limit: whole(t.day_limit),
    longest_run: whole(t.longest_run),
    meal_starts: t.meal_starts,
    meal_ends: t.meal_ends,
    travel: whole(t.travel),
    ways: t.ways.map(({ one, other, minutes }) => ({
      one,
      other,
      minutes: minutes.trim() === '' ? -1 : whole(minutes),
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
