// Keeps the focus from falling to nowhere: what had it and is gone gives it to its row, else its part, else the title.
// Never to the next act, which a second press of the same key would do unasked.

/** What can hold a place: a row, a part of the screen, acts that belong together, a dialog. */
const PLACES = 'li, section, [role="group"], dialog[open]';

/** The way back to a node; says whether there was one. */
export type WayBack = () => boolean;

/** Remembers where a node stands, while it stands there. Nothing scrolls for someone who uses a pointer. */
export function wayBack(node: Element | null): WayBack {
  const places: Element[] = [];
  for (let at = node?.parentElement; at; at = at.parentElement) if (at.matches(PLACES)) places.push(at);
  const quiet = { preventScroll: !node?.matches(':focus-visible') };
  return () => {
    if (node?.isConnected && put(node, quiet)) return true;
    const place = places.find((p) => p.isConnected && p.matches(PLACES));
    return hold((place?.matches('li') ? place : (place?.querySelector('h2') ?? place)) ?? title(), quiet);
  };
}

function title(): Element | null {
  return document.querySelector('main h1');
}

function put(node: Element | null, how: FocusOptions): boolean {
  if (!(node instanceof HTMLElement)) return false;
  node.focus(how);
  return document.activeElement === node;
}

/** The first field in a part of the page; of radio buttons the one that is chosen, as Tab would have it. */
export function firstField(part: Element): HTMLElement | null {
  const first = part.querySelector<HTMLElement>('input, select, textarea');
  const radios = first?.matches('[type="radio"]') ? first.closest('fieldset') : null;
  return radios?.querySelector<HTMLElement>('input:checked') ?? first;
}

/** A row or a heading takes the focus only when it is told to. */
function hold(node: Element | null, how: FocusOptions): boolean {
  if (node instanceof HTMLElement && !node.hasAttribute('tabindex')) node.tabIndex = -1;
  return put(node, how);
}

/** Where the focus goes when it is lost; null while nobody had it, or it was put nowhere on purpose. */
let back: WayBack | null = null;
let had: Element | null = null;

/** Another screen comes: its title takes the focus, as soon as it stands there. */
export function arrive(): void {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  had = null;
  back = () => hold(title(), { preventScroll: true });
  if (back()) back = null;
}

/** Watches over the focus of this window; returns how to stop. */
export function keepFocus(): () => void {
  const lost = () => document.activeElement === document.body || document.activeElement === null;
  const came = (e: FocusEvent) => {
    had = e.target instanceof Element ? e.target : null;
    back = wayBack(had);
  };
  const went = () => {
    const left = had;
    // Once the event is over: a press beside everything leaves what had the focus standing.
    setTimeout(() => {
      if (lost() && left !== null && left === had && left.isConnected) back = null;
    });
  };
  const watch = new MutationObserver(() => {
    if (back && lost() && !had?.isConnected && back()) had = document.activeElement;
  });
  document.addEventListener('focusin', came);
  document.addEventListener('focusout', went);
  watch.observe(document.body, { childList: true, subtree: true });
  return () => {
    document.removeEventListener('focusin', came);
    document.removeEventListener('focusout', went);
    watch.disconnect();
  };
}
