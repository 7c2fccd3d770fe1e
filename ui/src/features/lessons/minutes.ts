// Minutes as they are typed.

/** A whole number of minutes, or null when it is none. */
export function readMinutes(typed: string): number | null {
  const text = typed.trim().replace(/\s*min(utes?)?\.?$/i, '');
  return /^\d{1,4}$/.test(text) ? Number(text) : null;
}

/** What is wrong when it is none. */
export const NO_MINUTES = 'Write the minutes as a whole number, as in 60.';
