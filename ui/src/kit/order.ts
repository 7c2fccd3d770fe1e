// Rows that are put in order by hand.

/** The rows with one moved up (-1) or down (1); as they are where there is no room. */
export function moved<T extends { key: number }>(rows: readonly T[], key: number, by: number): T[] {
  const order = [...rows];
  const at = order.findIndex((row) => row.key === key);
  const to = at + by;
  const row = order[at];
  if (!row || to < 0 || to >= order.length) return order;
  order.splice(at, 1);
  order.splice(to, 0, row);
  return order;
}
