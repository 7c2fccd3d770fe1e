// Courts that lessons need, in words and by what is to be done about them.
import type { CourtNeeded } from '../../ipc';
import { shortDay } from '../../kit/dates';
import { timeSpan } from '../../kit/times';

/** "Tue 10 Mar, 9:00 – 10:00 · Court 1, Harbour Hall". */
export function courtWords(c: CourtNeeded): string {
  const where = [c.court_name || 'any court', c.place].join(', ');
  return `${shortDay(c.day)}, ${timeSpan(c.starts, c.ends)} · ${where}`;
}

/** Whose lesson, what it costs, what was answered, when to ask or until when to give back. */
export function moreWords(c: CourtNeeded): string {
  const b = c.booking;
  const answered = b && c.state === 'confirmed' ? [b.reference, b.by_whom && `by ${b.by_whom}`] : [];
  const asked = b?.asked && c.state === 'asked' ? [`asked on ${shortDay(b.asked)}`] : [];
  const facts = [c.names, c.cost, ...answered, ...asked, b?.note].filter(Boolean).join(' · ');
  const sentences = [...c.words, ...c.against].filter(Boolean).join(' ');
  return [facts, sentences].filter(Boolean).join('. ');
}

/** The courts that can be asked for now, facility by facility. */
export function toAskNow(
  courts: readonly CourtNeeded[],
): { facility: string; place: string; courts: CourtNeeded[] }[] {
  const places: { facility: string; place: string; courts: CourtNeeded[] }[] = [];
  for (const c of courts) {
    if (c.state !== 'to_ask' || !c.open) continue;
    const known = places.find((p) => p.facility === c.facility);
    if (known) known.courts.push(c);
    else places.push({ facility: c.facility, place: c.place, courts: [c] });
  }
  return places;
}
