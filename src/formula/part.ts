import { BLANK, KNOWN, WRONG, type Rows, type State, type Words } from '../graph/index.ts';
import type { OnTheWay } from '../trade/index.ts';
import type { Problem, Value } from '../units/index.ts';
import { wholeReferences } from './check-call.ts';
import { decode } from './code.ts';
import { compileParts } from './compile.ts';
import { parts as inside, type Expression } from './expression.ts';
import type { Node } from './node.ts';
import type { Span } from './problem.ts';

/** One part of a formula, with what it comes to on one row. */
export interface Part {
  readonly expression: Expression;
  /** In SI; undefined where it has none on this row, and for a column that is gone through. */
  readonly value: Value | undefined;
  readonly state: State;
  /** False for a branch that was not taken, and for whatever else could not change the value. */
  readonly used: boolean;
  /** How many rows an aggregate went through, or a whole column has; undefined elsewhere. */
  readonly rows: number | undefined;
  /** Why this very part has no value, where nothing inside it is to blame. */
  readonly problem: Problem | undefined;
  readonly parts: readonly Part[];
}

/** Works out a formula on one row and keeps what every part came to. Nodes of its own are built, so the ones at work stay as they are. */
export function workedParts(expression: Expression, rows: Rows, words: Words, row: number): Part {
  const { node, nodes } = compileParts(expression, rows, words);
  node.restart();
  node.fill(row, 1);
  return new Reader(nodes, words).read(expression, true);
}

/** A part and all those inside it, outermost first, in the order they are written. */
export function allParts(part: Part): readonly Part[] {
  return [part, ...part.parts.flatMap(allParts)];
}

/** The values that the rule of a part goes through on its way; none where it gave no answer. */
export function onTheWay({ expression, parts, value }: Part): readonly OnTheWay[] {
  if (expression.form !== 'rule' || value === undefined) return [];
  const given = parts.map((part) => part.value);
  return expression.rule.onTheWay?.(given as never, value as never) ?? [];
}

/** A part as it is written, with the brackets that belong to it. */
export function partText(formula: string, part: Span): string {
  const { start, end } = partSpan(formula, part);
  return formula.slice(start, end);
}

/** A part and all those inside it, in the order they are worked out: innermost first. */
export function partsInOrder(part: Part): readonly Part[] {
  return [...part.parts.flatMap(partsInOrder), part];
}

/** Where a part stands in its formula, with the brackets that belong to it. */
export function partSpan(formula: string, { start, end }: Span): Span {
  let from = start;
  let to = end;
  const { unopened, unclosed } = openBrackets(formula.slice(start, end));
  for (let left = unopened; left > 0 && from > 0;) {
    from -= 1;
    if (formula[from] === '(' || formula[from] === '[') left -= 1;
  }
  for (let left = unclosed; left > 0 && to < formula.length; to++) {
    if (formula[to] === ')' || formula[to] === ']') left -= 1;
  }
  return { start: from, end: to };
}

class Reader {
  private readonly nodes: ReadonlyMap<Expression, Node>;
  private readonly words: Words;

  constructor(nodes: ReadonlyMap<Expression, Node>, words: Words) {
    this.nodes = nodes;
    this.words = words;
  }

  read(expression: Expression, used: boolean): Part {
    const within = this.within(expression);
    const isUsed = within.map((each, at) => used && this.uses(expression, each, at));
    const parts = within.map((each, at) => this.read(each, isUsed[at] ?? used));
    const node = this.nodes.get(expression);
    const rows = rowsThrough(expression);
    if (!node) {
      const items = parts.map(({ value }) => value);
      const isList = expression.form === 'list' && items.every((item) => item !== undefined);
      const value = isList ? (items as Value) : undefined;
      const state = value === undefined && rows === undefined ? BLANK : KNOWN;
      return { expression, value, state, used, rows, problem: undefined, parts };
    }
    const problems: Problem[] = [];
    const state = node.trace(0, { lacks: () => undefined, wrong: (why) => problems.push(why) });
    const isOwn = state === WRONG && !parts.some((part) => part.used && part.state === WRONG);
    return {
      expression,
      value: node.knows(0) ? decode(node.value(0), expression.kind, this.words) : undefined,
      state,
      used,
      rows,
      problem: isOwn ? problems[0] : undefined,
      parts,
    };
  }

  // Inside an aggregate over a sheet only what stands still has one value.
  private within(expression: Expression): readonly Expression[] {
    const isThrough = expression.form === 'aggregate' && expression.sheet !== '';
    return isThrough ? this.still(expression) : inside(expression);
  }

  private still(expression: Expression): readonly Expression[] {
    return inside(expression).flatMap((each) => {
      if (wholeReferences(each).length > 0) return this.still(each);
      return each.form !== 'constant' && this.nodes.has(each) ? [each] : [];
    });
  }

  private uses(whole: Expression, part: Expression, at: number): boolean {
    switch (whole.form) {
      case 'choice':
        if (part === whole.when) return true;
        return this.number(whole.when) === (part === whole.then ? 1 : 0);
      case 'general':
        if (whole.name === 'given' && at === 1) return this.isBlank(whole.arguments[0]);
        if (whole.name === 'only_if' && at === 0) return this.number(whole.arguments[1]) === 1;
        return true;
      case 'both':
      case 'either': {
        // One side alone decides; the other is not needed.
        const decider = whole.form === 'both' ? 0 : 1;
        if (part === whole.right) return this.number(whole.left) !== decider;
        return this.number(whole.right) !== decider || this.number(part) === decider;
      }
      default:
        return true;
    }
  }

  private number(expression: Expression | undefined): number {
    return (expression && this.nodes.get(expression)?.value(0)) ?? NaN;
  }

  private isBlank(expression: Expression | undefined): boolean {
    return (expression && this.nodes.get(expression)?.trace(0)) === BLANK;
  }
}

function rowsThrough(expression: Expression): number | undefined {
  const reference =
    expression.form === 'aggregate' && expression.sheet !== ''
      ? expression.arguments.flatMap(wholeReferences)[0]
      : expression.form === 'column' && wholeReferences(expression).length > 0
        ? expression.reference
        : undefined;
  return reference?.columns.reduce((count, { rows }) => count + rows.count, 0);
}

function openBrackets(text: string): { readonly unopened: number; readonly unclosed: number } {
  let unopened = 0;
  let unclosed = 0;
  for (const [sign] of text.replace(/"[^"]*"/g, '').matchAll(/[()[\]]/g)) {
    if (sign === '(' || sign === '[') unclosed += 1;
    else if (unclosed > 0) unclosed -= 1;
    else unopened += 1;
  }
  return { unopened, unclosed };
}
