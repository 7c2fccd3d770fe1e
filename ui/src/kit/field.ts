// What every field has in common: its place on a form, its ids, and what is wrong with it.
import { surroundingForm } from './form.svelte';

let made = 0;

/** What a field knows of itself: the id of its control and what is wrong with it. */
export interface Place {
  id: string;
  problem: () => string | null;
}

/** Puts a field on the form around it; alone, it has an id of its own and the problem it is given. */
export function placeField(
  name: string,
  alone: () => string | null | undefined,
): Place & { leave: () => void } {
  const form = surroundingForm();
  if (!form) return { id: `field-${++made}-${name}`, problem: () => alone() ?? null, leave: () => {} };
  return { id: form.idOf(name), problem: () => alone() ?? form.problem(name), leave: form.place(name) };
}

/** What describes a control: its hint and its error sentence, when there are such. */
export function describedBy(id: string, hint: unknown, problem: unknown): string | undefined {
  const ids = [hint ? `${id}-hint` : '', problem ? `${id}-problem` : ''].filter((x) => x !== '');
  return ids.length > 0 ? ids.join(' ') : undefined;
}
