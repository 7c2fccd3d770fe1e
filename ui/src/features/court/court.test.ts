// Counting on court: nothing acknowledged is lost, nothing is counted twice, undo takes the last touch.
import { expect, test } from 'vitest';
import type { Block, Kind, OnCourt } from '../../ipc';
import { Court } from './court.svelte';

/** A core that keeps blocks as the real one does, and fails when it is told to. */
class Hall {
  blocks: Block[] = [];
  fails: 'never' | 'before' | 'after' = 'never';
  constructor(readonly goals: string[]) {}

  onCourt(): Promise<OnCourt[]> {
    return Promise.resolve(
      this.goals.map((id) => {
        const own = this.blocks.filter((b) => b.goal === id);
        return {
          goal: { goal: { id, title: id } },
          how: 'carried',
          open: own.find((b) => !b.ended) ?? null,
          ended: own.filter((b) => b.ended),
          offer: own.some((b) => b.tries.length > 0) ? 'practice' : 'retest',
          waits: false,
        } as unknown as OnCourt;
      }),
    );
  }
  start(goal: string, kind: Kind): Promise<Block> {
    const block = {
      id: `${goal}-${this.blocks.length}`,
      goal,
      kind,
      tries: [],
      ended: false,
    } as unknown as Block;
    this.blocks.push(block);
    return Promise.resolve(block);
  }
  touch(block: string, made: boolean): Promise<Block> {
    if (this.fails === 'before') return Promise.reject(new Error('the disk is full'));
    const counted = this.#change(block, (tries) => [...tries, made]);
    return this.fails === 'after' ? Promise.reject(new Error('no answer')) : Promise.resolve(counted);
  }
  takeBack(block: string): Promise<Block> {
    return Promise.resolve(this.#change(block, (tries) => tries.slice(0, -1)));
  }
  tries(goal: string): boolean[] {
    return this.blocks.filter((b) => b.goal === goal).flatMap((b) => b.tries);
  }
  #change(id: string, change: (tries: boolean[]) => boolean[]): Block {
    const at = this.blocks.findIndex((b) => b.id === id);
    const was = this.blocks[at];
    if (!was) throw new Error(`no block ${id}`);
    return (this.blocks[at] = { ...was, tries: change(was.tries) });
  }
}

async function open(hall: Hall): Promise<Court> {
  const court = new Court(hall);
  await court.read();
  return court;
}

test('the first touch of a carried goal starts its retest, the next ones join it', async () => {
  const hall = new Hall(['lob']);
  const court = await open(hall);
  court.touch('lob', true);
  court.touch('lob', false);
  await court.touches.settled();
  expect(hall.blocks.map((b) => [b.kind, b.tries])).toEqual([['retest', [true, false]]]);
  expect(court.goals?.[0]?.open?.tries).toEqual([true, false]);
});

test('“not now” makes the first block practice, and only the first', async () => {
  const hall = new Hall(['lob']);
  const court = await open(hall);
  court.chosen['lob'] = 'practice';
  court.touch('lob', true);
  await court.touches.settled();
  expect(hall.blocks[0]?.kind).toBe('practice');
  expect(court.chosen).toEqual({});
});

test('a touch that was not written is written once when tried again', async () => {
  const hall = new Hall(['lob']);
  const court = await open(hall);
  hall.fails = 'before';
  court.touch('lob', true);
  court.touch('lob', false);
  await court.touches.settled();
  expect(court.touches.waiting).toHaveLength(2);
  expect(court.goals?.[0]?.open?.tries).toEqual([]);
  hall.fails = 'never';
  court.touches.again();
  await court.touches.settled();
  expect(hall.tries('lob')).toEqual([true, false]);
  expect(hall.blocks).toHaveLength(1);
});

test('a touch that was written and whose answer was lost is not counted twice', async () => {
  const hall = new Hall(['lob']);
  const court = await open(hall);
  hall.fails = 'after';
  court.touch('lob', true);
  await court.touches.settled();
  expect(court.touches.trouble).not.toBeNull();
  hall.fails = 'never';
  court.touches.again();
  await court.touches.settled();
  expect(hall.tries('lob')).toEqual([true]);
  expect(court.goals?.[0]?.open?.tries).toEqual([true]);
});

test('undo takes the last touch back, whichever goal it was on', async () => {
  const hall = new Hall(['lob', 'pinch']);
  const court = await open(hall);
  court.touch('lob', true);
  court.touch('pinch', true);
  court.touch('lob', false);
  await court.takeBack();
  expect([hall.tries('lob'), hall.tries('pinch')]).toEqual([[true], [true]]);
  await court.takeBack();
  expect([hall.tries('lob'), hall.tries('pinch')]).toEqual([[true], []]);
  await court.takeBack();
  expect((await court.takeBack()).what).toBe('nothing');
});

test('undo never reaches past a block that was ended into another goal', async () => {
  const hall = new Hall(['lob', 'pinch']);
  const court = await open(hall);
  court.touch('lob', true);
  court.touch('pinch', true);
  await court.touches.settled();
  hall.blocks = hall.blocks.map((b) => (b.goal === 'pinch' ? { ...b, ended: true } : b));
  await court.read();
  expect((await court.takeBack()).what).toBe('ended');
  expect(hall.tries('lob')).toEqual([true]);
});

test('on a court opened again, undo asks which touch was the last', async () => {
  const hall = new Hall(['lob', 'pinch']);
  const before = await open(hall);
  before.touch('lob', true);
  before.touch('pinch', true);
  await before.touches.settled();
  const court = await open(hall);
  expect((await court.takeBack()).what).toBe('which');
  expect((await court.takeBack('lob')).what).toBe('taken');
  expect([hall.tries('lob'), hall.tries('pinch')]).toEqual([[], [true]]);
});

test('while the line stands still, undo lets go of the newest touch and writes nothing', async () => {
  const hall = new Hall(['lob']);
  const court = await open(hall);
  hall.fails = 'before';
  court.touch('lob', true);
  court.touch('lob', false);
  await court.touches.settled();
  expect((await court.takeBack()).what).toBe('let_go');
  expect(court.touches.waiting.map((t) => t.made)).toEqual([true]);
  expect(hall.tries('lob')).toEqual([]);
});
