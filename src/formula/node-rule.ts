import { BLANK, KNOWN, WRONG, worse, type Column, type State } from '../graph/index.ts';
import type { Argument, Rule } from '../trade/index.ts';
import { isProblem, type Answer } from '../units/index.ts';
import { Node, type Trace } from './node.ts';
import { worstOf } from './node-operands.ts';

/** Hands a rule one argument, in the form the rule takes it. */
export interface ArgumentSource {
  readonly nodes: readonly Node[];
  /** The argument at place `i` of the last fill; undefined where it is not known. */
  argument(i: number): Argument | undefined;
  /** The state where the argument is not known. */
  trace(i: number, trace?: Trace): State;
}

/**
 * A call of a trade function. A refusal is kept as not known, and asked for again when somebody wants to hear it.
 *
 * Rules are pure and rows of one job much alike, so a row with the arguments of the row before takes its answer.
 */
export class RuleNode extends Node {
  private readonly apply: (...values: readonly Argument[]) => Answer;
  private readonly given: readonly ArgumentSource[];
  private readonly isNumeric: boolean;
  private readonly nodes: readonly Node[];
  /** What the nodes held at the last call, and what came of it. */
  private readonly last: Float64Array;
  private lastAnswer = NaN;
  private hasLast = false;

  constructor(rule: Rule, given: readonly ArgumentSource[]) {
    super();
    this.apply = rule.apply as (...values: readonly Argument[]) => Answer;
    this.given = given;
    this.nodes = given.flatMap(({ nodes }) => nodes);
    this.isNumeric = given.length <= 4 && given.every((source) => source instanceof NumberSource);
    this.last = new Float64Array(this.nodes.length);
  }

  override get parts(): readonly Node[] {
    return this.nodes;
  }

  override restart(): void {
    super.restart();
    // A whole column may have changed meanwhile.
    this.hasLast = false;
  }

  fill(from: number, count: number): void {
    for (const node of this.nodes) node.fill(from, count);
    const { data, nodes, last } = this;
    for (let i = 0; i < count; i++) {
      let isSame = this.hasLast;
      let isKnown = true;
      for (let at = 0; at < nodes.length; at++) {
        const node = nodes[at] as Node;
        const value = node.data[node.at + i] as number;
        if (value !== value) isKnown = false;
        if (value !== last[at]) isSame = false;
        last[at] = value;
      }
      if (!isSame) {
        this.lastAnswer = !isKnown
          ? NaN
          : this.isNumeric
            ? this.numeric()
            : numberOf(this.answer(i));
        this.hasLast = isKnown;
      }
      data[i] = this.lastAnswer;
    }
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    const state = this.given.reduce<State>((worst, source) => {
      return source.argument(i) === undefined ? worse(worst, source.trace(i, trace)) : worst;
    }, KNOWN);
    if (state !== KNOWN) return state;
    const answer = this.answer(i);
    if (isProblem(answer)) trace?.wrong(answer);
    return WRONG;
  }

  // The commonest calls by far; no array is made a row.
  private numeric(): number {
    const { apply, last } = this;
    return numberOf(
      apply(last[0] as number, last[1] as number, last[2] as number, last[3] as number),
    );
  }

  private answer(i: number): Answer {
    const values: Argument[] = [];
    for (const source of this.given) {
      const value = source.argument(i);
      if (value === undefined) return NaN;
      values.push(value);
    }
    return this.apply(...values);
  }
}

/** An argument that stands in one cell: a number, or what a number stands for. */
export class CellSource implements ArgumentSource {
  readonly nodes: readonly Node[];
  private readonly node: Node;
  private readonly read: (value: number) => Argument;

  constructor(node: Node, read: (value: number) => Argument) {
    this.node = node;
    this.nodes = [node];
    this.read = read;
  }

  argument(i: number): Argument | undefined {
    return this.node.knows(i) ? this.read(this.node.value(i)) : undefined;
  }

  trace(i: number, trace?: Trace): State {
    return this.node.trace(i, trace);
  }
}

/** An argument that is a number. */
export class NumberSource extends CellSource {
  constructor(node: Node) {
    super(node, (value) => value);
  }
}

/** An argument that is a list written in the formula. */
export class ItemsSource implements ArgumentSource {
  readonly nodes: readonly Node[];

  constructor(items: readonly Node[]) {
    this.nodes = items;
  }

  argument(i: number): readonly number[] | undefined {
    return this.nodes.every((node) => node.knows(i))
      ? this.nodes.map((node) => node.value(i))
      : undefined;
  }

  trace(i: number, trace?: Trace): State {
    return worstOf(this.nodes, i, trace);
  }
}

/** An argument that is a whole column of another sheet, as a list. */
export class WholeColumnSource implements ArgumentSource {
  readonly nodes: readonly Node[] = [];
  private readonly columns: readonly Column[];

  constructor(columns: readonly Column[]) {
    this.columns = columns;
  }

  argument(): readonly number[] | undefined {
    const values: number[] = [];
    for (const { values: from, rows } of this.columns) {
      for (let row = 0; row < rows.count; row++) values.push(from[row] ?? NaN);
    }
    return values.some(Number.isNaN) ? undefined : values;
  }

  trace(_i: number, trace?: Trace): State {
    let worst: State = KNOWN;
    for (const column of this.columns) {
      for (let row = 0; row < column.rows.count; row++) {
        const state = (column.states[row] ?? BLANK) as State;
        if (state !== KNOWN) trace?.lacks(column, row);
        worst = worse(worst, state);
      }
    }
    return worst;
  }
}

function numberOf(answer: Answer): number {
  return typeof answer === 'number' && Number.isFinite(answer) ? answer : NaN;
}
