// The line of touches: in order, one at a time, nothing lost on a failure.
import { expect, test } from 'vitest';
import { Touches } from './touches.svelte';

test('touches are sent one at a time and in order', async () => {
  const sent: string[] = [];
  let under = 0;
  const line = new Touches(async (touch) => {
    under += 1;
    expect(under).toBe(1);
    await new Promise((done) => setTimeout(done, 2));
    sent.push(`${touch.goal}${touch.made ? 1 : 0}`);
    under -= 1;
  });
  line.add('a', true);
  line.add('a', false);
  line.add('b', true);
  expect(line.waiting).toHaveLength(3);
  await line.settled();
  expect(sent).toEqual(['a1', 'a0', 'b1']);
  expect(line.waiting).toHaveLength(0);
});

test('a touch that could not be written waits, and goes first when tried again', async () => {
  const sent: boolean[] = [];
  let full = true;
  const line = new Touches((touch) => {
    if (full) return Promise.reject(new Error('the disk is full'));
    sent.push(touch.made);
    return Promise.resolve();
  });
  line.add('a', true);
  line.add('a', false);
  await line.settled();
  expect(line.trouble).not.toBeNull();
  expect(line.waiting).toHaveLength(2);
  full = false;
  await line.again();
  await line.settled();
  expect(sent).toEqual([true, false]);
});
