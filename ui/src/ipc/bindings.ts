// Generated from the command table by "npm run bindings". Never edited by hand.

/** Every command: what it takes and what it gives. */
export interface Commands {}

/** The names of all commands. */
export const commandNames = [] as const;
