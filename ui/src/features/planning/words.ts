// A plan in words, and what differs between two.
import type { PlanMade, PlannedLesson } from '../../ipc';
import { counted } from '../../kit/counted';
import { shortDay } from '../../kit/dates';
import { timeSpan, timeWords } from '../../kit/times';

/** Whose lesson it is, told apart from those that others share: the visits in one word. */
export function whoseOf(of: { visit: string; with?: readonly string[] }): string {
  return [of.visit, ...(of.with ?? [])].join(' ');
}

/** "Ana", or "Ana and Ben, shared". */
export function nameOf(name: string, shared: readonly string[] | undefined): string {
  return shared?.length ? `${name}, shared` : name;
}

/** Whose lessons they are, in the order of their names, each with its lines in time; those who share lessons
 * are rows of their own. */
export function byPerson(
  lines: readonly PlannedLesson[],
): { name: string; visit: string; whose: string; lines: PlannedLesson[] }[] {
  const people: { name: string; visit: string; whose: string; lines: PlannedLesson[] }[] = [];
  for (const line of lines) {
    const whose = whoseOf(line.place);
    const known = people.find((p) => p.whose === whose);
    if (known) known.lines.push(line);
    else
      people.push({
        name: nameOf(line.name, line.place.with),
        visit: line.place.visit,
        whose,
        lines: [line],
      });
  }
  return people.sort((a, b) => a.name.localeCompare(b.name));
}

/** "Tue 10 Mar, 9:00 – 10:00". */
export function whenOf(line: PlannedLesson): string {
  return `${shortDay(line.place.day)}, ${timeSpan(line.place.starts, line.ends)}`;
}

/** "Court 1, Harbour Hall · 18.00 EUR". */
export function whereOf(line: PlannedLesson): string {
  return [`${line.court_name}, ${line.facility_name}`, line.cost].filter(Boolean).join(' · ');
}

/** What a plan comes to, a line each. */
export function comesTo(plan: PlanMade): { about: string; words: string }[] {
  const missing = plan.missing.reduce((sum, m) => sum + m.lessons, 0);
  return [
    { about: 'lessons', words: String(plan.lines.length) },
    { about: 'without a place', words: String(missing) },
    { about: 'days', words: String(plan.days) },
    { about: 'ways to a facility', words: String(plan.trips) },
    { about: 'courts', words: plan.cost.join(' and ') || 'not known' },
  ];
}

/** Where two plans differ, a line for each lesson that stands elsewhere. */
export function differs(now: PlanMade, aside: PlanMade): string[] {
  const key = (l: PlannedLesson) => `${l.name}|${l.place.day}|${l.place.starts}|${l.place.court}`;
  const [here, there] = [new Set(now.lines.map(key)), new Set(aside.lines.map(key))];
  const said = (l: PlannedLesson) => `${l.name}, ${whenOf(l)}, ${l.court_name}`;
  return [
    ...now.lines.filter((l) => !there.has(key(l))).map((l) => `Only now: ${said(l)}`),
    ...aside.lines.filter((l) => !here.has(key(l))).map((l) => `Only aside: ${said(l)}`),
  ];
}

/** The free hours of each day in a line: "9:00 – 11:00, 14:00 – 16:00". */
export function freeByDay(free: PlanMade['free']): { day: string; words: string }[] {
  const days: { day: string; spans: string[] }[] = [];
  for (const f of free) {
    const span = f.to === '00:00' ? `${timeWords(f.from)} – midnight` : timeSpan(f.from, f.to);
    const known = days.find((d) => d.day === f.day);
    if (known) known.spans.push(span);
    else days.push({ day: f.day, spans: [span] });
  }
  return days.map((d) => ({ day: d.day, words: d.spans.join(', ') }));
}

/** "3 lessons more". */
export function moreWords(lessons: number): string {
  return `${counted(lessons, 'lesson', 'lessons')} more`;
}
