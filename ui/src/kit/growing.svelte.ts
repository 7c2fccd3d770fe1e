// Long lists come onto the page a few rows with each frame: what is in sight stands at once, and the page answers while
// the rest follows.

/** A frame longer than this, in milliseconds, had too much to do. */
const LONG = 24;

/** The lists of this window that are not yet whole, in the order in which they came. */
let unfinished: readonly Growing[] = [];
let share = 3;
let before: number | null = null;
let asked = false;

/** One frame: a few more rows for the list whose turn it is; fewer after a long frame, one more after a short. */
function frame(now: number): void {
  if (before !== null) share = now - before > LONG ? Math.max(1, Math.floor(share / 2)) : share + 1;
  before = now;
  const [first, ...others] = unfinished;
  if (first) others.reduce((next, other) => (other.turn < next.turn ? other : next), first).grow(share);
  if (unfinished.length > 0) return ask();
  asked = false;
  before = null;
  share = 3;
}

function ask(): void {
  asked = true;
  requestAnimationFrame(frame);
}

/** How many rows of a list stand so far. To be made while a component is; it ends with it. */
export class Growing {
  #count = $state(0);
  readonly #length: () => number;
  /** Lists of a lower turn become whole before this one. */
  readonly turn: number;

  /**
   * @param length How many rows there are in all.
   * @param atOnce How many stand at once.
   * @param turn 1 for what is in sight first, higher for what is further down the page or only heard.
   */
  constructor(length: () => number, atOnce: number, turn = 1) {
    this.#length = length;
    this.turn = turn;
    this.#count = atOnce;
    const lacks = $derived(this.count < this.#length());
    $effect(() => {
      if (!lacks) return;
      unfinished = [...unfinished, this];
      if (!asked) ask();
      return () => (unfinished = unfinished.filter((other) => other !== this));
    });
  }

  /** How many rows to draw now. */
  get count(): number {
    return this.#count;
  }

  /** Lets some more rows in. */
  grow(by: number): void {
    this.#count += by;
  }
}
