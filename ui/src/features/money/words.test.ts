// Money in words.
import { describe, expect, it } from 'vitest';
import {
  asProposed,
  depositOf,
  lineForm,
  lineTyped,
  proposalWords,
  remindWords,
  standingWords,
  taxWords,
  type ToSettle,
} from './words';

const waiting = (proposal: Partial<ToSettle['proposal']>): ToSettle => ({
  lesson: 'l',
  student: 's',
  name: 'Ana Silva',
  paid_by: 'Ana Silva',
  day: '2026-03-10',
  words: '09:00',
  state: 'given',
  reason: '',
  proposal: {
    how: null,
    package: null,
    package_words: '',
    amount: '',
    currency: '',
    court: '',
    court_currency: '',
    rule: '',
    next: '',
    asks: [],
    ...proposal,
  },
});

describe('money in words', () => {
  it('says how a lesson would be settled', () => {
    expect(proposalWords(waiting({ how: 'package', package_words: 'Package of 10 lessons' }))).toBe(
      'Package of 10 lessons',
    );
    const invoiced = waiting({
      how: 'invoice',
      amount: '45.00',
      currency: 'EUR',
      court: '9.00',
      court_currency: 'EUR',
    });
    expect(proposalWords(invoiced)).toBe('Invoice 45.00 EUR, court 9.00 EUR');
    expect(proposalWords(waiting({ asks: ['Who called it off?'] }))).toBe('Who called it off?');
    expect(asProposed(waiting({ asks: ['Who called it off?'] }))).toBeNull();
    expect(asProposed(invoiced)).toEqual({ lesson: 'l', student: 's', how: 'invoice' });
  });

  it('names only what is not nothing', () => {
    const none = { currency: 'EUR', open: '0.00', kept: '0.00', to_pay_back: '0.00' };
    expect(standingWords(none)).toBe('Nothing is open in EUR.');
    expect(standingWords({ ...none, open: '12.00', kept: '0.50' })).toBe(
      '12.00 EUR open · 0.50 EUR paid and kept for later',
    );
    expect(standingWords({ ...none, currency: 'JPY', open: '0', deferred: '1500' })).toBe(
      '1500 JPY owed in lessons, without tax',
    );
  });

  it('says what tax counts, or that it is not set', () => {
    expect(taxWords({ category: null, rate: '' })).toBe('tax not set');
    expect(taxWords({ category: 'S', rate: '19' })).toBe('19 %');
    expect(taxWords({ category: 'E', rate: '0', why: 'Small business' })).toBe('Small business');
    expect(taxWords({ category: 'Z', rate: '0' })).toBe('zero rate');
  });

  it('says when a reminder is due, and what a deposit comes to', () => {
    expect(remindWords('2026-03-10', '2026-03-16', [7, 21])).toBe('');
    expect(remindWords('2026-03-10', '2026-03-17', [7, 21])).toBe('Reminder 1 of 2 is due.');
    expect(remindWords('2026-03-10', '2026-04-10', [7, 21])).toBe('Reminder 2 of 2 is due.');
    expect(remindWords('2026-03-10', '2026-03-17', [7])).toBe('A reminder is due.');
    expect(remindWords(null, '2026-03-17', [7])).toBe('');
    expect(depositOf('476.00', 50)).toBe('238.00');
    expect(depositOf('0.05', 50)).toBe('0.03');
    expect(depositOf('1501', 33)).toBe('495');
    expect(depositOf('476.00', null)).toBe('');
  });

  it('sends a tax only where one stands on the line', () => {
    const line = { ...lineForm(), words: 'Lesson', price: '45' };
    expect('tax' in lineTyped(line)).toBe(false);
    expect(lineTyped({ ...line, category: 'S', rate: '19', why: 'left from before' }).tax).toEqual({
      category: 'S',
      rate: '19',
      why: '',
    });
  });
});
