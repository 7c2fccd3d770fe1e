// Putting messages into the out-tray, and going there to read them.
import { call, type Input } from '../../ipc';
import { notices } from '../../kit/notices.svelte';
import { toTrouble } from '../../kit/problems';

export type MessageOf = Input<'outtray.put'>['of'];

/** Goes to messages that were put into the tray. */
export function goTo(put: { messages: string[]; already: boolean }): void {
  notices.say(
    put.already
      ? 'It is in the out-tray already: nothing goes out twice for the same.'
      : 'In the out-tray, for you to read.',
  );
  location.hash = put.messages.length === 1 ? `#/out/${put.messages[0]}` : '#/out';
}

/** Puts messages into the tray and goes there; what stands in the way is said. */
export async function putIn(of: MessageOf): Promise<void> {
  try {
    goTo((await call('outtray.put', { of })).value);
  } catch (thrown) {
    notices.say(toTrouble(thrown).words);
  }
}
