// What is counted on court: the goals as the core has them, and the touches on their way to it.
import type { Block, Kind, OnCourt } from '../../ipc';
import { toTrouble, type Trouble } from '../../kit/problems';
import { Touches, type Touch } from './touches.svelte';

/** What a court asks of the core. */
export interface Core {
  onCourt(): Promise<OnCourt[]>;
  start(goal: string, kind: Kind): Promise<Block>;
  touch(block: string, made: boolean, also?: boolean): Promise<Block>;
  takeBack(block: string): Promise<Block>;
}

/** What came of taking the last touch back. */
export type TakenBack =
  | { what: 'nothing' }
  /** It never was on disk. */
  | { what: 'let_go' }
  /** Its block was ended since. */
  | { what: 'ended' }
  /** It is not known which touch was the last: one of these goals' is to be chosen. */
  | { what: 'which'; goals: OnCourt[] }
  | { what: 'taken'; goal: OnCourt };

/** The goals of a visit on court. */
export class Court {
  /** The goals as last read or acknowledged; null until then. */
  goals: readonly OnCourt[] | null = $state.raw(null);
  /** Why they could not be read. */
  trouble: Trouble | null = $state.raw(null);
  /** What the next block of a goal is, where the coach chose otherwise than offered. */
  chosen: Record<string, Kind> = $state({});
  /** The touches on their way. */
  readonly touches: Touches;

  readonly #core: Core;
  /** Raised by all that makes a reading under way outdated. */
  #turn = 0;
  /** Calls of our own under way, whose changes need no new reading. */
  #own = 0;
  /** Whether a reading waits for the end of a burst. */
  #reading = false;
  /** The goals of the touches acknowledged here, in order. */
  #trail: string[] = [];
  /** The touch that was sent and not acknowledged, and how long its block was before it. */
  #sent: { touch: Touch; block: string | null; tries: number } | null = null;

  constructor(core: Core) {
    this.#core = core;
    this.touches = new Touches((touch) => this.#send(touch));
  }

  /** The goals to be worked on now. */
  get active(): OnCourt[] {
    return this.goals?.filter((g) => !g.waits) ?? [];
  }

  /** The goals that wait because others come first. */
  get waiting(): OnCourt[] {
    return this.goals?.filter((g) => g.waits) ?? [];
  }

  /** What a goal's block is, or would be with the next touch. */
  kind(goal: OnCourt): Kind {
    return goal.open?.kind ?? this.chosen[goal.goal.goal.id] ?? goal.offer;
  }

  /** Reads the goals. */
  async read(): Promise<void> {
    const turn = ++this.#turn;
    try {
      const goals = await this.#core.onCourt();
      // A touch acknowledged meanwhile is newer than what was read.
      if (turn !== this.#turn) return;
      this.goals = goals;
      this.trouble = null;
    } catch (thrown) {
      if (turn === this.#turn) this.trouble = toTrouble(thrown);
    }
  }

  /** Something changed in the coach file: reads, unless it is a touch of our own. */
  changed(): void {
    if (this.#own === 0) void this.read();
  }

  /** Counts a try; the first of a block starts it. */
  touch(goal: string, made: boolean, also?: boolean): void {
    this.touches.add(also === undefined ? { goal, made } : { goal, made, also });
    void this.#readAfter();
  }

  /** Takes the last touch back; with a goal, that goal's last. */
  async takeBack(goal?: string): Promise<TakenBack> {
    if (!goal && this.touches.letGoNewest()) {
      await this.read();
      return { what: 'let_go' };
    }
    await this.touches.settled();
    const tried = (this.goals ?? []).filter((g) => (g.open?.tries.length ?? 0) > 0);
    const last = goal ?? this.#trail.at(-1);
    let from = tried.find((g) => g.goal.goal.id === last);
    if (last && !from) {
      this.#trail.pop();
      return { what: 'ended' };
    }
    if (!from && tried.length > 1) return { what: 'which', goals: tried };
    from ??= tried[0];
    if (!from?.open) return { what: 'nothing' };
    const { id } = from.goal.goal;
    this.#put(await this.#mine(this.#core.takeBack(from.open.id)));
    const at = this.#trail.lastIndexOf(id);
    if (at >= 0) this.#trail.splice(at, 1);
    return { what: 'taken', goal: from };
  }

  async #send(touch: Touch): Promise<void> {
    if (this.#sent?.touch === touch && (await this.#arrived(this.#sent))) {
      this.#acknowledged(touch);
      return;
    }
    this.#sent = { touch, block: null, tries: 0 };
    const goal = this.#goal(touch.goal);
    if (!goal) throw new Error('This goal is no longer at the visit.');
    let open = goal.open;
    if (!open) {
      open = await this.#mine(this.#core.start(touch.goal, this.kind(goal)));
      this.#put(open);
      delete this.chosen[touch.goal];
    }
    this.#sent = { touch, block: open.id, tries: open.tries.length };
    this.#put(await this.#mine(this.#core.touch(open.id, touch.made, touch.also)));
    this.#acknowledged(touch);
  }

  /** Once a burst of touches is over, what is shown is read from the core. */
  async #readAfter(): Promise<void> {
    if (this.#reading) return;
    this.#reading = true;
    await this.touches.settled();
    this.#reading = false;
    if (!this.touches.trouble) await this.read();
  }

  /** After a failure: whether the touch reached the disk all the same and only the answer was lost. */
  async #arrived(sent: { touch: Touch; block: string | null; tries: number }): Promise<boolean> {
    this.#turn += 1;
    this.goals = await this.#core.onCourt();
    const open = this.#goal(sent.touch.goal)?.open;
    return (
      open?.id === sent.block &&
      open?.tries.length === sent.tries + 1 &&
      open.tries.at(-1) === sent.touch.made
    );
  }

  #acknowledged(touch: Touch): void {
    this.#sent = null;
    this.#trail.push(touch.goal);
  }

  #goal(id: string): OnCourt | undefined {
    return this.goals?.find((g) => g.goal.goal.id === id);
  }

  /** Shows a block as the core just gave it. */
  #put(block: Block): void {
    this.#turn += 1;
    this.goals = this.goals?.map((g) => (g.goal.goal.id === block.goal ? { ...g, open: block } : g)) ?? null;
  }

  async #mine<T>(call: Promise<T>): Promise<T> {
    this.#own += 1;
    try {
      return await call;
    } finally {
      this.#own -= 1;
    }
  }
}
