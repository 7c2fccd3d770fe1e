// Reads what comes back from the core: an answer, or an error with its words. Pure, so that it is tested without either.
import { codeWords, isCode, type Code } from './words';

/** One thing that changed: its kind, as in "goal", and which one. */
export interface Changed {
  kind: string;
  id: string;
}

/** The value of a command, the things it changed, and the act that Undo would take back. */
export interface Answer<T> {
  value: T;
  changes: Changed[];
  act: string | null;
}

/** One thing that is wrong with what was sent. */
export interface FieldProblem {
  field: string;
  code: string;
  words: string;
}

/** What a command could not do: its code, the words for a person, and each wrong field. */
export class CallError extends Error {
  readonly code: Code;
  readonly words: string;
  readonly problems: FieldProblem[];
  readonly details: string | undefined;

  constructor(code: Code, words: string, problems: FieldProblem[] = [], details?: string) {
    super(words);
    this.name = 'CallError';
    this.code = code;
    this.words = words;
    this.problems = problems;
    this.details = details;
  }

  /** What this kind of error is called. */
  get title(): string {
    return codeWords[this.code].title;
  }

  /** What to do now. */
  get way_out(): string {
    return codeWords[this.code].way_out;
  }
}

function isRecord(x: unknown): x is Record<string, unknown> {
  return typeof x === 'object' && x !== null && !Array.isArray(x);
}

function isProblem(x: unknown): x is FieldProblem {
  return (
    isRecord(x) &&
    typeof x['field'] === 'string' &&
    typeof x['code'] === 'string' &&
    typeof x['words'] === 'string'
  );
}

function isChanged(x: unknown): x is Changed {
  return isRecord(x) && typeof x['kind'] === 'string' && typeof x['id'] === 'string';
}

/** The error in what was thrown or sent, bare or under "error". What cannot be read as one is a fault. */
export function readError(raw: unknown): CallError {
  if (raw instanceof CallError) return raw;
  const inner = isRecord(raw) && isRecord(raw['error']) ? raw['error'] : raw;
  if (isRecord(inner) && isCode(inner['code']) && typeof inner['words'] === 'string') {
    const listed: unknown = inner['problems'] ?? [];
    const problems = Array.isArray(listed) ? listed.filter(isProblem) : [];
    const details = typeof inner['details'] === 'string' ? inner['details'] : undefined;
    return new CallError(inner['code'], inner['words'], problems, details);
  }
  const said = raw instanceof Error ? raw.message : typeof raw === 'string' ? raw : JSON.stringify(raw);
  return new CallError('fault', `The program gave no readable answer: ${said}`);
}

/** The answer in what was sent; throws the error it carries. */
export function readAnswer<T>(raw: unknown): Answer<T> {
  if (isRecord(raw) && 'value' in raw && Array.isArray(raw['changes'])) {
    return {
      value: raw['value'] as T,
      changes: raw['changes'].filter(isChanged),
      act: typeof raw['act'] === 'string' ? raw['act'] : null,
    };
  }
  throw readError(raw);
}

/** Throws what was thrown, the fields of a refusal called as a form calls them; anything else as it is. */
export function renamed(thrown: unknown, name: (field: string) => string): never {
  if (!(thrown instanceof CallError)) throw thrown;
  const problems = thrown.problems.map((p) => ({ ...p, field: name(p.field) }));
  throw new CallError(thrown.code, thrown.words, problems, thrown.details);
}
