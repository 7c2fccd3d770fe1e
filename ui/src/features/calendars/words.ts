// What a talk with the server came to, and when a calendar was read, in words.
import type { Exchanged, FoundCalendar, OwnCalendar } from '../../ipc';
import { counted } from '../../kit/counted';
import { shortDay } from '../../kit/dates';

/** "2 lessons written, 1 taken out, 1 calendar read." */
export function exchangedWords(done: Exchanged): string {
  const parts = [
    done.written > 0 ? `${counted(done.written, 'lesson', 'lessons')} written` : '',
    done.removed > 0 ? `${counted(done.removed, 'lesson', 'lessons')} taken out` : '',
    done.read > 0 ? `${counted(done.read, 'calendar', 'calendars')} read` : '',
    done.differs > 0 ? `${counted(done.differs, 'lesson', 'lessons')} to decide about` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'Both sides say the same.' : `${parts.join(', ')}.`;
}

/** "read Fri 27 Nov, 14:05", on this machine's clock; empty before it ever was. */
export function readWords(calendar: OwnCalendar): string {
  if (!calendar.read) return '';
  const at = new Date(calendar.read);
  const two = (n: number) => String(n).padStart(2, '0');
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `read ${shortDay(day)}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** What is chosen among the calendars of a server. */
export interface Chosen {
  /** Whether each says when the coach is taken, by its path. */
  busy: Record<string, boolean>;
  /** Where lessons go: a path, NEW for a calendar to be made, NONE for nowhere. */
  lessons: string;
  /** What a new one is called. */
  name: string;
}

/** Stands for a calendar to be made. */
export const NEW = 'new';
/** Stands for no calendar. */
export const NONE = 'none';

/** As it is now, or, at first, nothing but a new calendar for lessons. */
export function chosenAtFirst(found: readonly FoundCalendar[], used: readonly OwnCalendar[]): Chosen {
  const busy = Object.fromEntries(
    found.map((f) => [f.href, used.some((u) => u.role === 'busy' && u.href === f.href)]),
  );
  const lessons = used.find((u) => u.role === 'lessons');
  const there = found.some((f) => f.href === lessons?.href);
  const before = used.length > 0 ? NONE : NEW;
  return { busy, lessons: there ? (lessons?.href ?? before) : before, name: 'Lessons' };
}
