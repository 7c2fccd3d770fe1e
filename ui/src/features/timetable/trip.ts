// The trip: what could still be sold in words and as a strip, and who is in town.
import type { FreeStretch, LessonOn, Output, PlaceOn, TripDay, TripPerson } from '../../ipc';
import { counted } from '../../kit/counted';
import { lengthWords } from '../../kit/times';
import { hoursWords } from './words';

type Trip = Output<'timetable.trip'>;

const minuteOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
/** The end of a stretch, where midnight is the day's end. */
const endOf = (time: string): number => minuteOf(time) || 1440;

/** The length of the shortest lesson, and where it is from. */
export function shortestWords(trip: Pick<Trip, 'shortest' | 'shortest_from'>): string {
  const length = lengthWords(trip.shortest);
  const from = {
    rates: `the shortest lesson you have a rate for`,
    lessons: `the shortest lesson of these days`,
    usual: `taken as the shortest lesson`,
  }[trip.shortest_from];
  return `No stretch is shorter than ${length}, ${from}.`;
}

/** Why a day has nothing to sell. */
export const nothingWords: Record<NonNullable<TripDay['nothing']>, string> = {
  passed: 'This day has passed.',
  nowhere: 'Nobody is in town.',
  off: 'You have no working hours on this day.',
  limit: 'Your limit, or the facility’s, leaves no further lesson.',
  taken: 'All hours are taken or have passed, or what is left is too short for a lesson.',
};

/** "9:00 – 10:00, 11:00 – 13:00". */
export const freeWords = (free: readonly FreeStretch[]): string => free.map(hoursWords).join(', ');

/** What a day comes to, and what of it can be sold where that is less; empty where the one stretch says it. */
export function sumWords(day: Pick<TripDay, 'free_minutes' | 'places'>): string {
  const all = day.places
    .flatMap((place) => place.free)
    .reduce((sum, f) => sum + endOf(f.to) - minuteOf(f.from), 0);
  const sum = lengthWords(day.free_minutes);
  if (day.free_minutes >= all) return `${sum} in all.`;
  const why = day.places.filter((place) => place.free.length > 0).length > 1;
  return why
    ? `${sum} in all: you can be at one place at a time, and limits hold.`
    : `${lengthWords(all)} in all, of which limits leave ${sum}.`;
}

/** "2 lessons, 2 h · 4 wished for", "no lesson yet · 4 wished for". */
export function personWords(p: Pick<TripPerson, 'lessons' | 'wished' | 'minutes'>): string {
  const lessons =
    p.lessons > 0 ? `${counted(p.lessons, 'lesson')}, ${lengthWords(p.minutes)}` : 'no lesson yet';
  return p.wished === null ? lessons : `${lessons} · ${p.wished} wished for`;
}

/** A part of a strip, in hundredths of its width. */
export interface Part {
  kind: 'open' | 'free' | 'lesson';
  x: number;
  width: number;
  words: string;
}

/** The hours that all strips of a trip show, so that they can be read one below the other. */
export function axisOf(trip: Pick<Trip, 'on'>): { from: number; to: number } {
  const places = trip.on.flatMap((day) => day.places);
  const lessons = trip.on.flatMap((day) => day.lessons);
  const begins = [
    ...places.flatMap((p) => p.free.map((f) => minuteOf(f.from))),
    ...lessons.map((l) => minuteOf(l.starts)),
  ];
  const ends = [
    ...places.flatMap((p) => p.free.map((f) => endOf(f.to))),
    ...lessons.map((l) => endOf(l.ends)),
  ];
  const from = Math.floor(Math.min(540, ...begins) / 60) * 60;
  return { from, to: Math.ceil(Math.max(1080, ...ends) / 60) * 60 };
}

/** The parts of a strip: when the place is open, what is free, and the lessons there. */
export function stripOf(
  place: Pick<PlaceOn, 'facility' | 'open' | 'free'>,
  lessons: readonly Pick<LessonOn, 'facility' | 'starts' | 'ends' | 'state'>[],
  axis: { from: number; to: number },
): Part[] {
  const part = (kind: Part['kind'], from: number, to: number): Part => {
    const [a, z] = [Math.max(from, axis.from), Math.min(to, axis.to)];
    const share = (minutes: number) => Math.round((minutes / (axis.to - axis.from)) * 10_000) / 100;
    return { kind, x: share(a - axis.from), width: share(Math.max(0, z - a)), words: lengthWords(to - from) };
  };
  const here = lessons.filter((l) => l.facility === place.facility && l.state !== 'called_off');
  return [
    ...place.open.map((o) => part('open', minuteOf(o.from), endOf(o.to))),
    ...place.free.map((f) => part('free', minuteOf(f.from), endOf(f.to))),
    ...here.map((l) => part('lesson', minuteOf(l.starts), endOf(l.ends))),
  ].filter((p) => p.width > 0);
}

/** The hours written under a strip: every second or third, so that they keep apart. */
export function ticksOf(axis: { from: number; to: number }): { x: number; words: string }[] {
  const hours = (axis.to - axis.from) / 60;
  const step = hours > 14 ? 3 : 2;
  const ticks = [];
  for (let hour = axis.from / 60; hour <= axis.to / 60; hour += step) {
    ticks.push({
      x: Math.round(((hour * 60 - axis.from) / (axis.to - axis.from)) * 10_000) / 100,
      words: String(hour),
    });
  }
  return ticks;
}
