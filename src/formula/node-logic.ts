import { NEAR, near } from './near.ts';
import type { Node } from './node.ts';
import { OneNode, PairNode } from './node-operands.ts';
import type { Comparison } from './syntax.ts';

// Flags differ from row to row without a pattern, and a processor that guesses wrong loses more than a product costs:
// in these loops they are worked with as numbers.

/** `a < b` and its kin, on quantities and dates. On the line is within it. */
export class ComparisonNode extends PairNode {
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
    const { ifLess, ifNear, ifGreater, terms } = this;
    const data = this.hold(count);
    const [a, b] = [this.left.data, this.right.data];
    const [p, q] = [this.left.at, this.right.at];
    const isSum = terms.length > 0;
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      // Twice the closeness that counts, of one side, is certainly more than that of either.
      const far = isSum ? Infinity : 2 * NEAR * Math.abs(y);
      const isLess = Number(x - y < -far);
      const isGreater = Number(x - y > far);
      if ((isLess | isGreater) === 1) data[i] = (isLess & ifLess) | (isGreater & ifGreater);
      else if (near(x, y, isSum ? largest(terms, i) : 0)) data[i] = ifNear;
      else data[i] = x === x && y === y ? (x < y ? ifLess : ifGreater) : NaN;
    }
    this.noteStill(count);
  }
}

/** `a == b` and `a != b` on texts, choices and flags. */
export class SameNode extends PairNode {
  private readonly wanted: 0 | 1;

  constructor(sign: '==' | '!=', left: Node, right: Node) {
    super(left, right);
    this.wanted = sign === '==' ? 1 : 0;
  }

  protected combine(count: number): void {
    const { wanted } = this;
    const data = this.hold(count);
    const [a, b] = [this.left.data, this.right.data];
    const [p, q] = [this.left.at, this.right.at];
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      const same = Number(x === y);
      data[i] = x === x && y === y ? (wanted === 1 ? same : 1 - same) : NaN;
    }
    this.noteStill(count);
  }
}

/** `a and b`, `a or b`: one side alone can decide, whatever the other lacks. */
export class LogicNode extends PairNode {
  /** The value that decides alone: 0 for and, 1 for or. */
  private readonly decider: 0 | 1;
  private readonly isWhole: boolean;

  /** `isWhole`: both sides are worked out in any case. */
  constructor(form: 'both' | 'either', left: Node, right: Node, isWhole: boolean) {
    super(left, right);
    this.decider = form === 'both' ? 0 : 1;
    this.isWhole = isWhole;
  }

  override fill(from: number, count: number): void {
    const { left, right, decider } = this;
    left.fill(from, count);
    if (left.isStill && left.value(0) === decider && !this.isWhole) {
      this.stand(left);
      return;
    }
    right.fill(from, count);
    // What does not decide leaves it to the other.
    if (left.isStill && left.value(0) === 1 - decider) this.stand(right);
    else if (right.isStill && right.knows(0)) this.stand(right.value(0) === decider ? right : left);
    else this.combineAll(count, left.isStill && right.isStill);
  }

  protected combine(count: number): void {
    const { decider } = this;
    const data = this.hold(count);
    const [a, b] = [this.left.data, this.right.data];
    const [p, q] = [this.left.at, this.right.at];
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      const both = x * y;
      if (both === both) data[i] = decider === 0 ? both : x + y - both;
      else data[i] = x === decider || y === decider ? decider : NaN;
    }
    this.noteStill(count);
  }
}

/** `not a`. */
export class NotNode extends OneNode {
  protected combine(count: number): void {
    const data = this.hold(count);
    const { data: flags, at } = this.of;
    for (let i = 0; i < count; i++) data[i] = 1 - (flags[at + i] as number);
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
