// The effort of a lesson as the student rates it, 0 to 10. The words are those of the scale in Foster et al. 2001
// (Journal of Strength and Conditioning Research 15:109–115), which has none at 6, 8 and 9.
import type { Attending } from '../../ipc';

const words = [
  'rest',
  'very, very easy',
  'easy',
  'moderate',
  'somewhat hard',
  'hard',
  '',
  'very hard',
  '',
  '',
  'maximal',
] as const;

/** "5, hard"; a number alone where the scale has no word. */
export function effortWords(effort: number): string {
  const word = words[effort];
  return word ? `${effort}, ${word}` : String(effort);
}

/** The ratings to choose from. */
export const efforts = words.map((_, n) => ({ value: String(n), words: effortWords(n) }));

/** What is typed, as the core takes it. */
export const readEffort = (chosen: string): number | null => (chosen === '' ? null : Number(chosen));

/** "effort 5, hard" of one student; of several each by name; empty while nothing was told. */
export function ratedWords(students: readonly Pick<Attending, 'name' | 'effort'>[]): string {
  const rated = students.filter((s) => s.effort !== null);
  if (rated.length === 0) return '';
  const each = rated.map((s) => {
    const said = effortWords(s.effort ?? 0);
    return students.length === 1 ? said : `${s.name} ${said}`;
  });
  return `effort ${each.join('; ')}`;
}
