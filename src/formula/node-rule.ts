import { BLANK, KNOWN, WRONG, worse, type Column, type State } from '../graph/index.ts';
import type { Argument, Rule } from '../trade/index.ts';
import { isProblem, type Answer } from '../units/index.ts';
import { Node, type Trace } from './node.ts';
import { needingAll, worstOf } from './node-operands.ts';

// About what a rule takes that refuses, against a sum of two numbers, and each number more in a list.
const RULE_EFFORT = 2000;
const ITEM_EFFORT = 500;

/** Hands a rule one argument, in the form the rule takes it. */
export interface ArgumentSource {
  readonly nodes: readonly Node[];
  /** How many numbers it is. */
  length(): number;
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
  /** Each argument where it stands in one cell, as at the last call: a text is not looked up again for each row. */
  private readonly kept: Argument[] | undefined;
  /** What the nodes held at the last call, and what came of it. */
  private readonly last: Float64Array;
  private lastAnswer = NaN;
  private hasLast = false;

  constructor(rule: Rule, given: readonly ArgumentSource[]) {
    super(given.flatMap(({ nodes }) => nodes));
    this.apply = rule.apply as (...values: readonly Argument[]) => Answer;
    this.given = given;
    this.isNumeric = given.length <= 4 && given.every((source) => source instanceof NumberSource);
    const isCells = given.every((source) => source instanceof CellSource);
    this.kept = isCells ? given.map(() => NaN) : undefined;
    this.last = new Float64Array(Math.max(4, this.parts.length)).fill(NaN);
  }

  protected override get effort(): number {
    return this.given.reduce((sum, source) => sum + ITEM_EFFORT * source.length(), RULE_EFFORT);
  }

  override get keeps(): boolean {
    return true;
  }

  override get choosy(): readonly Node[] {
    return [this, ...super.choosy];
  }

  override restart(): void {
    super.restart();
    // A whole column may have changed meanwhile.
    this.hasLast = false;
  }

  protected override combine(count: number): void {
    if (this.isNumeric) this.combineNumbers(count);
    else this.combineAny(count);
  }

  private combineAny(count: number): void {
    const data = this.hold(count);
    const { parts: nodes, last, lookedAt, kept } = this;
    const moving: number[] = [];
    let isStillKnown = true;
    nodes.forEach((node, at) => {
      if (!node.isStill) {
        moving.push(at);
        return;
      }
      const value = node.value(0);
      if (value !== value) isStillKnown = false;
      if (value === last[at]) return;
      this.hasLast = false;
      this.keep(at, value);
    });
    for (let i = 0; i < count; i++) {
      if (lookedAt?.[i] === 0) {
        data[i] = NaN;
        continue;
      }
      let isSame = this.hasLast;
      let isKnown = isStillKnown;
      for (const at of moving) {
        const node = nodes[at] as Node;
        const value = node.data[node.at + i] as number;
        if (value !== value) isKnown = false;
        if (value === last[at]) continue;
        isSame = false;
        this.keep(at, value);
      }
      if (!isSame) {
        this.lastAnswer = isKnown ? numberOf(kept ? this.apply(...kept) : this.answer(i)) : NaN;
        this.hasLast = isKnown;
      }
      data[i] = this.lastAnswer;
    }
  }

  private keep(at: number, value: number): void {
    this.last[at] = value;
    if (this.kept && value === value) this.kept[at] = (this.given[at] as CellSource).read(value);
  }

  override stated(count: number): Uint8Array {
    const isCells = this.given.every(({ nodes }) => nodes.length > 0);
    if (!isCells) return super.stated(count);
    return needingAll(this, this.parts, this.room(), count);
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

  // The commonest calls by far: up to four numbers, and no array a row.
  private combineNumbers(count: number): void {
    const { apply, parts: nodes, last, lookedAt } = this;
    const data = this.hold(count);
    const many = nodes.length;
    const { data: a, at: p, mask: k } = nodes[0] ?? NOUGHT;
    const { data: b, at: q, mask: l } = nodes[1] ?? NOUGHT;
    const { data: c, at: r, mask: m } = nodes[2] ?? NOUGHT;
    const { data: d, at: s, mask: n } = nodes[3] ?? NOUGHT;
    let w = last[0] as number;
    let x = last[1] as number;
    let y = last[2] as number;
    let z = last[3] as number;
    let answer = this.hasLast ? this.lastAnswer : NaN;
    let isKept = this.hasLast;
    for (let i = 0; i < count; i++) {
      if (lookedAt?.[i] === 0) {
        data[i] = NaN;
        continue;
      }
      const e = a[p + (i & k)] as number;
      const f = b[q + (i & l)] as number;
      const g = c[r + (i & m)] as number;
      const h = d[s + (i & n)] as number;
      // What is not known is never the same.
      if (!isKept || e !== w || f !== x || g !== y || h !== z) {
        isKept = true;
        w = e;
        x = f;
        y = g;
        z = h;
        if (e !== e || f !== f || g !== g || h !== h) answer = NaN;
        else if (many === 1) answer = numberOf(apply(e));
        else if (many === 2) answer = numberOf(apply(e, f));
        else if (many === 3) answer = numberOf(apply(e, f, g));
        else answer = numberOf(many === 4 ? apply(e, f, g, h) : apply());
      }
      data[i] = answer;
    }
    last[0] = w;
    last[1] = x;
    last[2] = y;
    last[3] = z;
    this.lastAnswer = answer;
    this.hasLast = isKept;
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
  readonly read: (value: number) => Argument;

  constructor(node: Node, read: (value: number) => Argument) {
    this.node = node;
    this.nodes = [node];
    this.read = read;
  }

  length(): number {
    return 1;
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

  length(): number {
    return this.nodes.length;
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
  private list: readonly number[] | undefined;
  private listedAt = -1;

  constructor(columns: readonly Column[]) {
    this.columns = columns;
  }

  length(): number {
    return this.columns.reduce((sum, { rows }) => sum + rows.count, 0);
  }

  // Each row of a sheet may ask for the same list: it is made once for each state of the columns.
  argument(): readonly number[] | undefined {
    // Versions only grow, so no two states have one sum.
    const at = this.columns.reduce((sum, { version }) => sum + version, 0);
    if (at !== this.listedAt) {
      this.listedAt = at;
      this.list = this.made();
    }
    return this.list;
  }

  private made(): readonly number[] | undefined {
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

/** Stands for an argument that a rule does not take. */
const NOUGHT = { data: new Float64Array(1), at: 0, mask: 0 };

function numberOf(answer: Answer): number {
  return typeof answer === 'number' && Number.isFinite(answer) ? answer : NaN;
}
