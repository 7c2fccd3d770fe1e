// The words of calendars, and what is chosen among them at first.
import { describe, expect, it } from 'vitest';
import type { FoundCalendar, OwnCalendar } from '../../ipc';
import { chosenAtFirst, exchangedWords, NEW, NONE, readWords } from './words';

const done = { written: 0, removed: 0, read: 0, differs: 0, notes: [] };
const of = (over: Partial<OwnCalendar>): OwnCalendar => ({
  id: 'a',
  name: 'Private',
  role: 'busy',
  href: '/private/',
  read: null,
  until: null,
  events: 0,
  notes: [],
  words: '',
  ...over,
});
const found: FoundCalendar[] = [
  { href: '/private/', name: 'Private', writable: true },
  { href: '/club/', name: 'Work', writable: false },
];

describe('what an exchange did', () => {
  it('names only what happened', () => {
    expect(exchangedWords(done)).toBe('Both sides say the same.');
    expect(exchangedWords({ ...done, written: 1 })).toBe('1 lesson written.');
    expect(exchangedWords({ ...done, written: 2, removed: 1, read: 3 })).toBe(
      '2 lessons written, 1 lesson taken out, 3 calendars read.',
    );
    expect(exchangedWords({ ...done, differs: 1 })).toBe('1 lesson to decide about.');
  });
});

describe('when a calendar was read', () => {
  it('is empty before it ever was, and on this machine’s clock after', () => {
    expect(readWords(of({}))).toBe('');
    const noon = new Date(2026, 2, 9, 12, 5);
    expect(readWords(of({ read: noon.toISOString() }))).toContain('12:05');
  });
});

describe('what is chosen at first', () => {
  it('is a new calendar for lessons and nothing else', () => {
    expect(chosenAtFirst(found, [])).toEqual({
      busy: { '/private/': false, '/club/': false },
      lessons: NEW,
      name: 'Lessons',
    });
  });

  it('is what is in use', () => {
    const used = [of({}), of({ id: 'b', role: 'lessons', href: '/club/' })];
    expect(chosenAtFirst(found, used)).toEqual({
      busy: { '/private/': true, '/club/': false },
      lessons: '/club/',
      name: 'Lessons',
    });
  });

  it('leaves out a calendar that is no longer there', () => {
    const used = [of({ role: 'lessons', href: '/gone/' })];
    expect(chosenAtFirst(found, used).lessons).toBe(NONE);
  });
});
