import { problem, type Problem } from '../units/index.ts';

/** A number that can be worked with, or NaN. */
export function finite(x: number): number {
  return x - x === 0 ? x : NaN;
}

/** Why two known numbers have no result; `where` names the function. */
export function tooLarge(where: string): Problem {
  return problem(
    where,
    'The number is too large to work with.',
    'Look for a unit or a zero too many.',
  );
}
