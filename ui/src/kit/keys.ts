// Keyboard shortcuts: one registry, so that "?" can show exactly the keys that work now.

/** One shortcut: a key such as "n", "?", "Escape" or "Ctrl+Enter", what it does in words, and the act. */
export interface Shortcut {
  key: string;
  words: string;
  act: () => void;
}

/** The parts of a keyboard event that a shortcut looks at. */
export interface Pressed {
  key: string;
  ctrlKey: boolean;
  metaKey: boolean;
  altKey: boolean;
}

/** The name of a pressed key as a shortcut writes it. Shift is part of the character itself. */
export function keyName(e: Pressed): string {
  const key = e.key.length === 1 ? e.key.toLowerCase() : e.key;
  const with_ = [e.ctrlKey || e.metaKey ? 'Ctrl+' : '', e.altKey ? 'Alt+' : ''].join('');
  return with_ + key;
}

/** Whether a key is a lone character, which typing in a field also produces. */
export function isSingle(key: string): boolean {
  return key.length === 1;
}

/** Whether a key is typing in a field: a lone character, or the field's own undo. */
function types(key: string): boolean {
  return isSingle(key) || key === 'Ctrl+z';
}

/** Whether the focus stands where characters are typed, so that lone characters are not ours. */
export function isTyping(
  target: { tagName?: string; type?: string; isContentEditable?: boolean } | null,
): boolean {
  if (!target) return false;
  if (target.isContentEditable) return true;
  const tag = target.tagName?.toUpperCase();
  if (tag === 'TEXTAREA' || tag === 'SELECT') return true;
  return tag === 'INPUT' && !['checkbox', 'radio', 'button', 'submit'].includes(target.type ?? 'text');
}

/** The shortcuts in force. Later ones win over earlier ones with the same key: a dialog over its screen. */
export class Keys {
  /** Lone characters can be switched off (WCAG 2.2, 2.1.4). */
  singles = true;
  #all: Shortcut[] = [];

  /** Puts shortcuts in force; returns how to withdraw them. */
  add(...shortcuts: Shortcut[]): () => void {
    this.#all.push(...shortcuts);
    return () => {
      this.#all = this.#all.filter((s) => !shortcuts.includes(s));
    };
  }

  /** What works now, one entry a key, in the order of adding. */
  list(): Shortcut[] {
    const last = new Map(this.#all.map((s) => [s.key, s]));
    return this.#all.filter(
      (s) => last.get(s.key) === s && (this.singles || !isSingle(s.key) || s.key === '?'),
    );
  }

  /** Runs the shortcut of a pressed key; says whether there was one. */
  press(e: Pressed, target: Parameters<typeof isTyping>[0]): boolean {
    const key = keyName(e);
    if (types(key) && isTyping(target)) return false;
    const found = this.list().find((s) => s.key === key);
    found?.act();
    return found !== undefined;
  }
}

/** The shortcuts of this window. */
export const keys = new Keys();
