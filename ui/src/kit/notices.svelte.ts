// What was just done, in one line, kept until the next thing is done or it is put away. It never hurries anyone.

/** A line about what happened, with at most one act: as a rule, Undo. */
export interface Said {
  words: string;
  act?: { words: string; run: () => void };
}

/** The one line of this window. */
export class Notices {
  /** What stands there now. */
  now: Said | null = $state.raw(null);

  /** Says something in place of what stood there. */
  say(words: string, act?: Said['act']): void {
    this.now = act ? { words, act } : { words };
  }

  /** Runs the act, once: the words stay until what it did is said. */
  run(): void {
    const said = this.now;
    if (!said?.act) return;
    this.now = { words: said.words };
    said.act.run();
  }

  /** Puts the line away. */
  clear(): void {
    this.now = null;
  }
}

/** The notices of this window. */
export const notices = new Notices();
