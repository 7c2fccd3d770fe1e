// Lessons in words.
import { expect, test } from 'vitest';
import { atHand, nthWords } from './words';

test('a lesson called off or missed is not counted', () => {
  const lessons = [
    { id: 'a', state: 'given' as const },
    { id: 'b', state: 'called_off' as const },
    { id: 'c', state: 'missed' as const },
    { id: 'd', state: 'planned' as const },
  ];
  expect(nthWords(lessons, 'd')).toBe('lesson 2 of 2');
  expect(nthWords(lessons, 'b')).toBe('');
  expect(nthWords(lessons, null)).toBe('');
});

test('the lesson at hand is the one that runs or begins within half an hour', () => {
  const at = (starts: string, state: 'planned' | 'given' = 'planned') => ({
    day: '2026-11-25',
    starts,
    state,
    which: 'once' as const,
    minutes: 60,
    zone: 'UTC',
  });
  const lessons = [at('08:00', 'given'), at('09:30'), at('11:00')];
  const found = (time: string) => atHand(lessons, Date.parse(`2026-11-25T${time}Z`))?.starts;
  expect(found('08:15:00')).toBeUndefined();
  expect(found('09:00:00')).toBe('09:30');
  expect(found('10:29:59')).toBe('09:30');
  expect(found('10:30:00')).toBe('11:00');
});
