// A student's profile as a form has it: every field a string or a choice, contacts always there.
import type { ContactInput as Contact, Profile, ProfileInput } from '../../ipc';

/** What the form holds. */
export interface ProfileForm extends Omit<Required<ProfileInput>, 'guardian' | 'payer' | 'hand' | 'plays'> {
  hand: '' | 'right' | 'left';
  plays: '' | 'singles' | 'doubles' | 'both';
  guardian: Required<Contact>;
  payer: Required<Contact>;
}

const nobody = (): Required<Contact> => ({ name: '', relation: '', email: '', phone: '', address: '' });

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
    sport: profile.sport ?? '',
    wants: profile.wants ?? '',
    about: profile.about ?? '',
    guardian: { ...nobody(), ...profile.guardian },
    payer: { ...nobody(), ...profile.payer },
  };
}

/** The profile to send. */
export function toProfile(form: ProfileForm): ProfileInput {
  return { ...form, hand: form.hand || null, plays: form.plays || null };
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
