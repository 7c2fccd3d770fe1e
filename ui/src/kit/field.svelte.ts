// What every field has in common: its place on a form, its ids, and what is wrong with it.
import { untrack } from 'svelte';
import { surroundingForm } from './form.svelte';

let made = 0;

/** What a field knows of itself: the id of its control and what is wrong with it. */
export interface Place {
  readonly id: string;
  problem: () => string | null;
}

/**
 * Puts a field on the form around it, for as long as it is on the page; alone, it has an id of its own and the
 * problem it is given. Its name may change while it stands there, as it does in a row that moves.
 */
export function placeField(name: () => string, alone: () => string | null | undefined): Place {
  const form = surroundingForm();
  if (!form) {
    const id = `field-${++made}-${untrack(name)}`;
    return { id, problem: () => alone() ?? null };
  }
  $effect.pre(() => form.place(name()));
  return {
    get id() {
      return form.idOf(name());
    },
    problem: () => alone() ?? form.problem(name()),
  };
}

/** What describes a control: its hint and its error sentence, when there are such. */
export function describedBy(id: string, hint: unknown, problem: unknown): string | undefined {
  const ids = [hint ? `${id}-hint` : '', problem ? `${id}-problem` : ''].filter((x) => x !== '');
  return ids.length > 0 ? ids.join(' ') : undefined;
}
