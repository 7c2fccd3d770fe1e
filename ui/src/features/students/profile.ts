// A student's profile as a form has it: every field a string or a choice, contacts always there.
import type { ContactInput as Contact, Pack, Profile, ProfileInput } from '../../ipc';
import { lengthWords } from '../../kit/times';
import { hoursTyped, readHours } from './hours';

/** What the form holds. */
export interface ProfileForm extends Omit<
  Required<ProfileInput>,
  'guardian' | 'payer' | 'hand' | 'plays' | 'usual_minutes'
> {
  /** The usual court time of a week, as it is typed: in hours. */
  usual: string;
  hand: '' | 'right' | 'left';
  plays: '' | 'singles' | 'doubles' | 'both';
  guardian: Required<Contact>;
  payer: Required<Contact>;
}

const nobody = (): Required<Contact> => ({
  name: '',
  relation: '',
  email: '',
  phone: '',
  address: '',
  born: '',
});

/** An empty form, or one filled from a profile. */
export function toForm(profile: ProfileInput = {}): ProfileForm {
  return {
    name: profile.name ?? '',
    called: profile.called ?? '',
    email: profile.email ?? '',
    phone: profile.phone ?? '',
    hand: profile.hand ?? '',
    plays: profile.plays ?? '',
    zone: profile.zone ?? '',
    born: profile.born ?? '',
    language: profile.language ?? 'en',
    sport: profile.sport || USUAL_SPORT,
    division: profile.division ?? '',
    usual: hoursTyped(profile.usual_minutes ?? null),
    wants: profile.wants ?? '',
    about: profile.about ?? '',
    home: profile.home ?? '',
    heard: profile.heard ?? '',
    enquired: profile.enquired ?? '',
    guardian: { ...nobody(), ...profile.guardian },
    payer: { ...nobody(), ...profile.payer },
  };
}

/** The profile to send. */
export function toProfile(form: ProfileForm): ProfileInput {
  const { usual, ...rest } = form;
  return { ...rest, hand: form.hand || null, plays: form.plays || null, usual_minutes: readHours(usual) };
}

/** The sport of a student for whom none was chosen. */
export const USUAL_SPORT = 'racquetball';

/** "Squash · 3.5 C · 4½ h on court in a usual week". */
export function playsWords(profile: Profile, sport: Pick<Pack, 'name'> | undefined): string {
  const minutes = profile.usual_minutes;
  return [
    sport?.name ?? '',
    profile.division,
    minutes === null ? 'usual court time not known' : `${lengthWords(minutes)} on court in a usual week`,
  ]
    .filter(Boolean)
    .join(' · ');
}

/**
 * What is said when the sport is changed while goals name skills that only the sport before has; empty where there
 * are none.
 */
export function otherSportWords(
  goals: readonly { title: string; skill: string }[],
  before: readonly string[],
  after: readonly string[],
): string {
  const named = goals.filter((g) => g.skill && before.includes(g.skill) && !after.includes(g.skill));
  if (named.length === 0) return '';
  const titles = named.map((g) => `“${g.title}”`).join(', ');
  const one = named.length === 1;
  return `${titles} ${one ? 'names a skill' : 'name skills'} of the sport before. ${
    one ? 'It goes' : 'They go'
  } on with all counts; only the skill’s name will not be shown. New goals offer the skills of the new sport.`;
}

/** "left-handed · doubles · 61". */
export function subWords(profile: Pick<Profile, 'hand' | 'plays'>, age: number | null): string {
  const plays = { singles: 'singles', doubles: 'doubles', both: 'singles and doubles' };
  return [
    profile.hand ? `${profile.hand}-handed` : '',
    profile.plays ? plays[profile.plays] : '',
    age === null ? '' : age < 18 ? `${age}, a minor` : String(age),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** What the list of people says of itself: how many a search found, and how many there was no room for. */
export function foundWords(found: number, most: number, find: string): string {
  if (found > most) return `And ${found - most} more: type more of the name.`;
  if (find.trim() === '' || found === 0) return '';
  return found === 1 ? 'One found.' : `${found} found.`;
}
