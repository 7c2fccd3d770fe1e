// Words onto the clipboard, and that they are there.
import { notices } from './notices.svelte';

/** Copies the words and says so; where the system refuses, says what to do instead. */
export async function copyWords(words: string, done: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(words);
    notices.say(done);
  } catch {
    notices.say('It could not be copied. Select the words and copy them by hand.');
  }
}
