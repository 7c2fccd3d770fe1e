// Rows of a form that are added and left out: each has a key of its own, by which the page tells them apart.

let made = 0;

/** A key that no row has yet. */
export const nextKey = (): number => ++made;

/** A row with its key. */
export type Typed<T> = T & { key: number };

/** The row without its key, as it is sent. */
export function withoutKey<T extends { key: number }>(row: T): Omit<T, 'key'> {
  const { key, ...rest } = row;
  void key;
  return rest;
}
