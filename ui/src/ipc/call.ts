// Calls one command of the table, typed by its name.
import { readAnswer, readError, type Answer, type Changed } from './answer';
import type { Commands } from './bindings';
import { transportOf, type Transport } from './transport';

/** The name of a command. */
export type Name = keyof Commands;
/** What a command takes. */
export type Input<N extends Name> = Commands[N] extends { input: infer I } ? I : never;
/** What a command gives. */
export type Output<N extends Name> = Commands[N] extends { output: infer O } ? O : never;

let transport: Transport | undefined;

/** Calls a command; resolves with its value and what changed, or throws a CallError. */
export async function call<N extends Name>(name: N, input: Input<N>): Promise<Answer<Output<N>>> {
  transport ??= transportOf(document);
  let raw: unknown;
  try {
    raw = await transport(name, input);
  } catch (thrown) {
    throw readError(thrown);
  }
  const answer = readAnswer<Output<N>>(raw);
  if (answer.changes.length > 0) for (const told of [...listeners]) told(answer.changes);
  return answer;
}

type Listener = (changes: readonly Changed[]) => void;
const listeners = new Set<Listener>();

/** Told after every act that changed something, so that what is shown can be read again. Returns how to stop. */
export function onChanges(told: Listener): () => void {
  listeners.add(told);
  return () => listeners.delete(told);
}
