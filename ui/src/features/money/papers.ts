// Papers about money: saved where the coach chooses, or opened.
import { call, type Input } from '../../ipc';
import { notices } from '../../kit/notices.svelte';
import { toTrouble } from '../../kit/problems';

export type MoneyPaper = Input<'desk.save_money_paper'>;

/** Saves a paper, or opens it, and says what came of it. */
export async function takePaper(how: 'save' | 'open', paper: MoneyPaper): Promise<void> {
  const name = how === 'save' ? 'desk.save_money_paper' : 'desk.open_money_paper';
  try {
    const { path } = (await call(name, paper)).value;
    if (path) notices.say(how === 'save' ? `Saved as ${path}` : 'Opened.');
  } catch (thrown) {
    notices.say(toTrouble(thrown).words);
  }
}
