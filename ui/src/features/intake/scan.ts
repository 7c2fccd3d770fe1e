// A signed paper on its way into the coach file: read in the page, bounded before it is read.

/** A scan as the core takes it. */
export interface Scan {
  name: string;
  base64: string;
}

/** The most bytes a scan has; the core says the same. */
export const MOST_BYTES = 8 * 1024 * 1024;

/** Why a file cannot be taken, in words, or null. */
export function scanTrouble(name: string, bytes: number): string | null {
  if (bytes > MOST_BYTES)
    return `“${name}” has ${Math.ceil(bytes / 1024 / 1024)} MB; there is room for 8. Scan it in black and white or with fewer dots. Nothing else was lost.`;
  if (bytes === 0) return `“${name}” is empty.`;
  return null;
}
