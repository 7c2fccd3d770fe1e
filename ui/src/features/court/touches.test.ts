// The line of touches: in order, one at a time, nothing lost on a failure.
import { expect, test } from 'vitest';
import { Touches } from './touches.svelte';

test('touches are sent one at a time and in order', async () => {
  const sent: string[] = [];
  let under = 0;
  const line = new Touches(async (touch) => {
    under += 1;
    expect(under, 'a touch is on disk before the next is sent').toBe(1);
    await new Promise((done) => setTimeout(done, 2));
    sent.push(`${touch.goal}${touch.made ? 1 : 0}`);
    under -= 1;
  });
  line.add({ goal: 'a', made: true });
  line.add({ goal: 'a', made: false });
  line.add({ goal: 'b', made: true });
  expect(line.waiting).toHaveLength(3);
  await line.settled();
  expect(sent).toEqual(['a1', 'a0', 'b1']);
  expect(line.waiting).toHaveLength(0);
});

test('a touch that joins just as the line ends is sent as well', async () => {
  const sent: string[] = [];
  const line: Touches = new Touches((touch) => {
    sent.push(touch.goal);
    if (touch.goal === 'a')
      void Promise.resolve().then(
        () => void Promise.resolve().then(() => line.add({ goal: 'b', made: true })),
      );
    return Promise.resolve();
  });
  line.add({ goal: 'a', made: true });
  await line.settled();
  await line.settled();
  expect(sent).toEqual(['a', 'b']);
});

test('a touch that could not be written waits, and goes first when tried again', async () => {
  const sent: boolean[] = [];
  let full = true;
  const line = new Touches((touch) => {
    if (full) return Promise.reject(new Error('the disk is full'));
    sent.push(touch.made);
    return Promise.resolve();
  });
  line.add({ goal: 'a', made: true });
  line.add({ goal: 'a', made: false });
  await line.settled();
  expect(line.trouble).not.toBeNull();
  expect(line.waiting).toHaveLength(2);
  full = false;
  line.again();
  await line.settled();
  expect(sent).toEqual([true, false]);
});

test('what could not be written can be let go, newest first', async () => {
  const line = new Touches(() => Promise.reject(new Error('the disk is full')));
  expect(line.letGoNewest(), 'a line that moves keeps its touches').toBe(false);
  line.add({ goal: 'a', made: true });
  line.add({ goal: 'b', made: true });
  await line.settled();
  expect(line.letGoNewest()).toBe(true);
  expect(line.waiting.map((t) => t.goal)).toEqual(['a']);
  expect(line.letGoNewest()).toBe(true);
  expect(line.trouble).toBeNull();
});
