// What was just done: one line, whose act is run once.
import { expect, test } from 'vitest';
import { Notices } from './notices.svelte';

test('the act beside the line is run once, and the words stay until what it did is said', () => {
  const notices = new Notices();
  let undone = 0;
  notices.say('Goal set: Lob serve', { words: 'Undo', run: () => (undone += 1) });
  notices.run();
  notices.run();
  expect(undone, 'a second press comes too late').toBe(1);
  expect(notices.now).toEqual({ words: 'Goal set: Lob serve' });
});

test('an act that says something at once is not covered by the words before', () => {
  const notices = new Notices();
  notices.say('Visit closed.', { words: 'Undo', run: () => notices.say('Undone: Visit closed') });
  notices.run();
  expect(notices.now).toEqual({ words: 'Undone: Visit closed' });
});
