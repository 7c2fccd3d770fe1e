// Saving a paper: a notice, an acknowledgement, a report, a scan.
import { call, type Input } from '../../ipc';
import { notices } from '../../kit/notices.svelte';
import { toTrouble } from '../../kit/problems';

/** Saves it where the coach chooses, and says where. */
export async function saveSheet(sheet: Input<'desk.save_sheet'>): Promise<void> {
  try {
    const { path } = (await call('desk.save_sheet', sheet)).value;
    if (path) notices.say(`Saved as ${path}`);
  } catch (thrown) {
    notices.say(toTrouble(thrown).words);
  }
}

/** Opens it in the machine's own reader; only what the program itself wrote as a PDF. */
export async function openSheet(sheet: Input<'desk.open_sheet'>): Promise<void> {
  try {
    await call('desk.open_sheet', sheet);
  } catch (thrown) {
    notices.say(toTrouble(thrown).words);
  }
}
