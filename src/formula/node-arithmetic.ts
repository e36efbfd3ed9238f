import { problem, type Problem } from '../units/index.ts';
import { finite } from './large.ts';
import { CANCELLED } from './near.ts';
import { OneNode, PairNode } from './node-operands.ts';

// What a power takes against a sum of two numbers.
const POWER_EFFORT = 20;

/** `a + b`. Terms that cancel leave zero, not rounding. */
export class SumNode extends PairNode {
  protected combine(count: number): void {
    const { left, right } = this;
    const data = this.hold(count);
    const { data: a, at: p, mask: m } = left;
    const { data: b, at: q, mask: n } = right;
    for (let i = 0; i < count; i++) {
      const x = a[p + (i & m)] as number;
      const y = b[q + (i & n)] as number;
      data[i] = cancelled(x + y, x, y);
    }
  }
}

/** `a - b`. Terms that cancel leave zero, not rounding. */
export class DifferenceNode extends PairNode {
  protected combine(count: number): void {
    const { left, right } = this;
    const data = this.hold(count);
    const { data: a, at: p, mask: m } = left;
    const { data: b, at: q, mask: n } = right;
    for (let i = 0; i < count; i++) {
      const x = a[p + (i & m)] as number;
      const y = b[q + (i & n)] as number;
      data[i] = cancelled(x - y, x, y);
    }
  }
}

/** `a * b`. */
export class ProductNode extends PairNode {
  protected combine(count: number): void {
    const { left, right } = this;
    const data = this.hold(count);
    const { data: a, at: p, mask: m } = left;
    const { data: b, at: q, mask: n } = right;
    for (let i = 0; i < count; i++)
      data[i] = finite((a[p + (i & m)] as number) * (b[q + (i & n)] as number));
  }
}

/** `a / b`; division by zero has no value. */
export class QuotientNode extends PairNode {
  protected combine(count: number): void {
    const { left, right } = this;
    const data = this.hold(count);
    const { data: a, at: p, mask: m } = left;
    const { data: b, at: q, mask: n } = right;
    for (let i = 0; i < count; i++)
      data[i] = finite((a[p + (i & m)] as number) / (b[q + (i & n)] as number));
  }

  protected override why(_left: number, right: number): Problem | undefined {
    if (right !== 0) return undefined;
    return problem(
      '',
      'This divides by zero.',
      'Enter a value other than zero, or leave it blank.',
    );
  }
}

/** `a ^ b`. */
export class PowerNode extends PairNode {
  protected override get effort(): number {
    return POWER_EFFORT;
  }

  protected combine(count: number): void {
    const { left, right } = this;
    const data = this.hold(count);
    for (let i = 0; i < count; i++) {
      const exponent = right.value(i);
      // NaN ^ 0 would be 1, and hide a blank.
      data[i] = left.knows(i) ? finite(left.value(i) ** exponent) : NaN;
    }
  }

  protected override why(left: number): Problem | undefined {
    if (left > 0) return undefined;
    const found = left === 0 ? 'Zero has no such power.' : 'A negative number has no such power.';
    return problem('', found, 'Enter a value above zero.');
  }
}

/** `-a`. */
export class NegativeNode extends OneNode {
  protected combine(count: number): void {
    const data = this.hold(count);
    const { data: from, at, mask } = this.of;
    for (let i = 0; i < count; i++) data[i] = 0 - (from[at + (i & mask)] as number);
  }
}

function cancelled(result: number, x: number, y: number): number {
  const size = Math.abs(result);
  if (size <= CANCELLED * Math.abs(x) && size <= CANCELLED * Math.abs(y)) return 0;
  return finite(result);
}
