// Lessons, ways and hours of the week, the trip and the year in words.
import type { CoachDay, FreeStretch, LessonOn, OfferedOn, TakenOn, WayOn } from '../../ipc';
import { lengthWords, timeSpan, timeWords } from '../../kit/times';
import { lessonStateWords } from '../lessons/words';

/** "Lisbon time", for Europe/Lisbon. */
export function zoneWords(zone: string): string {
  return `${(zone.split('/').at(-1) ?? zone).replaceAll('_', ' ')} time`;
}

/** "9:00 – 10:00"; the day's end is midnight. */
export function hoursWords({ from, to }: FreeStretch): string {
  return to === '00:00' ? `${timeWords(from)} – midnight` : timeSpan(from, to);
}

/** When a lesson is: "9:00 – 10:00"; where the clocks went back, which of the two hours; the zone where several are. */
export function lessonTime(
  l: Pick<LessonOn, 'starts' | 'ends' | 'which' | 'zone'>,
  zones: readonly string[],
): string {
  const which = l.which === 'once' ? '' : ` (the ${l.which} time the clock shows it)`;
  const zone = zones.length > 1 ? `, ${zoneWords(l.zone)}` : '';
  return `${timeSpan(l.starts, l.ends)}${which}${zone}`;
}

/** How long and where: "1 h · Court 2, Harbour Hall". */
export function lessonWhere(l: Pick<LessonOn, 'minutes' | 'court_name' | 'place'>): string {
  return `${lengthWords(l.minutes)} · ${[l.court_name, l.place].filter(Boolean).join(', ')}`;
}

/** Where a lesson stands: "to come, offered, no answer yet". */
export function lessonState(l: Pick<LessonOn, 'state' | 'offer' | 'visit_off'>): string {
  const offered =
    l.state !== 'planned'
      ? ''
      : l.offer === 'offered'
        ? 'offered, no answer yet'
        : l.offer === 'declined'
          ? 'its offer was declined'
          : l.offer === 'agreed'
            ? 'agreed'
            : '';
  const off = l.visit_off && l.state === 'planned' ? 'its visit was called off' : '';
  return [lessonStateWords[l.state], offered, off].filter(Boolean).join(', ');
}

/** "was offered 17:00 – 18:00, Harbour Hall". */
export function offeredWords(o: Pick<OfferedOn, 'starts' | 'ends' | 'place'>): string {
  return `was offered ${timeSpan(o.starts, o.ends)}, ${o.place}`;
}

/** What takes the coach's time: "League night, 18:00 – 22:00"; "Dentist, all day". */
export function takenWords(t: TakenOn): string {
  return `${t.what}, ${t.from && t.to ? hoursWords({ from: t.from, to: t.to }) : 'all day'}`;
}

/** A way between two lessons, and whether it fits into the break between them. */
export function wayWords(w: WayOn): { words: string; late: boolean } {
  const way = `${w.from} to ${w.to}`;
  if (w.minutes === null) return { words: `${way}: ${lengthWords(w.between)} between`, late: false };
  const late = w.minutes > w.between;
  const between = late ? `but only ${lengthWords(w.between)}` : lengthWords(w.between);
  return { words: `${way}: ${lengthWords(w.minutes)}, ${between} between`, late };
}

/** The minutes of teaching against the limit: "2 h of at most 6 h"; empty on a day without lessons. */
export function teachingWords(day: Pick<CoachDay, 'minutes' | 'limit' | 'lessons'>): {
  words: string;
  late: boolean;
} {
  if (day.lessons === 0) return { words: '', late: false };
  const { limit, minutes } = day;
  if (limit === null) return { words: `${lengthWords(minutes)} of lessons`, late: false };
  const late = minutes > limit;
  const over = late ? `, ${lengthWords(minutes - limit)} over the limit` : '';
  return { words: `${lengthWords(minutes)} of at most ${lengthWords(limit)}${over}`, late };
}
