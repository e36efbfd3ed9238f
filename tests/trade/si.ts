import { expect } from 'vitest';
import { fromSI, isProblem, parseUnit, sentence, type Problem } from '../../src/units/index.ts';

/** An SI number from one in a trade unit. */
export function si(number: number, symbol: string): number {
  return number * unit(symbol).factor + unit(symbol).offset;
}

/** The answer in a trade unit; fails the test where the function refused. */
export function read(answer: number | Problem, symbol = ''): number {
  if (isProblem(answer)) throw new Error(`Refused: ${sentence(answer)}`);
  return fromSI(answer, unit(symbol));
}

/** Expects a number within an absolute tolerance of the printed one. */
export function expectNear(answer: number, printed: number, tolerance: number): void {
  expect(
    Math.abs(answer - printed),
    `${String(answer)} for ${String(printed)}`,
  ).toBeLessThanOrEqual(tolerance);
}

/** Expects equality but for floating-point noise. */
export function expectExact(answer: number, printed: number): void {
  expectNear(answer, printed, 1e-12 * Math.max(1, Math.abs(printed)));
}

/** The refusal; fails the test where there was a number. */
export function refusal(answer: number | Problem): Problem {
  if (!isProblem(answer)) throw new Error(`Answered ${String(answer)} where it should refuse.`);
  expect(answer.where).not.toBe('');
  expect(answer.found).not.toBe('');
  expect(answer.fix).not.toBe('');
  // What a person typed stands in quotes and may hold anything.
  const wording = sentence(answer).replace(/“[^”]*”/g, '');
  expect(wording).not.toMatch(/invalid|failed|null|undefined|NaN|!/);
  return answer;
}

function unit(symbol: string) {
  const known = parseUnit(symbol);
  if (!known) throw new Error(`No unit is called ${symbol}.`);
  return known;
}
