// Short dated facts about a student, in words and by kind.
import type { Fact, FactKind } from '../../ipc';

/** What a fact is about. */
export const factWords: Record<FactKind, string> = {
  equipment: 'Equipment',
  level: 'Level',
  history: 'Playing history',
};

/** The kinds as options, in their order. */
export const factKinds = (Object.keys(factWords) as FactKind[]).map((value) => ({
  value,
  words: factWords[value],
}));

/** The newest of each kind, or all: they come with the newest of each kind first. */
export function newest(facts: readonly Fact[], all: boolean): Fact[] {
  return facts.filter((f, i) => all || facts[i - 1]?.kind !== f.kind);
}
