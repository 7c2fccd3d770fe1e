// Whole numbers as they are typed.

/** The number; `none` for an empty field, and −1 for what is no whole number, which is refused in words. */
export function readWhole(typed: string, none = 0): number {
  const text = typed.trim();
  if (text === '') return none;
  return /^\d{1,6}$/.test(text) ? Number(text) : -1;
}

/** A number in its field; 0 stands for no such thing and leaves it empty. */
export function typedWhole(n: number | undefined): string {
  return n ? String(n) : '';
}
