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
  /** The answers where the left side is less, near, or greater. */
  private readonly ifLess: 0 | 1;
  private readonly ifNear: 0 | 1;
  private readonly ifGreater: 0 | 1;
  /** What the two sides were added from; blank where neither is a sum. */
  private readonly terms: readonly Node[];

  constructor(sign: Comparison, left: Node, right: Node, terms: readonly Node[]) {
    super(left, right);
    this.ifLess = sign === '<' || sign === '<=' || sign === '!=' ? 1 : 0;
    this.ifNear = sign === '==' || sign === '<=' || sign === '>=' ? 1 : 0;
    this.ifGreater = sign === '>' || sign === '>=' || sign === '!=' ? 1 : 0;
    this.terms = terms;
  }

  protected combine(count: number): void {
    const { data, ifLess, ifNear, ifGreater, terms } = this;
    const [a, b] = [this.left.data, this.right.data];
    const [p, q] = [this.left.at, this.right.at];
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      if (x !== x || y !== y) data[i] = NaN;
      else if (near(x, y, terms.length === 0 ? 0 : largest(terms, i))) data[i] = ifNear;
      else data[i] = x < y ? ifLess : ifGreater;
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
    const { data, wanted } = this;
    const [a, b] = [this.left.data, this.right.data];
    const [p, q] = [this.left.at, this.right.at];
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      data[i] = x !== x || y !== y ? NaN : x === y ? wanted : 1 - wanted;
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
    const { data, decider } = this;
    const [a, b] = [this.left.data, this.right.data];
    const [p, q] = [this.left.at, this.right.at];
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      if (x === decider || y === decider) data[i] = decider;
      else data[i] = x !== x || y !== y ? NaN : 1 - decider;
    }
  }
}

/** `not a`. */
export class NotNode extends OneNode {
  protected combine(count: number): void {
    const { data } = this;
    const { data: flags, at } = this.of;
    for (let i = 0; i < count; i++) data[i] = 1 - (flags[at + i] as number);
  }
}

/** `a ? b : c`: the branch not taken is not needed, and not worked out where no row of a fill takes it. */
export class ChoiceNode extends Node {
  private readonly when: Node;
  private readonly then: Node;
  private readonly otherwise: Node;
  private readonly isWhole: boolean;
  private readonly own = this.data;
  /** Which branches the last fill worked out. */
  private hasYes = false;
  private hasNo = false;

  /** `isWhole`: both branches are worked out in any case, for somebody who wants to see them. */
  constructor(when: Node, then: Node, otherwise: Node, isWhole: boolean) {
    super();
    this.when = when;
    this.then = then;
    this.otherwise = otherwise;
    this.isWhole = isWhole;
  }

  override get parts(): readonly Node[] {
    return [this.when, this.then, this.otherwise];
  }

  fill(from: number, count: number): void {
    const { own, when, then, otherwise } = this;
    when.fill(from, count);
    const [flags, w] = [when.data, when.at];
    let yeses = 0;
    let noes = 0;
    for (let i = 0; i < count; i++) {
      const flag = flags[w + i];
      if (flag === 1) yeses += 1;
      else if (flag === 0) noes += 1;
    }
    this.hasYes = yeses > 0 || this.isWhole;
    this.hasNo = noes > 0 || this.isWhole;
    if (this.hasYes) then.fill(from, count);
    if (this.hasNo) otherwise.fill(from, count);
    // Where all rows take one branch, it is read where it stands.
    if (yeses === count) {
      this.stand(then);
      return;
    }
    if (noes === count) {
      this.stand(otherwise);
      return;
    }
    const [yes, y, no, n] = [then.data, then.at, otherwise.data, otherwise.at];
    for (let i = 0; i < count; i++) {
      const flag = flags[w + i] as number;
      if (flag === 1) own[i] = yes[y + i] as number;
      else own[i] = flag === 0 ? (no[n + i] as number) : NaN;
    }
    this.data = own;
    this.at = 0;
  }

  override stated(count: number): Uint8Array {
    const { when, then, otherwise } = this;
    const states = this.room().subarray(0, count);
    const unknown = when.stated(count);
    const yes = this.hasYes ? then.stated(count) : states;
    const no = this.hasNo ? otherwise.stated(count) : states;
    const [flags, w] = [when.data, when.at];
    for (let i = 0; i < count; i++) {
      const flag = flags[w + i];
      states[i] = (flag === 1 ? yes[i] : flag === 0 ? no[i] : unknown[i]) as State;
    }
    return states;
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
