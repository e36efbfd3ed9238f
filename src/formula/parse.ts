import { allow } from './allow.ts';
import { Refused } from './problem.ts';
import type { Parsed } from './syntax.ts';
import { tokens, type Token } from './tokens.ts';
import { readTree } from './read-tree.ts';
import type { MathNode } from './tree.ts';

// `in` converts units in the parser's own language; a stand-in of the same length keeps every place.
const INCH_STAND_IN = 'iN';

// Far more than a person nests, far less than the call stack holds.
const DEEPEST = 250;

// The built-in formulas are read again for every job that is opened, lines of a list many times over.
const kept = new Map<string, Parsed>();
const MOST_KEPT = 2000;

/** Reads the text of a formula; throws Refused where it is not one. Nothing is evaluated. */
export function parse(text: string): Parsed {
  const before = kept.get(text);
  if (before) return before;
  const parsed = parseNew(text);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(text, parsed);
  return parsed;
}

function parseNew(text: string): Parsed {
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
  let root: MathNode;
  try {
    root = readTree(replaced);
  } catch (error) {
    if (error instanceof RangeError) throw tooDeep(body, end);
    throw syntaxError(error, body, end);
  }
  // Each step takes a character or more.
  if (end - (body[0]?.start ?? 0) > DEEPEST && isDeeper(root, DEEPEST)) throw tooDeep(body, end);
  return root;
}

// Without calls of itself: what is too deep would overflow those as well.
function isDeeper(root: MathNode, most: number): boolean {
  let level = [root];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > most) return true;
    const next: MathNode[] = [];
    for (const node of level) next.push(...node.children);
    level = next;
  }
  return false;
}

function tooDeep(body: readonly Token[], end: number): Refused {
  const start = body[0]?.start ?? 0;
  const found = `The formula has more than ${String(DEEPEST)} steps inside one another.`;
  return new Refused({ start, end }, found, 'Split it over two columns.');
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
