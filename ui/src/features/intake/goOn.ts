// Going on court although something is missing: the reason is asked for, and kept.
import { doing } from '../acts/doing.svelte';
import type { Asked } from '../visits/asked';

/** What the dialog for reasons asks: of a student's lesson, or of today where none is planned. */
export const askToGoOn = (student: string, lesson: string | null): Asked => ({
  title: 'Go on all the same',
  words: 'The reason is kept, with what is missing now.',
  act: 'Go on',
  run: (reason) => doing('intake.go_on', { student, lesson, reason }, 'The reason is kept.'),
});
