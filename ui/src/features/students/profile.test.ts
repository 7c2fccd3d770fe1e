// A profile goes into the form and out again unchanged.
import { expect, test } from 'vitest';
import { foundWords, subWords, toForm, toProfile } from './profile';

test('what is not known stays not known', () => {
  expect(toProfile(toForm({ name: 'Ana' }))).toMatchObject({ name: 'Ana', hand: null, plays: null });
});

test('a guardian is kept', () => {
  const profile = toProfile(
    toForm({ guardian: { name: 'K', relation: 'mother', email: '', phone: '', address: '' } }),
  );
  expect(profile.guardian).toMatchObject({ name: 'K', relation: 'mother' });
});

test('the line under the name says only what is known', () => {
  expect(subWords({ hand: 'left', plays: 'doubles' }, 61)).toBe('left-handed · doubles · 61');
  expect(subWords({ hand: null, plays: null }, null)).toBe('');
  expect(subWords({ hand: null, plays: null }, 13)).toBe('13, a minor');
});

test('the list of people tells what it found and what it left out', () => {
  expect(foundWords(10_000, 200, '')).toBe('And 9800 more: type more of the name.');
  expect(foundWords(1, 200, 'ana')).toBe('One found.');
  expect(foundWords(200, 200, 'a')).toBe('200 found.');
  expect(foundWords(12, 200, ' ')).toBe('');
  expect(foundWords(0, 200, 'zz')).toBe('');
});
