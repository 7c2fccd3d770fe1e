// What a trip earns in words, and what its form sends of what was typed.
import { describe, expect, test } from 'vitest';
import {
  amountWords,
  evenWords,
  expectedForm,
  expectedTyped,
  hoursWords,
  rowHref,
  rowWords,
  something,
  timeTyped,
  type Row,
} from './words';

const row: Row = {
  what: 'lesson',
  from: 'entered',
  day: '2026-03-10',
  words: 'Invoice 2026-0001',
  amount: '40.00',
  currency: 'EUR',
  invoice: null,
  package: null,
};

describe('a trip in words', () => {
  test('a row says what it is for, how sure it is and where it stands', () => {
    expect(rowWords(row)).toBe('lesson');
    expect(rowWords({ ...row, what: 'travel', from: 'draft' })).toBe(
      'travel, charged to students · on a draft',
    );
    expect(rowHref(row)).toBeUndefined();
    expect(rowHref({ ...row, invoice: 'i', package: 'p' })).toBe('#/money/invoices/i');
    expect(rowHref({ ...row, package: 'p' })).toBe('#/money/packages/p');
  });

  test('no hour is a dash, nothing is nothing', () => {
    expect(amountWords(null, 'EUR')).toBe('–');
    expect(amountWords('-3.33', 'USD')).toBe('-3.33 USD');
    expect([something('0.00'), something('-0.01'), something('')]).toEqual([false, true, false]);
  });

  test('hours are said with how they were counted', () => {
    const away = { minutes: 4320, said: false, words: 'Counted as 3 whole days of 24 hours.' };
    expect(hoursWords({ lessons: 6, court_minutes: 360, away })).toBe(
      '6 lessons given, 6 h on court. 72 h away: counted as 3 whole days of 24 hours.',
    );
    expect(hoursWords({ lessons: 0, court_minutes: 0, away }, false)).toMatch(/^0 lessons\. 72 h away/);
  });

  test('how many reach zero', () => {
    expect(evenWords({ lessons: 5, like: 'as those to come', each: '28.00' }, 'EUR')).toBe(
      '5 more: as those to come, 28.00 EUR each',
    );
  });

  test('only a whole time is sent', () => {
    expect(['07:00', '7', '', '07:0x'].map(timeTyped)).toEqual(['07:00', '', '', '']);
  });

  test('a form sends only what the kind of cost asks for', () => {
    const form = { ...expectedForm('EUR'), words: 'There', amount: '80', nights: '2', distance: '46' };
    expect(expectedTyped(form)).toEqual({ kind: 'drive', words: 'There', distance: '46', unit: 'km' });
    expect(expectedTyped({ ...form, kind: 'day_rate' })).toEqual({ kind: 'day_rate', words: 'There' });
    const paid = { words: 'There', amount: '80', currency: 'EUR' };
    expect(expectedTyped({ ...form, kind: 'fare' })).toEqual({ kind: 'fare', ...paid });
    expect(expectedTyped({ ...form, kind: 'lodging' })).toEqual({ kind: 'lodging', ...paid, nights: '2' });
    expect(expectedForm('EUR').key).not.toBe(form.key);
  });
});
