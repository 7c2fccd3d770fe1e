// Court hours of a week as they are typed; kept in minutes.

/**
 * Minutes for 4, 4.5, 4,5, 4:30, 4 h, 90 min; null for nothing typed. What cannot be read becomes -1, which the core
 * refuses in words together with whatever else is wrong.
 */
export function readHours(typed: string): number | null {
  const text = typed.trim().toLowerCase();
  if (text === '') return null;
  const minutes = /^(\d{1,5})\s*min$/.exec(text);
  if (minutes) return Number(minutes[1]);
  const clock = /^(\d{1,3}):([0-5]\d)$/.exec(text);
  if (clock) return Number(clock[1]) * 60 + Number(clock[2]);
  const hours = /^(\d{1,3}(?:[.,]\d{1,2})?)\s*(?:h|hours?)?$/.exec(text);
  return hours ? Math.round(Number((hours[1] ?? '').replace(',', '.')) * 60) : -1;
}

/** Minutes as they stand in the field: 4, 4.5, 4:10. */
export function hoursTyped(minutes: number | null): string {
  if (minutes === null) return '';
  if (minutes % 30 === 0) return String(minutes / 60);
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
}
