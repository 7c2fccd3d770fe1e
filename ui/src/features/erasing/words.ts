// What erasing a person would do and leaves to do, in words.
import type { Due, SeenAt } from '../../ipc';
import { dayAndMonth } from '../../kit/dates';

/** The address of the screen that shows a row; none for what has no screen. */
export function addressOf(leads: SeenAt | null): string | undefined {
  if (!leads) return undefined;
  const screens: Record<string, string> = {
    student: 'people',
    lesson: 'lessons',
    goal: 'goals',
    visit: 'visits',
    facility: 'places',
  };
  const screen = screens[leads.to];
  return screen ? `#/${screen}/${leads.id}` : undefined;
}

/** A file's name, without its folders. */
export function nameOf(path: string): string {
  return path.split(/[/\\]/).at(-1) || path;
}

/** One line about what was done and what is left to do. */
export function doneWords(words: string, left: readonly string[]): string {
  return [words, ...left].join(' ');
}

/** The same for documents on the machine: how many bear the name, and where they are. */
export function papersWords(paths: readonly string[]): string {
  const first = paths[0];
  if (!first) return '';
  const many = paths.length === 1 ? '1 document' : `${paths.length} documents`;
  return `${many} with the name ${paths.length === 1 ? 'lies' : 'lie'} on this machine. Delete what you do not need.`;
}

const kinds: Record<Due['kept'], string> = {
  enquiry: 'What was asked',
  health: 'Health answers',
  report: 'Incident report',
  person: 'Everything',
  accounts: 'What the accounts need',
};

/** Whose it is and what. */
export function overWords(due: Due): string {
  return `${kinds[due.kept]}: ${due.name}`;
}

/** The address where it can be looked at and erased. */
export function overAt(due: Due): string {
  if (due.incident) return `#/incidents/${due.incident}`;
  return due.student ? `#/people/${due.student}/record` : '#/coach';
}

/** Until when something is kept, and why. */
export function untilWords(due: Due): string {
  return `${kinds[due.kept]}: until ${dayAndMonth(due.until)}. ${due.why}`;
}
