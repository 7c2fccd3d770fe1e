// What is said of messages.
import type { Output } from '../../ipc';

export type Line = Output<'outtray.of_student'>['messages'][number];
export type Kind = Line['kind'];

/** What a kind of message is called. */
export const kindWords: Record<Kind, string> = {
  letter: 'letter',
  invoice: 'invoice',
  reminder: 'reminder',
  invitation: 'invitation',
  offer: 'offer',
  home_plan: 'home plan',
  before_visit: 'before a visit',
  questions: 'questions',
  home_report: 'home report',
  come_again: 'come again',
  words: 'a word',
  trial: 'a trial',
};

/** To whom: "Ana Silva, ana@example.org". */
export function toWords(to: { name: string; address: string }): string {
  return [to.name, to.address].filter(Boolean).join(', ') || 'to nobody yet';
}

/** A size of bytes: "31 KB". */
export function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1_000_000 ? `${Math.round(bytes / 1000)} KB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** What a part of a message is called, where it has no name of its own. */
export function partWords(part: { name: string; media: string }): string {
  if (part.name) return part.name;
  if (part.media === 'text/plain') return 'the words, plain';
  if (part.media === 'text/html') return 'the same words for programs that show pages';
  if (part.media === 'text/calendar') return 'for a calendar program';
  return part.media;
}

/** Of messages that say the same to several people, the first: the others go with it. */
export function firsts<M extends { id: string; together: string }>(messages: readonly M[]): M[] {
  const seen = new Set<string>();
  return messages.filter((m) => !seen.has(m.together) && seen.add(m.together));
}
