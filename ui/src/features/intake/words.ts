// What is asked before court, in words.
import type { Output } from '../../ipc';
import { longDay } from '../../kit/dates';

type Ready = Output<'intake.ready'>[number];
type About = Ready['missing'][number]['about'];

/** What a missing thing is about, as the small word before its sentence. */
export const aboutWords: Record<About, string> = {
  head: 'stop',
  birth_date: 'age',
  guardian: 'guardian',
  emergency_contact: 'whom to call',
  injuries: 'injuries',
  readiness: 'readiness',
  consent: 'consent',
  notice: 'notice',
  facility_form: 'form',
  facility_rules: 'place',
  eyewear: 'eyewear',
  teaching: 'permission',
  own_papers: 'your papers',
};

/** How someone stands, as a title. */
export const readyTitles: Record<Ready['state'], string> = {
  ready: 'Ready for court',
  not_ready: 'Not ready for court',
  blocked: 'No play',
};

/** The small words before a line of things to go through. */
export type Line = { about: string; words: string };

/** What was gone through, a line each; what was left empty is left out. */
export function recordLines(shown: Output<'intake.show'>): Line[] {
  const r = shown.record;
  const day = (text: string | undefined) => (text ? longDay(text) : '');
  const eyewear = [
    r.eyewear,
    r.eyewear_standard,
    r.eyewear_seen ? `looked at on ${day(r.eyewear_seen)}` : '',
  ];
  const call = shown.emergency;
  const lines: [string, string | undefined][] = [
    [
      'call',
      call ? [call.name, call.relation, call.phone, call.other].filter(Boolean).join(' · ') : undefined,
    ],
    ['experience', r.experience],
    ['can come', r.available],
    ['own rating', r.level_said],
    ['your estimate', r.level_seen],
    ['racquet', [r.racquet, r.grip].filter(Boolean).join(' · ')],
    ['strings', [r.strings, r.strung ? `strung on ${day(r.strung)}` : ''].filter(Boolean).join(' · ')],
    ['eyewear', eyewear.filter(Boolean).join(' · ')],
    ['injuries', r.injuries_asked ? `asked about on ${day(r.injuries_asked)}` : ''],
  ];
  return lines.flatMap(([about, words]) => (words ? [{ about, words }] : []));
}

/** An answer as said. */
export const answerWords = { yes: 'yes', no: 'no', not_known: 'not known' } as const;

/** The three questions, as they are asked. */
export const questions = {
  active:
    'Planned exercise of half an hour or more, at moderate effort, on three days a week or more, for the last three months?',
  disease: 'A known disease of the heart, the circulation, the metabolism (such as diabetes) or the kidneys?',
  symptoms:
    'Any sign of one: pain or pressure in the chest, short of breath at rest or with little effort, dizzy or fainting, a racing heart, swollen ankles, pain in the legs on walking?',
} as const;

/** Of everyone in a plan who is not ready, once: what is missing anywhere in it. */
export function notReadyWords(
  all: readonly Ready[],
): { student: string; name: string; blocked: boolean; words: string[] }[] {
  const people: { student: string; name: string; blocked: boolean; words: string[] }[] = [];
  for (const ready of all.filter((r) => r.state !== 'ready')) {
    let one = people.find((p) => p.student === ready.student);
    if (!one) people.push((one = { student: ready.student, name: ready.name, blocked: false, words: [] }));
    one.blocked ||= ready.state === 'blocked';
    for (const { words } of ready.missing) if (!one.words.includes(words)) one.words.push(words);
  }
  return people;
}
