import { WRONG, worse, KNOWN, type State } from '../graph/index.ts';
import { problem, type Problem } from '../units/index.ts';
import { CANCELLED } from './near.ts';
import { Node, type Trace } from './node.ts';

/** A node with two operands, both always needed. */
abstract class PairNode extends Node {
  protected readonly left: Node;
  protected readonly right: Node;

  constructor(left: Node, right: Node) {
    super();
    this.left = left;
    this.right = right;
  }

  override get parts(): readonly Node[] {
    return [this.left, this.right];
  }

  fill(from: number, count: number): void {
    this.left.fill(from, count);
    this.right.fill(from, count);
    this.combine(count);
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    const states = this.parts.map((part) => (part.knows(i) ? KNOWN : part.trace(i, trace)));
    const state = states.reduce<State>(worse, KNOWN);
    if (state !== KNOWN) return state;
    trace?.wrong(this.why(this.left.value(i), this.right.value(i)));
    return WRONG;
  }

  protected abstract combine(count: number): void;

  protected abstract why(left: number, right: number): Problem;
}

/** `a + b`. Terms that cancel leave zero, not rounding. */
export class SumNode extends PairNode {
  protected combine(count: number): void {
    const { data, left, right } = this;
    const [a, b] = [left.data, right.data];
    const [p, q] = [left.at, right.at];
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      data[i] = cancelled(x + y, x, y);
    }
  }

  protected why(): Problem {
    return tooLarge();
  }
}

/** `a - b`. Terms that cancel leave zero, not rounding. */
export class DifferenceNode extends PairNode {
  protected combine(count: number): void {
    const { data, left, right } = this;
    const [a, b] = [left.data, right.data];
    const [p, q] = [left.at, right.at];
    for (let i = 0; i < count; i++) {
      const x = a[p + i] as number;
      const y = b[q + i] as number;
      data[i] = cancelled(x - y, x, y);
    }
  }

  protected why(): Problem {
    return tooLarge();
  }
}

/** `a * b`. */
export class ProductNode extends PairNode {
  protected combine(count: number): void {
    const { data, left, right } = this;
    const [a, b] = [left.data, right.data];
    const [p, q] = [left.at, right.at];
    for (let i = 0; i < count; i++) data[i] = finite((a[p + i] as number) * (b[q + i] as number));
  }

  protected why(): Problem {
    return tooLarge();
  }
}

/** `a / b`; division by zero has no value. */
export class QuotientNode extends PairNode {
  protected combine(count: number): void {
    const { data, left, right } = this;
    const [a, b] = [left.data, right.data];
    const [p, q] = [left.at, right.at];
    for (let i = 0; i < count; i++) data[i] = finite((a[p + i] as number) / (b[q + i] as number));
  }

  protected why(_left: number, right: number): Problem {
    if (right !== 0) return tooLarge();
    return problem(
      '',
      'This divides by zero.',
      'Enter a value other than zero, or leave it blank.',
    );
  }
}

/** `a ^ b`. */
export class PowerNode extends PairNode {
  protected combine(count: number): void {
    const { data, left, right } = this;
    for (let i = 0; i < count; i++) {
      const exponent = right.value(i);
      // NaN ^ 0 would be 1, and hide a blank.
      data[i] = left.knows(i) ? finite(left.value(i) ** exponent) : NaN;
    }
  }

  protected why(left: number): Problem {
    if (left > 0) return tooLarge();
    const found = left === 0 ? 'Zero has no such power.' : 'A negative number has no such power.';
    return problem('', found, 'Enter a value above zero.');
  }
}

/** `-a`. */
export class NegativeNode extends Node {
  private readonly of: Node;

  constructor(of: Node) {
    super();
    this.of = of;
  }

  override get parts(): readonly Node[] {
    return [this.of];
  }

  fill(from: number, count: number): void {
    this.of.fill(from, count);
    for (let i = 0; i < count; i++) this.data[i] = 0 - this.of.value(i);
  }

  trace(i: number, trace?: Trace): State {
    return this.knows(i) ? KNOWN : this.of.trace(i, trace);
  }
}

function cancelled(result: number, x: number, y: number): number {
  const size = Math.abs(result);
  if (size <= CANCELLED * Math.abs(x) && size <= CANCELLED * Math.abs(y)) return 0;
  return finite(result);
}

function finite(x: number): number {
  return x - x === 0 ? x : NaN;
}

function tooLarge(): Problem {
  return problem(
    '',
    'The number is too large to work with.',
    'Look for a unit or a zero too many.',
  );
}
