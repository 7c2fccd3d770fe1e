// Handing over what was released: begun, looked at until it rests, stopped.
import { call, type Input, type Output } from '../../ipc';

export type Sending = Output<'desk.sending'>;

/** So often it is looked at while messages go out, in milliseconds. */
const SOON = 300;
/** So often while it waits before another try. */
const LATER = 3000;

/** Handing over, as this window sees it. */
class HandingOver {
  /** How it stands; null before the first look. */
  now: Sending | null = $state.raw(null);
  #watching = false;

  /** Begins, or tries at once what waits. Throws what the call throws. */
  async begin(input: Input<'desk.send'> = {}): Promise<Sending> {
    this.now = (await call('desk.send', input)).value;
    void this.watch();
    return this.now;
  }

  /** Sends a trial to the coach. Throws what the call throws. */
  async trial(input: Input<'desk.send_trial'>): Promise<Sending> {
    this.now = (await call('desk.send_trial', input)).value;
    void this.watch();
    return this.now;
  }

  /** Stops after the message under way. */
  async stop(): Promise<void> {
    this.now = (await call('desk.stop_sending', {})).value;
  }

  /** Looks until it rests. */
  async watch(): Promise<void> {
    if (this.#watching) return;
    this.#watching = true;
    try {
      for (;;) {
        this.now = (await call('desk.sending', {})).value;
        if (this.now.stage !== 'sending' && this.now.stage !== 'pausing') return;
        const wait = this.now.stage === 'sending' ? SOON : LATER;
        await new Promise((then) => setTimeout(then, wait));
      }
    } catch {
      // No file is open any more.
      this.now = null;
    } finally {
      this.#watching = false;
    }
  }
}

/** Handing over in this window. */
export const handingOver = new HandingOver();
