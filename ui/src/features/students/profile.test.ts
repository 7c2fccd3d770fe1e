// A profile goes into the form and out again unchanged.
import { expect, test } from 'vitest';
import { foundWords, otherSportWords, playsWords, subWords, toForm, toProfile } from './profile';

test('what is not known stays not known', () => {
  expect(toProfile(toForm({ name: 'Ana' }))).toMatchObject({ name: 'Ana', hand: null, plays: null });
});

test('a guardian is kept', () => {
  const profile = toProfile(
    toForm({ guardian: { name: 'K', relation: 'mother', email: '', phone: '', address: '' } }),
  );
  expect(profile.guardian).toMatchObject({ name: 'K', relation: 'mother' });
});

test('hours are typed and minutes are kept; not known stays not known', () => {
  expect(toForm({ usual_minutes: 270 }).usual).toBe('4.5');
  expect(toProfile(toForm({ usual_minutes: 270 })).usual_minutes).toBe(270);
  expect(toProfile(toForm({})).usual_minutes).toBeNull();
  expect(toProfile(toForm({})), 'the field of the form is not sent').not.toHaveProperty('usual');
});

test('what is played is said in one line', () => {
  const profile = toProfile(toForm({ division: 'B', usual_minutes: 210 }));
  expect(playsWords(profile as never, { name: 'Squash' })).toBe(
    'Squash · B · 3 h 30 min on court in a usual week',
  );
  expect(playsWords({ ...profile, division: '', usual_minutes: null } as never, undefined)).toBe(
    'usual court time not known',
  );
});

test('goals with skills that only the sport before has are named', () => {
  const goals = [
    { title: 'Lob', skill: 'lob-serve' },
    { title: 'Feet', skill: '' },
    { title: 'Boast', skill: 'boast' },
  ];
  expect(otherSportWords(goals, ['lob-serve', 'boast'], ['boast'])).toMatch(
    /^“Lob” names a skill of the sport before. It goes on with all counts/,
  );
  expect(otherSportWords(goals, ['lob-serve', 'boast'], [])).toMatch(/^“Lob”, “Boast” name skills/);
  expect(otherSportWords(goals, ['lob-serve'], ['lob-serve'])).toBe('');
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
