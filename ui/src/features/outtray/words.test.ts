// Messages in words.
import { describe, expect, it } from 'vitest';
import { firsts, partWords, sizeWords, toWords } from './words';

describe('messages in words', () => {
  it('names who gets it, also where no address is known', () => {
    expect(toWords({ name: 'Ana Silva', address: '' })).toBe('Ana Silva');
    expect(toWords({ name: 'Ana Silva', address: 'ana@example.org' })).toBe('Ana Silva, ana@example.org');
    expect(toWords({ name: '', address: '' })).toBe('to nobody yet');
  });

  it('rounds sizes', () => {
    expect([999, 1000, 31_400, 1_250_000].map(sizeWords)).toEqual(['999 bytes', '1 KB', '31 KB', '1.3 MB']);
  });

  it('calls a part by its name, else by what it is', () => {
    expect(partWords({ name: 'Letter.pdf', media: 'application/pdf' })).toBe('Letter.pdf');
    expect(partWords({ name: '', media: 'text/calendar' })).toBe('for a calendar program');
  });

  it('shows those that say the same once', () => {
    const all = [
      { id: 'a', together: 'a' },
      { id: 'b', together: 'a' },
      { id: 'c', together: 'c' },
    ];
    expect(firsts(all).map((m) => m.id)).toEqual(['a', 'c']);
  });
});
