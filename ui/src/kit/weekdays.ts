// Days of the week in words.

/** The days, Monday first, as ISO 8601 numbers them from 1. */
export const WEEKDAYS = [
  { short: 'Mon', long: 'Monday' },
  { short: 'Tue', long: 'Tuesday' },
  { short: 'Wed', long: 'Wednesday' },
  { short: 'Thu', long: 'Thursday' },
  { short: 'Fri', long: 'Friday' },
  { short: 'Sat', long: 'Saturday' },
  { short: 'Sun', long: 'Sunday' },
] as const;

const short = (day: number) => WEEKDAYS[day - 1]?.short ?? '';

/** "Mon to Fri", "Tue, Thu", "every day": runs of three or more as a span. */
export function weekdayWords(days: readonly number[]): string {
  if (days.length === 0 || days.length === 7) return 'every day';
  const runs: number[][] = [];
  for (const day of days) {
    const last = runs.at(-1);
    if (last && last.at(-1) === day - 1) last.push(day);
    else runs.push([day]);
  }
  return runs
    .flatMap((run) =>
      run.length > 2 ? [`${short(run[0] ?? 0)} to ${short(run.at(-1) ?? 0)}`] : run.map(short),
    )
    .join(', ');
}
