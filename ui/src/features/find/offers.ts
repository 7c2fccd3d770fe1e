// What the field in the head offers: screens and acts whose words fit, then what the core found.
import type { Output } from '../../ipc';

/** One line of the offer: its words, what it is, and where it leads. */
export interface Offer {
  words: string;
  kind: string;
  href: string;
}

type Found = Output<'reports.find'>[number];

/** What can be done from anywhere. */
const ACTS: readonly Offer[] = [
  { words: 'Add a student', kind: 'do', href: '#/people/new' },
  { words: 'Add a facility', kind: 'do', href: '#/places/new' },
  { words: 'Bring in a spreadsheet', kind: 'do', href: '#/import' },
  { words: 'Costs', kind: 'go to', href: '#/costs' },
  { words: 'The year in figures', kind: 'go to', href: '#/year' },
];

const leads: Record<Found['kind'], { kind: string; to: string }> = {
  student: { kind: 'student', to: '#/people/' },
  facility: { kind: 'facility', to: '#/places/' },
  goal: { kind: 'goal', to: '#/goals/' },
};

/** What fits the words typed: names first, then acts and screens that have every part in their words. */
export function offers(typed: string, found: readonly Found[], screens: readonly Offer[]): Offer[] {
  const parts = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (parts.length === 0) return [];
  const fits = ({ words }: Offer) => parts.every((part) => words.toLowerCase().includes(part));
  return [
    ...found.map((one) => ({
      words: one.name,
      kind: [leads[one.kind].kind, one.of].filter(Boolean).join(', '),
      href: leads[one.kind].to + one.id,
    })),
    ...ACTS.filter(fits),
    ...screens.filter(fits),
  ];
}

/** The place after a step up or down among so many, from none (-1), round and round. */
export function stepped(at: number, by: 1 | -1, many: number): number {
  if (many === 0) return -1;
  if (at < 0) return by > 0 ? 0 : many - 1;
  return (at + by + many) % many;
}
