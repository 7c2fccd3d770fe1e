// The minutes left of a lesson, from its own times on the facility's clock and the clock of now: nothing is
// counted down, so that a clock that jumps, or one in another zone, is no matter.
import { parseDateTime, toZoned } from '@internationalized/date';

/** The parts of a lesson that its times hang on. */
export interface Timed {
  day: string;
  starts: string;
  which: 'once' | 'first' | 'second';
  minutes: number;
  zone: string;
}

/** The instant a lesson begins, in milliseconds; null when its zone or time cannot be read. */
export function begins(lesson: Timed): number | null {
  try {
    const civil = parseDateTime(`${lesson.day}T${lesson.starts}`);
    return toZoned(civil, lesson.zone, lesson.which === 'second' ? 'later' : 'earlier')
      .toDate()
      .getTime();
  } catch {
    return null;
  }
}

const MINUTE = 60_000;
/** How long before and after a lesson its time is still of interest. */
const NEAR = 60 * MINUTE;

/** "24 min left", "begins in 12 min", "5 min over"; nothing far from the lesson. */
export function leftWords(lesson: Timed, now: number): string {
  const start = begins(lesson);
  if (start === null) return '';
  const end = start + lesson.minutes * MINUTE;
  if (now < start) return start - now <= NEAR ? `begins in ${Math.ceil((start - now) / MINUTE)} min` : '';
  if (now < end) return `${Math.ceil((end - now) / MINUTE)} min left`;
  const over = Math.floor((now - end) / MINUTE);
  return over > 0 && now - end <= NEAR ? `${over} min over` : over === 0 ? 'time is up' : '';
}
