// Who accepts something: the fields of a form.
import type { Scan } from './scan';

/** What the fields hold. */
export interface Accepting {
  name: string;
  relation: 'self' | 'guardian';
  as_what: string;
  day: string;
  how: 'screen' | 'paper';
  scan: Scan | null;
}

/** Empty fields; for a minor the guardian stands there. */
export function accepting(
  today: string,
  minor: boolean,
  guardian: { name: string; relation?: string } | null,
): Accepting {
  return {
    name: '',
    relation: minor ? 'guardian' : 'self',
    as_what: minor ? (guardian?.relation ?? '') : '',
    day: today,
    how: 'screen',
    scan: null,
  };
}
