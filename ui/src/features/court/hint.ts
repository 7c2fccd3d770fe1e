// What is said beside the count of a block under way.

/** The parts of a block that the hint looks at. */
export interface UnderWay {
  uncounted: number;
  tries: readonly boolean[];
  count: { tries: number };
}

/** From this many tries on, a block has a pause at its half. */
const LONG = 20;

/** What to say beside the count: the first tries, a pause at half of a long block, that it is enough. */
export function hint(block: UnderWay, of: number | null): string {
  const says: string[] = [];
  if (block.uncounted > 0) says.push(`first ${block.uncounted} not counted`);
  if (of === null) return says.join(' · ');
  if (block.count.tries >= of) says.push(`all ${of} tried: end the block`);
  else if (of >= LONG && block.count.tries * 2 === of)
    says.push(`${block.count.tries} of ${of} tried: a pause`);
  return says.join(' · ');
}
