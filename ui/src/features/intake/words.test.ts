// What is asked before court, in words.
import { describe, expect, it } from 'vitest';
import type { Output } from '../../ipc';
import { notReadyWords, recordLines } from './words';

type Ready = Output<'intake.ready'>[number];
const ready = (student: string, state: Ready['state'], ...words: string[]): Ready => ({
  student,
  visit: null,
  name: `Name ${student}`,
  lesson: null,
  state,
  age: null,
  minor: null,
  missing: words.map((w) => ({ about: 'consent', words: w })),
  careful: [],
  went_on: null,
  words: '',
});

describe('who is not ready in a plan', () => {
  it('is named once, with each thing once, and blocked when blocked anywhere', () => {
    const all = [
      ready('a', 'not_ready', 'One.', 'Two.'),
      ready('b', 'ready'),
      ready('a', 'blocked', 'Two.', 'Three.'),
    ];
    expect(notReadyWords(all)).toEqual([
      { student: 'a', name: 'Name a', blocked: true, words: ['One.', 'Two.', 'Three.'] },
    ]);
  });
});

describe('what was gone through', () => {
  it('leaves out what nobody answered', () => {
    const empty = {
      experience: '',
      available: '',
      level_said: '',
      level_seen: '',
      racquet: '',
      grip: '',
      strings: '',
      strung: '',
      eyewear: '',
      eyewear_standard: '',
      eyewear_seen: '',
      injuries_asked: '',
    };
    expect(recordLines({ student: 's', asked: null, record: empty, emergency: null })).toEqual([]);
    const some = {
      ...empty,
      racquet: '175 g',
      grip: '3 15/16',
      eyewear: 'Guard',
      eyewear_seen: '2026-03-01',
    };
    expect(recordLines({ student: 's', asked: '2026-03-01', record: some, emergency: null })).toEqual([
      { about: 'racquet', words: '175 g · 3 15/16' },
      { about: 'eyewear', words: 'Guard · looked at on Sunday 1 March 2026' },
    ]);
  });
});
