import { NEAR, near } from './near.ts';
import type { Node } from './node.ts';
import { OneNode, PairNode } from './node-operands.ts';
import type { Comparison } from './syntax.ts';

// Flags differ from row to row without a pattern, and a processor that guesses wrong loses more than a product costs:
// in these loops they are worked with as numbers.

/** A node whose values are flags. */
abstract class FlagNode extends PairNode {
  /** Notes that all rows came to one value, where they did: what follows from flags is mostly that. */
  protected noteFlags(count: number, trues: number, falses: number): void {
    const isStill = trues === count || falses === count || trues + falses === 0;
    this.mask = isStill && count > 1 ? 0 : -1;
  }
}

/** `a < b` and its kin, on quantities and dates. On the line is within it. */
export class ComparisonNode extends FlagNode {
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
    const { data: a, at: p, mask: m } = this.left;
    const { data: b, at: q, mask: n } = this.right;
    const isSum = terms.length > 0;
    let trues = 0;
    let falses = 0;
    for (let i = 0; i < count; i++) {
      const x = a[p + (i & m)] as number;
      const y = b[q + (i & n)] as number;
      // Twice the closeness that counts, of one side, is certainly more than that of either.
      const far = isSum ? Infinity : 2 * NEAR * Math.abs(y);
      const isLess = Number(x - y < -far);
      const isGreater = Number(x - y > far);
      let flag = (isLess & ifLess) | (isGreater & ifGreater);
      if ((isLess | isGreater) === 0) {
        if (near(x, y, isSum ? largest(terms, i) : 0)) flag = ifNear;
        else if (x === x && y === y) flag = x < y ? ifLess : ifGreater;
        else {
          data[i] = NaN;
          continue;
        }
      }
      data[i] = flag;
      trues += flag;
      falses += 1 - flag;
    }
    this.noteFlags(count, trues, falses);
  }
}

/** `a == b` and `a != b` on texts, choices and flags. */
export class SameNode extends FlagNode {
  private readonly unwanted: 0 | 1;

  constructor(sign: '==' | '!=', left: Node, right: Node) {
    super(left, right);
    this.unwanted = sign === '==' ? 0 : 1;
  }

  protected combine(count: number): void {
    const { unwanted } = this;
    const data = this.hold(count);
    const { data: a, at: p, mask: m } = this.left;
    const { data: b, at: q, mask: n } = this.right;
    let trues = 0;
    let falses = 0;
    for (let i = 0; i < count; i++) {
      const x = a[p + (i & m)] as number;
      const y = b[q + (i & n)] as number;
      if (x !== x || y !== y) {
        data[i] = NaN;
        continue;
      }
      const flag = Number(x === y) ^ unwanted;
      data[i] = flag;
      trues += flag;
      falses += 1 - flag;
    }
    this.noteFlags(count, trues, falses);
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
    const { data: a, at: p, mask: m } = this.left;
    const { data: b, at: q, mask: n } = this.right;
    for (let i = 0; i < count; i++) {
      const x = a[p + (i & m)] as number;
      const y = b[q + (i & n)] as number;
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
    const { data: flags, at, mask } = this.of;
    for (let i = 0; i < count; i++) data[i] = 1 - (flags[at + (i & mask)] as number);
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
