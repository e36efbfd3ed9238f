import type { Steps } from './steps.ts';

/** As many signs are read at one go. */
const STEP = 50_000;
/** What lies deeper is read at one go: no notebook goes so deep. */
const DEEPEST = 8;

/** Reads a JSON text as `JSON.parse` does, a step at a time; whoever asks for the steps may let the page breathe between two. */
export function* parseSteps(text: string): Steps<unknown> {
  let at = 0;
  let rested = 0;

  const skip = (): string | undefined => {
    while (/\s/.test(text[at] ?? '')) at += 1;
    return text[at];
  };

  const goOver = (sign: string): boolean => {
    const isThere = skip() === sign;
    if (isThere) at += 1;
    return isThere;
  };

  const whole = (end: number): unknown => {
    const value = JSON.parse(text.slice(at, end)) as unknown;
    at = end;
    return value;
  };

  function* valueAt(depth: number): Steps<unknown> {
    const first = skip();
    if (at - rested > STEP) {
      rested = at;
      yield;
    }
    const end = endOf(text, at, depth < DEEPEST ? at + STEP : Infinity);
    if (end !== undefined) return whole(end);
    at += 1;
    const items: unknown[] = [];
    const [close, isList] = first === '[' ? [']', true] : ['}', false];
    do {
      if (isList) items.push(yield* valueAt(depth + 1));
      else {
        const key = skip() === '"' ? whole(endOf(text, at, Infinity) ?? at) : undefined;
        if (key === undefined || !goOver(':')) throw new SyntaxError('JSON');
        items.push([key, yield* valueAt(depth + 1)]);
      }
    } while (goOver(','));
    if (!goOver(close)) throw new SyntaxError('JSON');
    // So that a part called `__proto__` is a part like any other.
    return isList ? items : Object.fromEntries(items as [string, unknown][]);
  }

  const value = yield* valueAt(0);
  if (skip() !== undefined) throw new SyntaxError('JSON');
  return value;
}

/** Where the value that begins at a place ends; undefined where a list or an object goes on beyond `limit`. */
function endOf(text: string, from: number, limit: number): number | undefined {
  let depth = 0;
  for (let at = from; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === '"') {
      at = endOfText(text, at);
      if (depth === 0) return at + 1;
    } else if (sign === '{' || sign === '[') depth += 1;
    else if (sign === '}' || sign === ']') {
      depth -= 1;
      if (depth <= 0) return depth === 0 ? at + 1 : at;
    } else if (depth === 0 && (sign === ',' || sign === ':')) return at;
    if (depth > 0 && at > limit) return undefined;
  }
  return text.length;
}

/** The place of the mark that ends a text. */
function endOfText(text: string, from: number): number {
  for (let at = text.indexOf('"', from + 1); at >= 0; at = text.indexOf('"', at + 1)) {
    let marks = 0;
    while (text[at - 1 - marks] === '\\') marks += 1;
    if (marks % 2 === 0) return at;
  }
  return text.length;
}
