import type { Answer, Kind } from '../units/index.ts';

/** How far a number can be trusted: a building code, a standard, theory in handbooks, plain arithmetic, or common practice. */
export type Standing = 'code' | 'standard' | 'theory' | 'arithmetic' | 'common practice';

/** What a trade function may be given: SI numbers, text (also for choices), or a list of numbers. */
export type Argument = number | string | readonly number[];

/** One trade function as formulas know it. */
export interface Rule {
  /** Its name in formulas, in snake_case. */
  readonly name: string;
  readonly parameters: readonly Parameter[];
  readonly result: Kind;
  /** The unit its result is usually read in, such as `ft`. */
  readonly unit: string;
  /** What the caller gets, in one sentence. */
  readonly meaning: string;
  /** The rule as its source prints it, with what its letters stand for. */
  readonly equation: string;
  /** Publication, edition and clause. */
  readonly source: string;
  readonly standing: Standing;
  /** Where a wrong use can hurt someone: a short caution to stand beside the number. */
  readonly caution?: string;
  /** SI in, SI out; a Problem where the source does not cover the arguments. */
  readonly apply: (...values: never[]) => Answer;
  /** The values on the way to an answer, for the arguments and the answer it gave; where there are any. */
  readonly onTheWay?: (values: never, answer: never) => readonly OnTheWay[];
}

/** A value that a rule goes through on its way, as a person would write it down. */
export interface OnTheWay {
  /** As the equation calls it: `S1`, `Kz`. */
  readonly symbol: string;
  readonly meaning: string;
  /** With its unit. */
  readonly value: string;
}

/** One argument of a rule. */
export interface Parameter {
  readonly name: string;
  readonly kind: Kind;
}
