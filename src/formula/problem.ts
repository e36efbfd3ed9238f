import type { Problem } from '../units/index.ts';

/** A stretch of formula text, `start` included, `end` not. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** What is wrong with a formula, and under which characters. */
export interface FormulaProblem extends Problem {
  readonly span: Span;
}

/** Carries a FormulaProblem out of the depth of a formula to the one place that returns it. */
export class Refused extends Error {
  readonly problem: FormulaProblem;

  constructor(span: Span, found: string, fix: string) {
    super(found);
    const where = `at character ${String(span.start + 1)}`;
    this.problem = { where, found: shortened(found), fix: shortened(fix), span };
  }
}

// A name of two thousand characters need not be said whole to be found.
function shortened(words: string): string {
  return words.replaceAll(/“([^”]{60})[^”]+”/gu, '“$1…”');
}
