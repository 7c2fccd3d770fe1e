// Touches on court, one after the other: each is on disk before the next is sent, and none is shown as
// counted before it is.
import { toTrouble, type Trouble } from '../../kit/problems';

/** A touch that waits its turn. */
export interface Touch {
  goal: string;
  made: boolean;
}

/** The line in which touches wait. */
export class Touches {
  /** Touches not yet on disk, oldest first. */
  waiting: Touch[] = $state([]);
  /** Why the line stands still. */
  trouble: Trouble | null = $state.raw(null);

  readonly #send: (touch: Touch) => Promise<void>;
  #running = false;

  /** `send` resolves when the touch is on disk. */
  constructor(send: (touch: Touch) => Promise<void>) {
    this.#send = send;
  }

  /** Adds a touch. */
  add(goal: string, made: boolean): void {
    this.waiting.push({ goal, made });
    void this.#run();
  }

  /** Goes on after a failure, with the touch that failed. */
  async again(): Promise<void> {
    this.trouble = null;
    await this.#run();
  }

  /** Lets go of what could not be written. */
  drop(): void {
    this.waiting = [];
    this.trouble = null;
  }

  /** Resolves when nothing waits any more, or the line stands still. */
  async settled(): Promise<void> {
    while (this.#running) await new Promise((done) => setTimeout(done, 1));
  }

  async #run(): Promise<void> {
    if (this.#running || this.trouble) return;
    this.#running = true;
    try {
      for (let next = this.waiting[0]; next; next = this.waiting[0]) {
        await this.#send(next);
        this.waiting.shift();
      }
    } catch (thrown) {
      this.trouble = toTrouble(thrown);
    } finally {
      this.#running = false;
    }
  }
}
