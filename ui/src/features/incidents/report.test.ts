// A report between form and core.
import { describe, expect, it } from 'vitest';
import { toForm, toReport } from './report';

describe('a report', () => {
  it('comes back as it was', () => {
    const report = {
      ...toReport(toForm()),
      person: 'Tomas',
      happened: 'A ball came over the wall.',
      head: 'yes' as const,
      unconscious: 'no' as const,
      called: 'yes' as const,
      called_at: '10:45',
    };
    expect(toReport(toForm(report))).toEqual(report);
  });
  it('sends what belongs to a blow to the head only with one', () => {
    const form = { ...toForm(), head: 'no' as const, unconscious: 'yes' as const, head_cause: 'ball' };
    expect(toReport(form)).toMatchObject({ unconscious: null, head_cause: '' });
  });
  it('keeps a call’s time only with a call', () => {
    const form = { ...toForm(), called: 'no' as const, called_at: '10:45' };
    expect(toReport(form).called_at).toBe('');
  });
});
