// A wish as the form holds it, every field as typed.
import type { VisitWish } from '../../ipc';
import { readWhole, typedWhole } from '../../kit/whole';
import { nextKey, type Typed } from '../facilities/rows';

/** Lessons that others share, as they stand in the form: who is ticked, by visit. */
export type TypedShared = Typed<{ lessons: string; with: Record<string, boolean> }>;

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
  shared: TypedShared[];
}

/** An empty row: one lesson, shared with nobody yet. */
export const emptyShared = (): TypedShared => ({ key: nextKey(), lessons: '1', with: {} });

/** A wish to change; an hour once a day where there is none yet. */
export function toTyped(w: VisitWish | null): TypedWish {
  const weight = w?.weight === 2 ? '2' : w?.weight === 3 ? '3' : '1';
  return {
    lessons: typedWhole(w?.lessons),
    minutes: String(w?.minutes ?? 60),
    per_day: String(w?.per_day ?? 1),
    rest: typedWhole(w?.rest),
    arrives: w?.arrives ?? '',
    leaves: w?.leaves ?? '',
    earliest: w?.earliest ?? '',
    latest: w?.latest ?? '',
    best_from: w?.best_from ?? '',
    best_to: w?.best_to ?? '',
    court: w?.court ?? '',
    weight,
    note: w?.note ?? '',
    shared: (w?.shared ?? []).map((row) => ({
      key: nextKey(),
      lessons: String(row.lessons ?? 0),
      with: Object.fromEntries((row.with ?? []).map((visit) => [visit, true])),
    })),
  };
}

/** What is sent. */
export function toWish(t: TypedWish): VisitWish {
  return {
    ...t,
    lessons: readWhole(t.lessons),
    minutes: readWhole(t.minutes, -1),
    per_day: readWhole(t.per_day, -1),
    rest: readWhole(t.rest),
    court: t.court || null,
    weight: Number(t.weight),
    shared: t.shared.map((row) => ({
      lessons: readWhole(row.lessons, -1),
      with: Object.keys(row.with).filter((visit) => row.with[visit]),
    })),
  };
}
