// A lesson plan as the editor holds it: every field as typed, each line with a key of its own.
import type { DrillLine, Input, LessonLine, Listed } from '../../ipc';

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

/** Whether two plans say the same. */
export const alike = (a: readonly TypedLine[], b: readonly TypedLine[]): boolean =>
  JSON.stringify(toLines(a)) === JSON.stringify(toLines(b));

/** A student on a lesson, as its plan needs to know them. */
export interface Theirs {
  name: string;
  goals: readonly Listed[];
  drills: readonly DrillLine[];
}

interface Option {
  value: string;
  words: string;
  group?: string;
}

/** The goals to choose from: those worked on, and those a line is for already; by student where there are several. */
export function goalOptions(theirs: readonly Theirs[], lines: readonly TypedLine[]): Option[] {
  const going = (goal: Listed) =>
    ['working', 'met', 'slipped'].includes(goal.state) || lines.some((l) => l.goal === goal.goal.id);
  return theirs.flatMap(({ name, goals }) =>
    goals.filter(going).map(({ goal }) => ({
      value: goal.id,
      words: goal.title,
      ...(theirs.length > 1 ? { group: name } : {}),
    })),
  );
}

/** The drills to choose from, each once, the coach's own first. */
export function drillOptions(theirs: readonly Theirs[]): Option[] {
  const drills = [...new Map(theirs.flatMap((t) => t.drills).map((d) => [d.id, d])).values()];
  const words = (own: boolean) => (own ? 'Your own' : 'Of the sport');
  return [true, false].flatMap((own) =>
    drills.filter((d) => d.own === own).map((d) => ({ value: d.id, words: d.name, group: words(own) })),
  );
}

/** What a drill is for, who stands where, and how it is made harder. */
export function drillWords(drill: DrillLine | undefined): string {
  if (!drill) return '';
  const steps = drill.steps.map((step) => step.replace(/[.;]$/, '')).join('; ');
  return [drill.purpose, drill.layout, steps && `Harder: ${steps}.`].filter(Boolean).join(' ');
}
