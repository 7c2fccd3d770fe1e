// A scan on its way into the file.
import { describe, expect, it } from 'vitest';
import { MOST_BYTES, scanTrouble, toBase64 } from './scan';

describe('a scan', () => {
  it('is bounded before it is read', () => {
    expect(scanTrouble('form.pdf', 200 * 1024 * 1024)).toContain('has 200 MB');
    expect(scanTrouble('form.pdf', MOST_BYTES)).toBeNull();
    expect(scanTrouble('form.pdf', MOST_BYTES + 1)).toContain('9 MB');
    expect(scanTrouble('form.pdf', 0)).toContain('empty');
  });
  it('is written as RFC 4648 says', () => {
    // Section 10 of the RFC.
    const of = (text: string) => toBase64(new TextEncoder().encode(text));
    expect(['', 'f', 'fo', 'foo', 'foob', 'fooba', 'foobar'].map(of)).toEqual([
      '',
      'Zg==',
      'Zm8=',
      'Zm9v',
      'Zm9vYg==',
      'Zm9vYmE=',
      'Zm9vYmFy',
    ]);
  });
});
