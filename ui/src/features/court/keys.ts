// The keys of a goal on court: two figures a goal, and two letters more where a second fact is counted.

const LETTERS = ['qw', 'er', 'zx', 'cv'];

/** The keys of the goal whose first figure is `first`: of the tries with the second fact (row 0), and without it (row 1). */
export function secondKeys(first: number, row: number): [string, string] {
  if (row === 0) return [String(first), String(first + 1)];
  const letters = LETTERS[(first - 1) / 2] ?? '';
  return [letters[0] ?? '', letters[1] ?? ''];
}
