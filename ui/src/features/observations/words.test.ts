// What is said of something seen.
import { expect, test } from 'vitest';
import { seenWords } from './words';

test('how often, and where it was last', () => {
  const seen = (place: string) => [{ day: '2026-03-03', visit: null, lesson: null, place }];
  expect(seenWords({ often: 'third time', seen: seen('game 2') })).toMatch(
    /^third time · last on .*, game 2$/,
  );
  expect(seenWords({ often: 'first time', seen: seen('') })).not.toMatch(/,\s*$/);
  expect(seenWords({ often: 'first time', seen: [] })).toBe('first time');
});
