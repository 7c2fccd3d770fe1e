// What the coach says of a row, what is sent, and what was wrong with which row.
import { describe, expect, it } from 'vitest';
import {
  asProposed,
  byReference,
  forValue,
  from,
  goesWords,
  goingTo,
  toEnter,
  withColumn,
  type BankRow,
  type Columns,
} from './bank';

const row = (reference: string, more: Partial<BankRow> = {}): BankRow => ({
  line: 1,
  day: '2026-04-01',
  currency: 'EUR',
  amount: '55.00',
  name: 'Ana Silva',
  words: '',
  bank_reference: '',
  reference,
  state: 'to_enter',
  proposal: { sure: true, payer: 'ana', invoices: ['one'], keep: false, why: '' },
  ...more,
});

describe('what a row goes to', () => {
  it('is a value of one list and back', () => {
    const sure = asProposed(row('a'));
    expect(forValue(sure)).toBe('one');
    for (const value of ['', 'keep', 'two', 'several']) {
      expect(forValue(goingTo(sure, value, ['one', 'two']))).toBe(value);
    }
    expect(goingTo(goingTo(sure, 'keep', []), 'one', []).keep).toBe(false);
  });

  it('names no invoice of the payer before', () => {
    const sure = asProposed(row('a'));
    expect(from(sure, 'ana')).toBe(sure);
    expect(from(sure, 'ben')).toEqual({ tick: true, payer: 'ben', invoices: [], keep: false });
  });

  it('is said in words', () => {
    const say = (goes: ReturnType<typeof asProposed>) =>
      goesWords(
        goes,
        (payer) => `<${payer}>`,
        (invoice) => `#${invoice}`,
      );
    const sure = asProposed(row('a'));
    expect(say(sure)).toBe('<ana>, #one');
    expect(say(goingTo(sure, 'several', ['one', 'two']))).toBe('<ana>, #one and #two');
    expect(say(goingTo(sure, 'keep', []))).toBe('<ana>, kept for later');
    expect(say(goingTo(sure, '', []))).toBe('<ana>, what is due first');
    expect(say(from(sure, ''))).toBe('Nobody yet');
  });
});

describe('what is sent', () => {
  it('are the rows that are ticked and not entered, with the name where nothing stood on it', () => {
    const rows = [
      row('a'),
      row('b', { state: 'entered' }),
      row('c', { words: 'Lessons' }),
      row('d', { proposal: { ...row('d').proposal, sure: false } }),
    ];
    const sent = toEnter(rows, asProposed);
    expect(sent.map((one) => [one.reference, one.words])).toEqual([
      ['a', 'Ana Silva'],
      ['c', 'Lessons'],
    ]);
    expect(toEnter([row('a')], (one) => from(asProposed(one), ''))[0]?.payer).toBeNull();
  });

  it('is told of by its row when it is refused', () => {
    const sent = toEnter([row('a'), row('b')], asProposed);
    const problem = (field: string, words: string) => ({ field, code: 'x', words });
    const told = byReference(
      [
        problem('rows[1].payer', 'Who?'),
        problem('rows[1].invoices[0].amount', 'Much.'),
        problem('rows', 'None.'),
      ],
      sent,
    );
    expect(told).toEqual({ b: 'Who? Much.' });
  });
});

describe('columns', () => {
  it('forget what the cells of another column told', () => {
    const columns: Columns = {
      day: 0,
      amount: 1,
      money_in: null,
      money_out: null,
      side: null,
      currency: null,
      one_currency: 'EUR',
      name: 2,
      words: null,
      reference: null,
      dates: 'day_month_year',
      decimals: 'comma',
    };
    expect(withColumn(columns, 'name', '3')).toEqual({ ...columns, name: 3 });
    expect(withColumn(columns, 'day', '3')).toEqual({ ...columns, day: 3, dates: 'unknown' });
    expect(withColumn(columns, 'amount', '')).toEqual({ ...columns, amount: null, decimals: 'unknown' });
  });
});
