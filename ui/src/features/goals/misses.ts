// Reasons for misses: what is offered, and what was typed.

/** Offered while a student has no reasons of their own yet; common practice, no source. */
const FIRST = ['too high', 'too low', 'late', 'feet'];
const MOST = 6;

/** The reasons to offer: those given for this block, then the most frequent, then usual ones. */
export function usual(given: readonly string[], before: readonly string[]): string[] {
  const others = [...before, ...FIRST].filter((reason) => !given.includes(reason));
  return [...given, ...new Set(others)].slice(0, Math.max(MOST, given.length));
}

/** The reasons with a number typed; a number that is none is sent as 0, and refused in words. */
export function reasonsTyped(
  rows: readonly { reason: string; times: string }[],
  more: string,
  moreTimes: string,
): { reason: string; times: number }[] {
  const number = (typed: string) => (/^\d{1,5}$/.test(typed.trim()) ? Number(typed.trim()) : 0);
  const typed = rows
    .filter((row) => row.times.trim() !== '')
    .map((row) => ({ reason: row.reason, times: number(row.times) }));
  if (more.trim() !== '' || moreTimes.trim() !== '') typed.push({ reason: more, times: number(moreTimes) });
  return typed;
}
