// A plan being made: begun anew whenever what is asked changes, looked at until it is done, stopped when left.
import { call, type AskPlan, type PlanLook } from '../../ipc';
import { toTrouble, type Trouble } from '../../kit/problems';

/** So long an answer waits before the page shows that it is at work, in milliseconds. */
const AT_ONCE = 250;
/** So often it is looked at. */
const AGAIN = 250;

/** A plan being made. */
export class Making {
  /** How far it is; null until the first answer. */
  look: PlanLook | null = $state.raw(null);
  /** Why it could not be begun. */
  trouble: Trouble | null = $state.raw(null);
  /** True from the moment it is asked for until it is done. */
  busy = $state(false);

  #job: string | null = null;
  #turn = 0;

  /** Begins; whatever was begun before is stopped. */
  async begin(plan: AskPlan): Promise<void> {
    const turn = ++this.#turn;
    void this.#stopJob();
    this.busy = true;
    this.trouble = null;
    try {
      const { job, look } = (await call('planning.begin', { plan, wait: AT_ONCE })).value;
      if (turn !== this.#turn) {
        void call('planning.stop', { job });
        return;
      }
      this.#job = job;
      this.look = look;
      while (turn === this.#turn && going(this.look)) {
        await new Promise((then) => setTimeout(then, AGAIN));
        if (turn !== this.#turn) return;
        this.look = (await call('planning.look', { job })).value;
      }
    } catch (thrown) {
      if (turn !== this.#turn) return;
      this.look = null;
      this.trouble = toTrouble(thrown);
    }
    if (turn === this.#turn) this.busy = false;
  }

  /** Stops it; what was found so far stays. */
  async stop(): Promise<void> {
    this.#turn++;
    this.busy = false;
    const look = await this.#stopJob();
    if (look) this.look = look;
  }

  /** The page is left. */
  leave(): void {
    this.#turn++;
    void this.#stopJob();
  }

  async #stopJob(): Promise<PlanLook | null> {
    const job = this.#job;
    this.#job = null;
    if (!job) return null;
    try {
      return (await call('planning.stop', { job })).value;
    } catch {
      return null; // It is gone, which is what was wanted.
    }
  }
}

/** Whether it is still at work. */
export function going(look: PlanLook | null): boolean {
  return look?.stage === 'planning' || look?.stage === 'trying';
}
