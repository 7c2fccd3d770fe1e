// Lessons in words, and which of them is the one at hand.
import type { Lesson, LessonState } from '../../ipc';
import { begins } from './left';

/** Where a lesson is in its life. */
export const lessonStateWords: Record<LessonState, string> = {
  planned: 'to come',
  given: 'given',
  cut_short: 'cut short',
  called_off: 'called off',
  missed: 'missed',
};

/** "lesson 3 of 4", counting those that take place; empty for one that does not. */
export function nthWords(lessons: readonly Pick<Lesson, 'id' | 'state'>[], id: string | null): string {
  const held = lessons.filter((l) => l.state !== 'called_off' && l.state !== 'missed');
  const at = held.findIndex((l) => l.id === id);
  return at < 0 ? '' : `lesson ${at + 1} of ${held.length}`;
}

/** How long before its time a lesson is at hand. */
const EARLY = 30 * 60_000;

/** The lesson at hand: to come, and begun or about to. */
export function atHand<L extends Pick<Lesson, 'state' | 'day' | 'starts' | 'which' | 'minutes' | 'zone'>>(
  lessons: readonly L[],
  now: number,
): L | undefined {
  return lessons.find((l) => {
    const start = begins(l);
    if (l.state !== 'planned' || start === null) return false;
    return start - EARLY <= now && now < start + l.minutes * 60_000;
  });
}
