// A lesson plan as the editor holds it: every field as typed, each line with a key of its own.
import type { Input, LessonLine } from '../../ipc';

/** A line as it is typed. */
export interface TypedLine {
  /** Tells lines apart on the page while they are moved. */
  key: number;
  minutes: string;
  drill: string;
  goal: string;
  words: string;
}

let made = 0;

/** An empty line. */
export const newLine = (): TypedLine => ({ key: ++made, minutes: '10', drill: '', goal: '', words: '' });

/** Lines to change. */
export const toTyped = (lines: readonly LessonLine[]): TypedLine[] =>
  lines.map((line) => ({
    key: ++made,
    minutes: String(line.minutes),
    drill: line.drill ?? '',
    goal: line.goal ?? '',
    words: line.words ?? '',
  }));

/** What is sent; minutes that are no number are sent as 0, and refused in words. */
export const toLines = (typed: readonly TypedLine[]): Input<'lessons.set_plan_lines'>['lines'] =>
  typed.map((line) => ({
    minutes: /^\s*\d{1,4}\s*$/.test(line.minutes) ? Number(line.minutes) : 0,
    drill: line.drill,
    goal: line.goal || null,
    words: line.words,
  }));

/** How the minutes of the lines stand to the lesson's: "45 of 60 minutes planned". */
export function minutesWords(typed: readonly TypedLine[], length: number): string {
  const sum = toLines(typed).reduce((all, line) => all + line.minutes, 0);
  const over = sum > length ? `, ${sum - length} too many` : '';
  return `${sum} of ${length} minutes planned${over}`;
}

/** Lines with one moved up or down. */
export function moved<T extends { key: number }>(lines: readonly T[], key: number, by: number): T[] {
  const at = lines.findIndex((line) => line.key === key);
  const to = at + by;
  if (at < 0 || to < 0 || to >= lines.length) return [...lines];
  const order = [...lines];
  const [line] = order.splice(at, 1);
  if (line) order.splice(to, 0, line);
  return order;
}
