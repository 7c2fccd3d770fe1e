// What costs and rates are called, and what a form sends of what was typed.
import { describe, expect, test } from 'vitest';
import { canPass, costForm, costTyped, holdsWords, rateWords, whenWords, whyWords, type Cost } from './words';

const drive: Cost = {
  id: '1',
  kind: 'drive',
  day: '2026-03-10',
  last: '2026-03-10',
  words: 'To Saltmere',
  town: 'Saltmere',
  amount: '155.15',
  currency: 'USD',
  tax: '',
  distance: '214',
  unit: 'mile',
  worked: '214 mi × 0.725 USD, the notice',
  receipt: null,
  taken_back: null,
  why: '',
  passed: [],
  passed_on: '',
};

describe('costs in words', () => {
  test('a cost says when, what for and how it was worked out', () => {
    expect(whenWords(drive)).toBe('10 March 2026');
    expect(whenWords({ ...drive, last: '2026-03-12' })).toContain('3 days');
    expect(whyWords(drive)).toBe('Drive · Saltmere · 214 mi × 0.725 USD, the notice');
    expect(whyWords({ ...drive, taken_back: '2026-03-11', why: 'Not mine' })).toContain(
      'taken back: Not mine',
    );
  });

  test('a cost says what tax is in it, and who pays which part', () => {
    const share = { payer: 'p', invoice: 'i', line: 'l', words: 'Share' };
    const passed = [
      { ...share, name: 'Ana', amount: '33.34', number: '' },
      { ...share, name: 'Ben', amount: '33.33', number: '2026-0007' },
    ];
    const cost: Cost = { ...drive, worked: '', tax: '9.90', passed, passed_on: '66.67', amount: '100.00' };
    expect(whyWords(cost)).toBe(
      'Drive · Saltmere · tax contained 9.90 · passed on: Ana 33.34 (draft), Ben 33.33 (2026-0007)',
    );
    expect(canPass(cost)).toBe(true);
    expect(canPass({ ...cost, passed_on: '100.00' })).toBe(false);
    expect(canPass({ ...cost, taken_back: '2026-03-11' })).toBe(false);
  });

  test('a rate says what it is for and how long it holds', () => {
    const rate = {
      id: '1',
      per: 'day',
      since: '2025-10-01',
      until: null,
      currency: 'USD',
      amount: '68',
      edge: '75',
      source: 'x',
    } as const;
    expect(rateWords(rate)).toBe('68 USD a day away, first and last day 75 %');
    expect(holdsWords(rate)).toBe('from 1 October 2025');
    expect(holdsWords({ ...rate, until: '2026-09-30' })).toBe('1 October 2025 to 30 September 2026');
  });

  test('a form sends only what its kind asks for', () => {
    const form = costForm(drive, '', '');
    expect(costTyped(form)).toEqual({
      kind: 'drive',
      day: '2026-03-10',
      words: 'To Saltmere',
      town: 'Saltmere',
      distance: '214',
      unit: 'mile',
    });
    const fare = costTyped({
      ...form,
      kind: 'fare',
      amount: '5',
      currency: 'EUR',
      tax: '1',
      last: '2026-03-12',
    });
    expect(fare).toEqual({
      kind: 'fare',
      day: '2026-03-10',
      words: 'To Saltmere',
      town: 'Saltmere',
      amount: '5',
      currency: 'EUR',
      tax: '1',
    });
    expect(costTyped({ ...form, kind: 'day_rate', last: '2026-03-12' })).toMatchObject({
      last: '2026-03-12',
    });
  });
});
