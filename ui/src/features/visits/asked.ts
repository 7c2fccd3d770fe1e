// An act that needs a reason, as it is asked for in the one dialog for reasons.

/** What a reason is asked for. */
export interface Asked {
  title: string;
  /** What it concerns, in words above the field. */
  words?: string;
  /** The words on its button. */
  act: string;
  run: (reason: string) => Promise<unknown>;
}
