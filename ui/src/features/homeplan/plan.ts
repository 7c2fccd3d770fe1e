// A home plan as the editor holds it: every field as typed, each line with a key of its own.
import type { HomePlan, Input, ProposedLine } from '../../ipc';

/** A line as it is typed. */
export interface TypedLine {
  /** Tells lines apart on the page while they are moved. */
  key: number;
  /** The line it was in the file; null for a new one. */
  line: string | null;
  goal: string | null;
  /** That goal's title; '' without one. */
  title: string;
  what: string;
  amount: string;
  unit: 'tries' | 'minutes';
  a_week: string;
}

/** A plan as it is typed. */
export interface TypedPlan {
  warm_up: string;
  note: string;
  lines: TypedLine[];
}

let made = 0;

/** An empty line. */
export const newLine = (): TypedLine => ({
  key: ++made,
  line: null,
  goal: null,
  title: '',
  what: '',
  amount: '',
  unit: 'tries',
  a_week: '3',
});

/** A line that a carried goal suggests. */
export const proposed = (from: ProposedLine): TypedLine => ({
  ...newLine(),
  goal: from.goal,
  title: from.title,
  what: from.what,
  amount: String(from.amount),
  a_week: String(from.a_week),
});

/** A plan to change, or what a new one begins with. */
export function toTyped(plan: HomePlan | null, warmUp: string): TypedPlan {
  if (!plan) return { warm_up: warmUp, note: '', lines: [] };
  return {
    warm_up: plan.warm_up,
    note: plan.note,
    lines: plan.lines.map((l) => ({
      key: ++made,
      line: l.id,
      goal: l.goal,
      title: l.title,
      what: l.what,
      amount: String(l.amount),
      unit: l.unit,
      a_week: String(l.a_week),
    })),
  };
}

/** A whole number as people type it: 20, 10,000, 10 000; what cannot be read becomes 0, which the core refuses. */
export function readCount(typed: string): number {
  const text = typed.trim().replace(/(?<=\d)[,.\s](?=\d{3}\b)/g, '');
  return /^\d{1,9}$/.test(text) ? Number(text) : 0;
}

/** What is sent. */
export function toInput(visit: string, plan: TypedPlan): Input<'home.plan'> {
  return {
    visit,
    warm_up: plan.warm_up,
    note: plan.note,
    lines: plan.lines.map((l) => ({
      line: l.line,
      goal: l.goal,
      what: l.what,
      amount: readCount(l.amount),
      unit: l.unit,
      a_week: readCount(l.a_week),
    })),
  };
}

/** The goals that no line works for yet. */
export const open = (proposals: readonly ProposedLine[], lines: readonly TypedLine[]): ProposedLine[] =>
  proposals.filter((p) => lines.every((l) => l.goal !== p.goal));
