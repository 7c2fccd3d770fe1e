// Touches on court, one after the other: each is on disk before the next is sent, and none is shown as
// counted before it is.
import { toTrouble, type Trouble } from '../../kit/problems';

/** A touch that waits its turn. */
export interface Touch {
  readonly goal: string;
  readonly made: boolean;
  /** The second fact, where the goal counts two apart. */
  readonly also?: boolean;
}

/** The line in which touches wait. */
export class Touches {
  /** Touches not known to be on disk, oldest first. */
  waiting: readonly Touch[] = $state.raw([]);
  /** Why the line stands still. */
  trouble: Trouble | null = $state.raw(null);

  readonly #send: (touch: Touch) => Promise<void>;
  #run: Promise<void> | null = null;

  /** `send` resolves when the touch is on disk. */
  constructor(send: (touch: Touch) => Promise<void>) {
    this.#send = send;
  }

  /** Adds a touch at the end of the line. */
  add(touch: Touch): void {
    this.waiting = [...this.waiting, touch];
    this.#go();
  }

  /** Goes on after a failure, with the touch that failed. */
  again(): void {
    this.trouble = null;
    this.#go();
  }

  /** Lets go of the newest touch in a line that stands still; says whether there was one. */
  letGoNewest(): boolean {
    if (!this.trouble || this.waiting.length === 0) return false;
    this.waiting = this.waiting.slice(0, -1);
    if (this.waiting.length === 0) this.trouble = null;
    return true;
  }

  /** Lets go of all that could not be written. */
  letGo(): void {
    if (!this.trouble) return;
    this.waiting = [];
    this.trouble = null;
  }

  /** Resolves when nothing waits any more, or the line stands still. */
  async settled(): Promise<void> {
    while (this.#run) await this.#run;
  }

  #go(): void {
    if (this.#run || this.trouble) return;
    this.#run = this.#all().finally(() => {
      this.#run = null;
      // One may have joined the line just as it ended.
      if (this.waiting.length > 0) this.#go();
    });
  }

  async #all(): Promise<void> {
    try {
      for (let next = this.waiting[0]; next; next = this.waiting[0]) {
        await this.#send(next);
        this.waiting = this.waiting.slice(1);
      }
    } catch (thrown) {
      this.trouble = toTrouble(thrown);
    }
  }
}
