// Levels on screen: the newest of each skill beside the time before, and what a form sends.
import type { Assessment, Basis, Level } from '../../ipc';
import { dayAndMonth } from '../../kit/dates';

/** A skill's newest level with the day it was given. */
export interface Standing {
  level: Level;
  day: string;
  assessment: string;
}

/** The newest level of each skill of a sport, from assessments that are newest first; in the order they are met. */
export function newest(assessments: readonly Assessment[], sport: string): Standing[] {
  const found = new Map<string, Standing>();
  for (const one of assessments.filter((one) => one.sport === sport)) {
    for (const level of one.levels) {
      if (!found.has(level.skill)) found.set(level.skill, { level, day: one.day, assessment: one.id });
    }
  }
  return [...found.values()];
}

/** What a level rests on. */
export const basisWords: Record<Basis, string> = {
  evidence: 'tries counted',
  opinion: 'the coach’s opinion',
};

/** "3, before 2 on 10 January 2026"; "3, as on 10 January 2026"; "3". */
export function levelWords(level: Pick<Level, 'level' | 'before'>): string {
  if (!level.before) return String(level.level);
  const [before, day] = level.before;
  return before === level.level
    ? `${level.level}, as on ${dayAndMonth(day)}`
    : `${level.level}, before ${before} on ${dayAndMonth(day)}`;
}

/** The levels chosen, and for each the skill it was chosen for, in the order sent. */
export function chosen(levels: Readonly<Record<string, string>>): { skill: string; level: number }[] {
  return Object.entries(levels)
    .filter(([, level]) => level !== '')
    .map(([skill, level]) => ({ skill, level: Number(level) }));
}

/** A number typed; what is none is sent as −1, which the core refuses in words. */
export function number(typed: string | undefined): number {
  const text = (typed ?? '').trim();
  return /^\d{1,6}$/.test(text) ? Number(text) : -1;
}

/** Seconds typed as 24 or as 3:45; what is neither is sent as −1. */
export function seconds(typed: string | undefined): number {
  const read = /^\s*(\d{1,3}):([0-5]\d)\s*$/.exec(typed ?? '');
  return read ? Number(read[1]) * 60 + Number(read[2]) : number(typed);
}
