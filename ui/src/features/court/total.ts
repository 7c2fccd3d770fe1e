// Reading a total as it is typed beside the court: "7 of 10", "7/10", "7 10".

/** The count typed, or null when it is none. */
export function readTotal(typed: string): { made: number; tries: number } | null {
  const read = /^\s*(\d{1,5})\s*(?:\/|of|out of|,|\s)\s*(\d{1,5})\s*$/i.exec(typed);
  return read ? { made: Number(read[1]), tries: Number(read[2]) } : null;
}
