export { functionNames } from './check-call.ts';
export { decode, encode } from './compile.ts';
export type { Expression, Reference, Scope } from './expression.ts';
export { EMPTY_SCOPE, isFormula, readFormula, type Formula } from './formula.ts';
export type { Trace } from './node.ts';
export type { FormulaProblem, Span } from './problem.ts';
export { Program } from './program.ts';
