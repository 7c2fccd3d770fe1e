// The way one came. Each stop of it keeps what was chosen there and which link led on, so that going back lands on
// that link, and the screen shows what it showed.

/** One entry of the window's history. */
interface Stop {
  kept: Map<string, unknown>;
  left: Link | null;
}

/** A link of a screen, to be found again when the screen is made anew. */
interface Link {
  href: string;
  words: string;
  /** Which one of those that lead there in the same words, from 0. */
  nth: number;
}

/** How long a screen may take to bring its rows back, in milliseconds. */
const PATIENCE = 3000;

let now = numberOf(history.state) ?? number(0);
const stops = new Map<number, Stop>();

/** The number that an entry of the history was given; null for a new one. */
export function numberOf(state: unknown): number | null {
  if (typeof state !== 'object' || state === null || !('stop' in state)) return null;
  return typeof state.stop === 'number' ? state.stop : null;
}

/** Gives the present entry its number. */
function number(stop: number): number {
  history.replaceState({ stop }, '');
  return stop;
}

function stop(): Stop {
  const known = stops.get(now);
  if (known) return known;
  const fresh = { kept: new Map<string, unknown>(), left: null };
  stops.set(now, fresh);
  return fresh;
}

const words = (link: Element) => link.textContent?.trim() ?? '';
const links = (): HTMLAnchorElement[] => [...document.querySelectorAll<HTMLAnchorElement>('main a[href]')];

function linkOf(node: Element | null): Link | null {
  const all = links();
  const found = all.find((link) => link === node);
  if (!found) return null;
  const href = found.getAttribute('href') ?? '';
  const same = all.filter((link) => link.getAttribute('href') === href && words(link) === words(found));
  return { href, words: words(found), nth: same.indexOf(found) };
}

function find({ href, words: said, nth }: Link): HTMLElement | undefined {
  const there = links().filter((link) => link.getAttribute('href') === href);
  const same = there.filter((link) => words(link) === said);
  return same[nth] ?? same[0] ?? there[0];
}

/** What a screen keeps for as long as its stop can be gone back to; made anew where one arrives by a link. */
export function keep<T>(name: string, fresh: () => T): T {
  const { kept } = stop();
  if (!kept.has(name)) kept.set(name, fresh());
  return kept.get(name) as T;
}

/**
 * To be called when the address has changed, before the screen does. Gives what puts the focus on the link that led
 * away, once the screen has it and unless the focus went elsewhere; null where one did not go back.
 */
export function moved(): (() => void) | null {
  stop().left = linkOf(document.activeElement);
  const known = numberOf(history.state);
  if (known === null) {
    // What was ahead can no longer be gone to.
    for (const n of stops.keys()) if (n > now) stops.delete(n);
    now = number(now + 1);
    return null;
  }
  const went = known < now;
  now = known;
  const { left } = stop();
  return went && left ? () => wait(left) : null;
}

function wait(left: Link): void {
  const still = () =>
    document.activeElement === document.body || document.activeElement === document.querySelector('main h1');
  const done = () => {
    if (still()) {
      const link = find(left);
      if (!link) return false;
      link.focus();
    }
    watch.disconnect();
    return true;
  };
  const watch = new MutationObserver(() => void done());
  watch.observe(document.body, { childList: true, subtree: true });
  if (!done()) setTimeout(() => watch.disconnect(), PATIENCE);
}
