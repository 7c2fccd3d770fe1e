// The trip: the parts of a strip stand where their hours are, and the words say the same.
import { expect, test } from 'vitest';
import { axisOf, freeWords, personWords, shortestWords, stripOf, sumWords, ticksOf } from './trip';

const place = {
  facility: 'hall',
  place: 'Hall',
  town: '',
  zone: 'Europe/Lisbon',
  open: [{ from: '08:00', to: '00:00' }],
  free: [
    { from: '10:00', to: '12:00' },
    { from: '23:00', to: '00:00' },
  ],
};
const lesson = { facility: 'hall', starts: '09:00', ends: '10:00', state: 'planned' } as const;
const day = (lessons: unknown[]) => ({ places: [place], lessons }) as never;

test('all strips of a trip show the same hours', () => {
  expect(axisOf({ on: [] })).toEqual({ from: 540, to: 1080 });
  expect(axisOf({ on: [day([{ ...lesson, starts: '07:45' }])] })).toEqual({ from: 420, to: 1440 });
});

test('a strip holds what is open, free and taught there, in hundredths of its width', () => {
  const axis = { from: 480, to: 1440 };
  const elsewhere = { ...lesson, facility: 'pier' };
  const off = { ...lesson, state: 'called_off' } as const;
  expect(stripOf(place, [lesson, elsewhere, off], axis)).toEqual([
    { kind: 'open', x: 0, width: 100, words: '16 h' },
    { kind: 'free', x: 12.5, width: 12.5, words: '2 h' },
    { kind: 'free', x: 93.75, width: 6.25, words: '1 h' },
    { kind: 'lesson', x: 6.25, width: 6.25, words: '1 h' },
  ]);
  const narrow = stripOf(place, [], { from: 780, to: 840 });
  expect(
    narrow.map((p) => p.kind),
    'what lies beside the hours shown is left out',
  ).toEqual(['open']);
});

test('the hours under a strip keep apart', () => {
  expect(ticksOf({ from: 540, to: 1080 }).map((t) => t.words)).toEqual(['9', '11', '13', '15', '17']);
  expect(ticksOf({ from: 0, to: 1440 }).map((t) => t.words)).toEqual([
    '0',
    '3',
    '6',
    '9',
    '12',
    '15',
    '18',
    '21',
    '24',
  ]);
  expect(ticksOf({ from: 0, to: 1440 })[4]?.x).toBe(50);
});

test('in words', () => {
  expect(freeWords(place.free)).toBe('10:00 – 12:00, 23:00 – midnight');
  expect(sumWords({ free_minutes: 180, places: [place] })).toBe('3 h in all.');
  expect(sumWords({ free_minutes: 90, places: [place] })).toBe(
    '3 h in all, of which limits leave 1 h 30 min.',
  );
  expect(sumWords({ free_minutes: 180, places: [place, place] })).toBe(
    '3 h in all: you can be at one place at a time, and limits hold.',
  );
  expect(personWords({ lessons: 2, minutes: 120, wished: 4 })).toBe('2 lessons, 2 h · 4 wished for');
  expect(personWords({ lessons: 1, minutes: 60, wished: null })).toBe('1 lesson, 1 h');
  expect(personWords({ lessons: 0, minutes: 0, wished: 3 })).toBe('no lesson yet · 3 wished for');
  expect(shortestWords({ shortest: 45, shortest_from: 'rates' })).toBe(
    'No stretch is shorter than 45 min, the shortest lesson you have a rate for.',
  );
});
