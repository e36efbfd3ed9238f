import {
  fromSI,
  isProblem,
  parseUnit,
  problem,
  type Answer,
  type Problem,
} from '../units/index.ts';

/** One bound of a source: nothing where the arguments keep it, else what was found and what to do. */
export type Limit = readonly [found: string, fix: string] | undefined;

/** The worked answer where every limit is kept, else the first limit broken, in the name of the function `where`. */
export function covered(where: string, limits: readonly Limit[], work: () => Answer): Answer {
  const broken = limits.find((limit) => limit !== undefined);
  if (broken) return refusal(where, broken);
  const answer = work();
  if (isProblem(answer)) return { ...answer, where };
  if (Number.isFinite(answer)) return answer;
  return problem(
    where,
    'The numbers entered are too large or too small to work with.',
    'Check each number and its unit.',
  );
}

/** A limit that was broken, as a Problem of the function `where`. */
export function refusal(where: string, [found, fix]: NonNullable<Limit>): Problem {
  return problem(where, found, fix);
}

/** Refuses zero, negative sizes and anything that is no number. */
export function aboveZero(what: string, value: number, unit: string): Limit {
  if (value > 0) return undefined;
  return [`The ${what} is “${shown(value, unit)}”.`, `Enter the ${what} as more than 0.`];
}

/** Refuses negative amounts and anything that is no number. */
export function zeroOrMore(what: string, value: number, unit: string): Limit {
  if (value >= 0) return undefined;
  return [`The ${what} is “${shown(value, unit)}”.`, `Enter the ${what} as 0 or more.`];
}

/** Refuses values outside a range; on the line is within it. */
export function between(
  what: string,
  value: number,
  [low, high]: readonly [number, number],
  unit: string,
  advice = '',
): Limit {
  if (atMost(low, value) && atMost(value, high)) return undefined;
  const range = `Keep the ${what} between ${shown(low, unit)} and ${shown(high, unit)}.`;
  return [`The ${what} is “${shown(value, unit)}”.`, advice === '' ? range : `${range} ${advice}`];
}

/** Refuses a text that is not among the known ones. */
export function oneOf(what: string, value: string, known: readonly string[]): Limit {
  if (known.includes(value)) return undefined;
  return [`“${value}” is no ${what} known here.`, `Choose one of ${known.join(', ')}.`];
}

/** Whether a is at most b, counting as equal what is within 1e-9 of the larger. */
export function atMost(a: number, b: number): boolean {
  return a <= b || a - b <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}

/** An SI value in a trade unit, to five digits, such as `2.5 in`. */
export function shown(value: number, symbol: string): string {
  const unit = parseUnit(symbol);
  if (!unit) throw new Error(`No unit is called ${symbol}.`);
  const number = String(Number(fromSI(value, unit).toPrecision(5)));
  return symbol === '' ? number : `${number} ${symbol}`;
}
