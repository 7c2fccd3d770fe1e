// Long lists come onto the page a few rows with each frame: what is in sight stands at once, and the page answers while
// the rest follows.

/** A frame longer than this, in milliseconds, had too much to do. */
const LONG = 24;

/** The lists of this window that are not yet whole, in the order in which they came. */
let unfinished: readonly Growing[] = [];
let share = 2;
let before: number | null = null;
let asked = false;

/** One frame: a few more rows for the first list that lacks some; fewer after a long frame, one more after a short. */
function frame(now: number): void {
  if (before !== null) share = now - before > LONG ? Math.max(1, Math.floor(share / 2)) : share + 1;
  before = now;
  const [first] = unfinished;
  first?.grow(share);
  if (unfinished.length > 0) return ask();
  asked = false;
  before = null;
}

function ask(): void {
  asked = true;
  requestAnimationFrame(frame);
}

/** How many rows of a list stand so far. To be made while a component is; it ends with it. */
export class Growing {
  #count = $state(0);
  readonly #length: () => number;

  /**
   * @param length How many rows there are in all.
   * @param atOnce How many stand at once: as many as are in sight.
   */
  constructor(length: () => number, atOnce: number) {
    this.#length = length;
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
