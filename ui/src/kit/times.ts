// Times of day on a court: HH:MM strings, read as people type them and written as people read them.
import { dayAndMonth } from './dates';

/** Reads 9, 930, 9:30, 9.30, 09:30 as HH:MM; null when it is no time of day. */
export function readTime(typed: string): string | null {
  const text = typed.trim();
  const parts = /^(\d{1,2})[:. ](\d{2})$/.exec(text) ?? /^(\d{1,2})(\d{2})?$/.exec(text);
  if (!parts) return null;
  const hour = Number(parts[1]);
  const minute = Number(parts[2] ?? '0');
  if (hour > 23 || minute > 59) return null;
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}

/** "9:30" for 09:30, as it stands on the day sheet. */
export function timeWords(time: string): string {
  return time.replace(/^0(\d)/, '$1');
}

/** "9:30 – 10:30". */
export function timeSpan(from: string, to: string): string {
  return `${timeWords(from)} – ${timeWords(to)}`;
}

/** A length in words: "45 min", "1 h", "1 h 30 min". */
export function lengthWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** "26 Nov 2026, 14:05": a moment on this machine's clock. */
export function momentWords(at: string): string {
  const when = new Date(at);
  if (Number.isNaN(when.getTime())) return at;
  const two = (n: number) => String(n).padStart(2, '0');
  const day = `${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}`;
  return `${dayAndMonth(day)}, ${two(when.getHours())}:${two(when.getMinutes())}`;
}
