// The table of words: what each code of an error is called and what the way out is. Complete by type.

/** The codes an error can carry. A code exists only because the window does something with it. */
export type Code =
  | 'refused'
  | 'not_found'
  | 'in_use'
  | 'locked'
  | 'not_possible'
  | 'newer_file'
  | 'not_a_coach_file'
  | 'storage'
  | 'no_file'
  | 'fault';

/** What a person is told about a code, around the words of the error itself. */
export interface CodeWords {
  title: string;
  way_out: string;
}

/** One entry for each code: a new code does not compile until it has its words. */
export const codeWords: Record<Code, CodeWords> = {
  refused: {
    title: 'Some answers need another look',
    way_out: 'Nothing was changed. Correct what is marked and try again.',
  },
  not_found: {
    title: 'Not found',
    way_out: 'It may have been changed or marked as gone. Go back and open it again.',
  },
  in_use: {
    title: 'The coach file is open elsewhere',
    way_out: 'Close Carryover in the other window or on the other account, then try again.',
  },
  locked: {
    title: 'The coach file is locked',
    way_out: 'Unlock it with its passphrase.',
  },
  not_possible: {
    title: 'Not possible now',
    way_out: 'Nothing was changed. Do first what is named here, then try again.',
  },
  newer_file: {
    title: 'The coach file comes from a newer Carryover',
    way_out: 'It was not touched. Install the newer version to open it, or open another file.',
  },
  not_a_coach_file: {
    title: 'This is not a coach file',
    way_out: 'It was not touched. Choose another file.',
  },
  storage: {
    title: 'The disk did not take it',
    way_out: 'Nothing was changed. Make room or reconnect the disk, then try again.',
  },
  no_file: {
    title: 'No coach file is open',
    way_out: 'Open one, or begin a new one.',
  },
  fault: {
    title: 'A fault in the program',
    way_out: 'Nothing was changed by this. Try again; if it happens again, copy the details.',
  },
};

/** Whether a word that arrived is one of the codes. */
export function isCode(word: unknown): word is Code {
  return typeof word === 'string' && Object.hasOwn(codeWords, word);
}
