// A scan on its way into the file.
import { describe, expect, it } from 'vitest';
import { MOST_BYTES, scanTrouble } from './scan';

describe('a scan', () => {
  it('is bounded before it is read', () => {
    expect(scanTrouble('form.pdf', 200 * 1024 * 1024)).toContain('has 200 MB');
    expect(scanTrouble('form.pdf', MOST_BYTES)).toBeNull();
    expect(scanTrouble('form.pdf', MOST_BYTES + 1)).toContain('9 MB');
    expect(scanTrouble('form.pdf', 0)).toContain('empty');
  });
});
