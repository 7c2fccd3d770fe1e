// The coach's own papers, in words.
import type { Output } from '../../ipc';

/** What kinds there are. */
export const paperWords: Record<Output<'intake.certificates'>[number]['paper']['kind'], string> = {
  first_aid: 'first aid',
  background_check: 'background check',
  safeguarding: 'safeguarding of minors',
  insurance: 'liability insurance',
  instructor: 'instructor’s certification',
  other: 'another paper',
};
