// Figures of a visit's load.
import { expect, test } from 'vitest';
import { figures, type VisitLoad } from './load';

const base: VisitLoad = {
  days: [],
  sessions: [],
  minutes: 180,
  rated: 840,
  load: null,
  usual: null,
  words: [],
};

test('while a rating is missing there is only the sum of the others', () => {
  const session = { lesson: 'l', day: '2026-03-02', starts: '09:30', minutes: 60, load: null };
  const one = { ...base, sessions: [{ ...session, effort: null }] };
  expect(figures(one).map((f) => f.value)).toEqual(['not rated yet']);
  const two = {
    ...base,
    sessions: [
      { ...session, effort: null },
      { ...session, effort: 0, load: 0 },
    ],
  };
  expect(figures(two).map((f) => f.value)).toEqual(['840 and more']);
});

test('what has no value says so', () => {
  const load = { total: 300, mean: 300, sd: null, monotony: null, strain: null };
  expect(figures({ ...base, load }).map((f) => f.value)).toEqual(['300', '300', 'no value', 'no value']);
  const three = { total: 960, mean: 320, sd: 330.454, monotony: 0.96837, strain: 929.63 };
  expect(figures({ ...base, load: three }).map((f) => f.value)).toEqual(['960', '320', '0.97', '930']);
});
