import { KNOWN, type State } from '../graph/index.ts';
import type { Problem } from '../units/index.ts';
import { near } from './near.ts';
import { Node, type Trace } from './node.ts';
import { OneNode, PairNode } from './node-operands.ts';
import type { Comparison } from './syntax.ts';

/** A pair that has an answer whenever both sides have. */
abstract class DecidedPair extends PairNode {
  protected why(): Problem {
    throw new Error('Two known sides always compare.');
  }
}

/** `a < b` and its kin, on quantities and dates. On the line is within it. */
export class ComparisonNode extends DecidedPair {
  private readonly sign: Comparison;
  /** What the two sides were added from; blank where neither is a sum. */
  private readonly terms: readonly Node[];

  constructor(sign: Comparison, left: Node, right: Node, terms: readonly Node[]) {
    super(left, right);
    this.sign = sign;
    this.terms = terms;
  }

  protected combine(count: number): void {
    const { data, sign, left, right } = this;
    const wantsNear = sign === '==' || sign === '<=' || sign === '>=';
    for (let i = 0; i < count; i++) {
      const a = left.data[left.at + i] as number;
      const b = right.data[right.at + i] as number;
      if (a !== a || b !== b) data[i] = NaN;
      else if (near(a, b, largest(this.terms, i))) data[i] = wantsNear ? 1 : 0;
      else data[i] = isTrue(sign, a, b) ? 1 : 0;
    }
  }
}

/** `a == b` and `a != b` on texts, choices and flags. */
export class SameNode extends DecidedPair {
  private readonly wanted: 0 | 1;

  constructor(sign: '==' | '!=', left: Node, right: Node) {
    super(left, right);
    this.wanted = sign === '==' ? 1 : 0;
  }

  protected combine(count: number): void {
    const { data, left, right, wanted } = this;
    for (let i = 0; i < count; i++) {
      const a = left.data[left.at + i] as number;
      const b = right.data[right.at + i] as number;
      data[i] = a !== a || b !== b ? NaN : a === b ? wanted : 1 - wanted;
    }
  }
}

/** `a and b`, `a or b`: one side alone can decide, whatever the other lacks. */
export class LogicNode extends DecidedPair {
  /** The value that decides alone: 0 for and, 1 for or. */
  private readonly decider: 0 | 1;

  constructor(form: 'both' | 'either', left: Node, right: Node) {
    super(left, right);
    this.decider = form === 'both' ? 0 : 1;
  }

  protected combine(count: number): void {
    const { data, left, right, decider } = this;
    for (let i = 0; i < count; i++) {
      const a = left.data[left.at + i] as number;
      const b = right.data[right.at + i] as number;
      if (a === decider || b === decider) data[i] = decider;
      else data[i] = a !== a || b !== b ? NaN : 1 - decider;
    }
  }
}

/** `not a`. */
export class NotNode extends OneNode {
  protected combine(count: number): void {
    for (let i = 0; i < count; i++) this.data[i] = 1 - this.of.value(i);
  }
}

/** `a ? b : c`: the branch not taken is not needed. */
export class ChoiceNode extends Node {
  private readonly when: Node;
  private readonly then: Node;
  private readonly otherwise: Node;

  constructor(when: Node, then: Node, otherwise: Node) {
    super();
    this.when = when;
    this.then = then;
    this.otherwise = otherwise;
  }

  override get parts(): readonly Node[] {
    return [this.when, this.then, this.otherwise];
  }

  fill(from: number, count: number): void {
    for (const part of this.parts) part.fill(from, count);
    const { data, when, then, otherwise } = this;
    for (let i = 0; i < count; i++) {
      const flag = when.data[when.at + i] as number;
      if (flag === 1) data[i] = then.data[then.at + i] as number;
      else data[i] = flag === 0 ? (otherwise.data[otherwise.at + i] as number) : NaN;
    }
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    if (!this.when.knows(i)) return this.when.trace(i, trace);
    return (this.when.value(i) === 1 ? this.then : this.otherwise).trace(i, trace);
  }
}

/** The size of the largest term at place `i`. */
export function largest(terms: readonly Node[], i: number): number {
  let size = 0;
  for (const term of terms) {
    const value = Math.abs(term.value(i));
    if (value > size) size = value;
  }
  return size;
}

function isTrue(sign: Comparison, a: number, b: number): boolean {
  switch (sign) {
    case '<':
    case '<=':
      return a < b;
    case '>':
    case '>=':
      return a > b;
    case '==':
      return false;
    case '!=':
      return true;
  }
}
