// What the rest of the window may use of the edge: calls, their errors, and the types of the command table.
export { CallError, renamed, type Answer, type Changed, type FieldProblem } from './answer';
export { call, onChanges, type Input, type Name, type Output } from './call';
export { codeWords, type Code, type CodeWords } from './words';
export type * from './bindings';
