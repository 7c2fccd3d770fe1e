// The state of one form: what was typed, what is wrong with it, whether it is on its way.
// What was typed is kept whatever the answer; a form is cleared only by whoever owns it.
import { getContext, setContext, tick } from 'svelte';
import { firstField } from './focus';
import { inFormOrder, toTrouble, wordsFor, type Problem, type Trouble } from './problems';

let made = 0;

/** The state of one form; V is the shape of what is typed. */
export class FormState<V extends object> {
  /** What stands in the fields; bind fields to its parts. */
  values = $state<V>({} as V);
  /** All that is wrong, in the order of the form. */
  problems: Problem[] = $state([]);
  /** What could not be done, when it concerns no field; null when nothing is. */
  trouble: Trouble | null = $state(null);
  /** True while an answer is awaited. A second submit meanwhile does nothing. */
  busy = $state(false);

  readonly #id = `form-${++made}`;
  #fields: string[] = [];

  constructor(values: V) {
    this.values = values;
  }

  /** The id of a field's control on the page. */
  idOf(field: string): string {
    return `${this.#id}-${field}`;
  }

  /** A field says that it stands on this form; returns how to take it off again. */
  place(field: string): () => void {
    this.#fields.push(field);
    return () => {
      // Only its own place: another field of that name may have come before this one went.
      const at = this.#fields.indexOf(field);
      if (at >= 0) this.#fields = this.#fields.toSpliced(at, 1);
    };
  }

  /** Whether the form has such a field, so that a problem can be linked to it. */
  has(field: string): boolean {
    return this.#fields.includes(field);
  }

  /** What is wrong with one field, in words, or null. */
  problem(field: string): string | null {
    return wordsFor(this.problems, field);
  }

  /** Says that something is wrong, as a refusal would. */
  async refuse(problems: Problem[]): Promise<void> {
    this.problems = inFormOrder(problems, this.#order());
    await this.#focusFirst();
  }

  /**
   * Runs the act with what was typed. Returns its value, or null when it was refused or failed: then everything
   * typed is kept, the problems stand at their fields and the first wrong field has the focus.
   */
  async submit<T>(act: (values: V) => Promise<T>): Promise<T | null> {
    if (this.busy) return null;
    this.busy = true;
    this.problems = [];
    this.trouble = null;
    try {
      return await act($state.snapshot(this.values) as V);
    } catch (thrown) {
      const trouble = toTrouble(thrown);
      this.busy = false;
      if (trouble.problems.length > 0) await this.refuse(trouble.problems);
      else this.trouble = trouble;
      return null;
    } finally {
      this.busy = false;
    }
  }

  /** Moves the focus to a field's control. */
  focus(field: string): void {
    const node = typeof document === 'undefined' ? null : document.getElementById(this.idOf(field));
    if (!node) return;
    const inner = node.matches('input, select, textarea')
      ? node
      : (firstField(node) ?? node.querySelector<HTMLElement>('[tabindex="0"]'));
    (inner instanceof HTMLElement ? inner : node).focus();
  }

  /** Fields in the order in which they stand on the page, else as they were placed. */
  #order(): string[] {
    if (typeof document === 'undefined') return this.#fields;
    const at = (f: string) => document.getElementById(this.idOf(f));
    return [...this.#fields].sort((a, b) => {
      const [x, y] = [at(a), at(b)];
      if (!x || !y) return 0;
      return x.compareDocumentPosition(y) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1;
    });
  }

  async #focusFirst(): Promise<void> {
    await tick();
    const first = this.problems.find((p) => this.has(p.field));
    if (first) this.focus(first.field);
    else if (typeof document !== 'undefined') document.getElementById(this.idOf(SUMMARY))?.focus();
  }
}

/** The name under which the summary of problems stands on the form. */
export const SUMMARY = '(problems)';

const KEY = Symbol('form');

/** A form makes its state known to the fields inside it. */
export function provideForm(form: FormState<object>): void {
  setContext(KEY, form);
}

/** The form around a field, when there is one. */
export function surroundingForm(): FormState<object> | undefined {
  return getContext<FormState<object> | undefined>(KEY);
}
