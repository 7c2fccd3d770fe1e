// A number with its noun.

/** "1 day", "3 days"; a third word where the plural is another. */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}
