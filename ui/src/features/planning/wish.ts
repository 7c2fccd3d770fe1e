// A wish as the form holds it, every field as typed.
import type { VisitWish } from '../../ipc';

/** What stands in the form. */
export interface TypedWish {
  lessons: string;
  minutes: string;
  per_day: string;
  rest: string;
  arrives: string;
  leaves: string;
  earliest: string;
  latest: string;
  best_from: string;
  best_to: string;
  court: string;
  weight: '1' | '2' | '3';
  note: string;
}

/** A wish to change; an hour once a day where there is none yet. */
export function toTyped(w: VisitWish | null): TypedWish {
  const weight = w?.weight === 2 ? '2' : w?.weight === 3 ? '3' : '1';
  return {
    lessons: w?.lessons ? String(w.lessons) : '',
    minutes: String(w?.minutes ?? 60),
    per_day: String(w?.per_day ?? 1),
    rest: w?.rest ? String(w.rest) : '',
    arrives: w?.arrives ?? '',
    leaves: w?.leaves ?? '',
    earliest: w?.earliest ?? '',
    latest: w?.latest ?? '',
    best_from: w?.best_from ?? '',
    best_to: w?.best_to ?? '',
    court: w?.court ?? '',
    weight,
    note: w?.note ?? '',
  };
}

/** A whole number as typed; what is none becomes −1, which is refused in words. */
const whole = (typed: string) => (/^\d{1,4}$/.test(typed.trim()) ? Number(typed.trim()) : -1);

/** What is sent. */
export function toWish(t: TypedWish): VisitWish {
  return {
    ...t,
    lessons: t.lessons.trim() === '' ? 0 : whole(t.lessons),
    minutes: whole(t.minutes),
    per_day: whole(t.per_day),
    rest: t.rest.trim() === '' ? 0 : whole(t.rest),
    court: t.court || null,
    weight: Number(t.weight),
  };
}
