// What a refused form is told: all its problems at once, each with the field it concerns.

/** One thing that is wrong, in words for the person at the form. */
export interface Problem {
  field: string;
  code: string;
  words: string;
}

/** An error that a screen can show: what could not be done, why, and the way out. */
export interface Trouble {
  code: string;
  title: string;
  words: string;
  way_out: string;
  problems: Problem[];
  details?: string | undefined;
}

/** Whether something that was thrown says all that a person needs to be told. */
export function isTrouble(thrown: unknown): thrown is Trouble {
  if (typeof thrown !== 'object' || thrown === null) return false;
  const t = thrown as Record<string, unknown>;
  return (
    typeof t['code'] === 'string' &&
    typeof t['title'] === 'string' &&
    typeof t['words'] === 'string' &&
    typeof t['way_out'] === 'string' &&
    Array.isArray(t['problems'])
  );
}

/** The trouble to show for anything thrown: a thrown thing that is not one is a fault in the program. */
export function toTrouble(thrown: unknown): Trouble {
  if (isTrouble(thrown)) return thrown;
  return {
    code: 'fault',
    title: 'A fault in the program',
    words: thrown instanceof Error ? thrown.message : String(thrown),
    way_out: 'Nothing was changed by this. Try again; if it happens again, copy the details.',
    problems: [],
  };
}

/** The words for one field, all of them, or null. */
export function wordsFor(problems: readonly Problem[], field: string): string | null {
  const own = problems.filter((p) => p.field === field).map((p) => p.words);
  return own.length > 0 ? own.join(' ') : null;
}

/** Problems in the order in which the fields stand on the form; those of no field there come last. */
export function inFormOrder(problems: readonly Problem[], order: readonly string[]): Problem[] {
  const place = (p: Problem) => {
    const at = order.indexOf(p.field);
    return at < 0 ? order.length : at;
  };
  return [...problems].sort((a, b) => place(a) - place(b));
}

/** What "copy details" puts on the clipboard. */
export function details(trouble: Trouble): string {
  const lines = [trouble.title, trouble.words, `code: ${trouble.code}`];
  if (trouble.details) lines.push(`details: ${trouble.details}`);
  for (const p of trouble.problems) lines.push(`${p.field} (${p.code}): ${p.words}`);
  return lines.join('\n');
}
