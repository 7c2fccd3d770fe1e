// What lies on the desk: the coach file that is open, those that were open before.
import { call, type Output } from '../../ipc';
import { toTrouble, type Trouble } from '../../kit/problems';

/** The desk of this window. */
class DeskState {
  /** What lies there; null until it was looked at. */
  now: Output<'desk.look'> | null = $state.raw(null);
  /** Why it could not be looked at. */
  trouble: Trouble | null = $state.raw(null);

  /** Looks again. */
  async look(): Promise<void> {
    try {
      this.now = (await call('desk.look', {})).value;
      this.trouble = null;
    } catch (thrown) {
      this.trouble = toTrouble(thrown);
    }
  }
}

/** The desk of this window. */
export const desk = new DeskState();
