// Doing an act: it is called, what it did is said with an Undo beside it, and what is shown is read again.
import { call, onChanges, type Answer, type Input, type Name, type Output } from '../../ipc';
import { notices } from '../../kit/notices.svelte';
import { toTrouble, type Trouble } from '../../kit/problems';

/** Calls an act and says what was done; Undo is offered unless `final`. Throws what the call throws. */
export async function doing<N extends Name>(
  name: N,
  input: Input<N>,
  words: string,
  options: { final?: boolean } = {},
): Promise<Output<N>> {
  const answer: Answer<Output<N>> = await call(name, input);
  const act = answer.act;
  if (act && !options.final) notices.say(words, { words: 'Undo', run: () => void undo(act) });
  else notices.say(words);
  return answer.value;
}

/** The same for a button: a failure is said in the notice line instead of thrown. True when it was done. */
export async function tryDoing<N extends Name>(
  name: N,
  input: Input<N>,
  words: string,
  options: { final?: boolean } = {},
): Promise<Output<N> | null> {
  try {
    return await doing(name, input, words, options);
  } catch (thrown) {
    notices.say(toTrouble(thrown).words);
    return null;
  }
}

/** Takes an act back. */
export async function undo(act: string): Promise<void> {
  try {
    const answer = await call('journal.undo', { act });
    notices.say(`Undone: ${answer.value.label}`);
  } catch (thrown) {
    notices.say(toTrouble(thrown).words);
  }
}

/** Something read from the core and shown: read again after every act that changed anything. */
export class Shown<N extends Name> {
  /** What was read last; null until then. */
  value: Output<N> | null = $state.raw(null);
  /** Why it could not be read. */
  trouble: Trouble | null = $state.raw(null);

  readonly #name: N;
  readonly #input: () => Input<N> | null;
  #turn = 0;

  /** Reads at once, whenever the input changes, and after acts; to be made while a component starts. */
  constructor(name: N, input: () => Input<N> | null) {
    this.#name = name;
    this.#input = input;
    $effect(() => {
      void this.#read(this.#input());
      return onChanges(() => void this.again());
    });
  }

  /** Reads again. */
  async again(): Promise<void> {
    await this.#read(this.#input());
  }

  async #read(input: Input<N> | null): Promise<void> {
    const turn = ++this.#turn;
    if (input === null) return;
    try {
      const answer = await call(this.#name, input);
      // An answer that was overtaken by a later question is not shown.
      if (turn !== this.#turn) return;
      this.value = answer.value;
      this.trouble = null;
    } catch (thrown) {
      if (turn === this.#turn) this.trouble = toTrouble(thrown);
    }
  }
}
