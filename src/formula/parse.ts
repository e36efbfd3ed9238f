import { create, parseDependencies, type MathNode } from 'mathjs/number';
import { allow } from './allow.ts';
import { Refused } from './problem.ts';
import type { Parsed } from './syntax.ts';
import { tokens, type Token } from './tokens.ts';

const { parse: parseTree } = create(parseDependencies === undefined ? {} : { parseDependencies });

// `in` converts units in the parser's own language; a stand-in of the same length keeps every place.
const INCH_STAND_IN = 'iN';

/** Reads the text of a formula; throws Refused where it is not one. Nothing is evaluated. */
export function parse(text: string): Parsed {
  const all = tokens(text);
  if (all.length === 0)
    throw new Refused({ start: 0, end: 0 }, 'The formula is empty.', 'Write one.');
  const { body, shownIn } = splitUnit(all);
  return { body: allow(tree(body), body), shownIn };
}

function splitUnit(all: readonly Token[]): { body: readonly Token[]; shownIn: Parsed['shownIn'] } {
  const at = all.findIndex((token) => token.type === 'name' && token.text === 'to');
  const to = all[at];
  if (!to) return { body: all, shownIn: undefined };
  const unit = all.slice(at + 1);
  const body = all.slice(0, at);
  const first = unit[0];
  const last = unit.at(-1);
  const depth = body.reduce(
    (sum, { text: sign }) => sum + ('(['.includes(sign) ? 1 : ')]'.includes(sign) ? -1 : 0),
    0,
  );
  const wrong = unit.find((token) => !isUnitPart(token));
  if (depth !== 0 || body.length === 0 || !first || !last || wrong) {
    throw new Refused(
      wrong ?? to,
      '“to” names the unit of the whole formula.',
      'Write it once, at the end, with a unit after it: ... to ft.',
    );
  }
  const span = { start: first.start, end: last.end };
  return { body, shownIn: { ...span, unit: unit.map((token) => token.text).join('') } };
}

function isUnitPart({ type, text }: Token): boolean {
  return (
    (type === 'name' && text !== 'to') || type === 'number' || ['*', '/', '^', '-'].includes(text)
  );
}

function tree(body: readonly Token[]): MathNode {
  const end = body.at(-1)?.end ?? 0;
  // Pieces go back to their places with plain spaces between: a newline would end the statement.
  const replaced = body.reduce(
    (line, { type, text, start }) =>
      line.padEnd(start) + (type === 'name' && text === 'in' ? INCH_STAND_IN : text),
    '',
  );
  try {
    return parseTree(replaced);
  } catch (error) {
    throw syntaxError(error, body, end);
  }
}

function syntaxError(error: unknown, body: readonly Token[], end: number): Refused {
  const character =
    typeof error === 'object' && error !== null && 'char' in error ? Number(error.char) - 1 : NaN;
  const at = body.find((token) => token.end > character);
  if (!at || !(character < end)) {
    return new Refused(
      { start: end, end },
      'The formula stops too early.',
      'Finish it, and close every bracket.',
    );
  }
  return new Refused(
    at,
    `“${at.text}” can't stand here.`,
    'Look for a missing *, comma or bracket before it.',
  );
}
