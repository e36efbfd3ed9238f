import type { Kind } from './kind.ts';
import type { Problem } from './problem.ts';

/** What a cell holds: SI numbers for quantities and dates, true/false for flags, text, or a list of these. */
export type Value = number | string | boolean | readonly Value[];

/** An entry that could be read. */
export interface Reading {
  readonly value: Value;
  /** The unit it was written in, such as `in`, `ft` or `mm`; blank where none applies. */
  readonly unit: string;
  /** Written with `~`, `abt` or the like. */
  readonly approximate?: boolean;
  /** Carries no unit of its own and took the one offered. */
  readonly unitAssumed?: boolean;
  /** A direction written in the same cell, such as the E of `3/8 E`. */
  readonly toward?: string;
  /** The level length written in the same cell, such as the 4' of `3/8 out in 4'`. [m] */
  readonly over?: number;
}

/** An entry that could mean more than one thing, or says that no reading was taken: the person is asked, nothing is guessed. */
export interface Doubt {
  /** `unit`: a number whose unit nobody knows; `reading`: several readings; `not taken`: `?`, `n/a`; `ditto`: a lone ditto mark. */
  readonly doubt: 'unit' | 'reading' | 'not taken' | 'ditto';
  readonly question: string;
  readonly choices: readonly Choice[];
}

/** One possible answer: the words shown, and the entry that would stand in the cell. */
export interface Choice {
  readonly label: string;
  readonly entry: string;
}

/** How a bare number and a comma are to be taken. */
export interface ReadingOptions {
  /** The unit a number without one takes; absent means such a number is a Doubt of kind `unit` (0 needs none). */
  readonly unit?: string;
  /** The decimal mark where it is known; absent means `1,200` is a Doubt. */
  readonly decimal?: '.' | ',';
}

/** Reads one entry of a given kind. Blank text is not handled here: the caller knows that blank is blank. */
export type ReadEntry = (
  text: string,
  kind: Kind,
  options?: ReadingOptions,
) => Reading | Doubt | Problem;

/** Tells a Doubt from a Reading or a Problem. */
export function isDoubt(read: Reading | Doubt | Problem): read is Doubt {
  return 'doubt' in read;
}
