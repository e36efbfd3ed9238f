import { BLANK, KNOWN, WRONG, type State } from '../graph/index.ts';
import { problem, type Problem } from '../units/index.ts';
import type { GeneralName } from './general.ts';
import { finite, tooLarge } from './large.ts';
import { settled } from './near.ts';
import { ALL_KNOWN, Node, type Trace } from './node.ts';
import { largest } from './node-logic.ts';
import { needingAll, worstOf } from './node-operands.ts';

// A sine of a large angle; rounding takes about as much, for its check of closeness.
const FUNCTION_EFFORT = 8;

/** `given(x, otherwise)`: answers for a blank, and for nothing else. */
export class GivenNode extends Node {
  protected override readonly isChooser = true;
  private readonly of: Node;
  private readonly otherwise: Node;
  private readonly isWhole: boolean;

  /** `isWhole`: what answers for a blank is worked out in any case. */
  constructor(of: Node, otherwise: Node, isWhole: boolean) {
    super([of, otherwise]);
    this.of = of;
    this.otherwise = otherwise;
    this.isWhole = isWhole;
  }

  override fill(from: number, count: number): void {
    const { of, otherwise } = this;
    of.fill(from, count);
    const states = of.knowsAll(count) ? undefined : of.stated(count);
    let blanks = 0;
    for (let i = 0; states && i < count; i++) if (states[i] === BLANK) blanks += 1;
    if (this.isWhole) otherwise.fill(from, count);
    else if (states && blanks > 0)
      otherwise.fillWhere(from, count, { data: states, at: 0, mask: -1 }, BLANK, this.lookedAt);
    // Where all rows are answered alike, the answer is read where it stands.
    if (!states || blanks === 0) {
      this.stand(of);
      return;
    }
    if (blanks === count) {
      this.stand(otherwise);
      return;
    }
    const data = this.hold(count);
    const { data: values, at: v, mask: m } = of;
    const { data: others, at: o, mask: n } = otherwise;
    for (let i = 0; i < count; i++)
      data[i] = (states[i] === BLANK ? others[o + (i & n)] : values[v + (i & m)]) as number;
  }

  override stated(count: number): Uint8Array {
    if (this.knowsAll(count)) return ALL_KNOWN;
    const states = this.of.stated(count);
    const first = states.indexOf(BLANK);
    if (first < 0 || first >= count) return states;
    const others = this.otherwise.stated(count);
    const answered = this.room();
    for (let i = 0; i < count; i++)
      answered[i] = (states[i] === BLANK ? others[i] : states[i]) as State;
    return answered;
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    const state = this.of.trace(i);
    if (state !== BLANK) return this.of.trace(i, trace);
    this.of.trace(i, trace);
    return this.otherwise.trace(i, trace);
  }
}

/** `only_if(x, condition)`: blank unless the condition is true; the one formula that gives a blank of its own. */
export class OnlyIfNode extends Node {
  protected override readonly isChooser = true;
  private readonly of: Node;
  private readonly condition: Node;
  private readonly isWhole: boolean;
  private isAsked = false;

  /** `isWhole`: x is worked out in any case. */
  constructor(of: Node, condition: Node, isWhole: boolean) {
    super([of, condition]);
    this.of = of;
    this.condition = condition;
    this.isWhole = isWhole;
  }

  override fill(from: number, count: number): void {
    const { of, condition, isWhole } = this;
    condition.fill(from, count);
    const { data: flags, at: f, mask } = condition;
    let isAsked = isWhole;
    const most = condition.isStill ? 1 : count;
    for (let i = 0; i < most && !isAsked; i++) isAsked = flags[f + (i & mask)] === 1;
    this.isAsked = isAsked;
    if (isWhole) of.fill(from, count);
    else if (isAsked) of.fillWhere(from, count, condition, 1, this.lookedAt);
    if (condition.isStill) {
      // Where all rows are alike, the value is read where it stands, or there is none.
      if (condition.value(0) === 1) this.stand(of);
      else this.holdStill(NaN);
      return;
    }
    const data = this.hold(count);
    const { data: values, at: v, mask: m } = of;
    for (let i = 0; i < count; i++)
      data[i] = flags[f + (i & mask)] === 1 ? (values[v + (i & m)] as number) : NaN;
  }

  override stated(count: number): Uint8Array {
    const states = this.room().fill(BLANK, 0, count);
    if (!this.isAsked) return states;
    const { condition, of } = this;
    const { data: flags, at: f, mask } = condition;
    const { data: values, at: v, mask: m } = of;
    let given: Uint8Array | undefined;
    for (let i = 0; i < count; i++) {
      if (flags[f + (i & mask)] !== 1) continue;
      const value = values[v + (i & m)] as number;
      states[i] = value === value ? KNOWN : ((given ??= of.stated(count))[i] as State);
    }
    return states;
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    return this.condition.value(i) === 1 ? this.of.trace(i, trace) : BLANK;
  }
}

/** Stands for a second number where there is none. */
const NOUGHT = { data: new Float64Array(1), at: 0, mask: 0 };

/** What is worked out from one or two numbers. */
type Work = Exclude<GeneralName, 'given' | 'only_if'>;

/** A function of one or two numbers. */
export class FunctionNode extends Node {
  private readonly name: Work;
  private readonly terms: readonly Node[];

  /** `terms` are what the first argument was added from. */
  constructor(name: Work, given: readonly Node[], terms: readonly Node[]) {
    super(given);
    this.name = name;
    this.terms = terms;
  }

  protected override get effort(): number {
    return FUNCTION_EFFORT;
  }

  protected override combine(count: number): void {
    const { name, terms } = this;
    const data = this.hold(count);
    const [first, second] = this.parts;
    if (!first) return;
    const { data: xs, at: p, mask: m } = first;
    const { data: ys, at: q, mask: n } = second ?? NOUGHT;
    for (let i = 0; i < count; i++) {
      const x = xs[p + (i & m)] as number;
      const y = ys[q + (i & n)] as number;
      const scale = terms.length === 0 ? 0 : largest(terms, i);
      const value = x !== x || y !== y ? NaN : work(name, x, y, scale);
      // Adding nought turns minus nought, as of ceil(-0.5), into nought.
      data[i] = finite(value + 0);
    }
  }

  override stated(count: number): Uint8Array {
    return needingAll(this, this.parts, this.room(), count);
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    const state = worstOf(this.parts, i, trace);
    if (state !== KNOWN) return state;
    trace?.wrong(noValue(this.name));
    return WRONG;
  }
}

function work(name: Work, x: number, y: number, scale: number): number {
  switch (name) {
    case 'abs':
      return Math.abs(x);
    case 'sqrt':
      return Math.sqrt(x);
    case 'ceil':
      return Math.ceil(settled(x, scale));
    case 'floor':
      return Math.floor(settled(x, scale));
    case 'round':
      // Half goes away from zero; a value counts as a half within the usual closeness.
      return Math.sign(x) * Math.floor(settled(Math.abs(x) + 0.5, scale));
    case 'up_to_step':
      return y > 0 ? Math.ceil(settled(x / y, scale / y)) * y : NaN;
    case 'sin':
      return Math.sin(x);
    case 'cos':
      return Math.cos(x);
    case 'tan':
      // At a right angle the tangent has no value; doubles only come near.
      return Math.abs(Math.cos(x)) < 1e-15 ? NaN : Math.tan(x);
    case 'atan':
      return Math.atan(x);
    case 'atan2':
      return x === 0 && y === 0 ? NaN : Math.atan2(x, y);
  }
}

function noValue(name: GeneralName): Problem {
  switch (name) {
    case 'sqrt':
      return problem(
        'sqrt',
        'A negative number has no square root.',
        'Enter a value of zero or more.',
      );
    case 'up_to_step':
      return problem('up_to_step', 'The step is not above zero.', 'Enter a step above zero.');
    case 'tan':
      return problem('tan', 'A right angle has no slope.', 'Enter a smaller angle.');
    case 'atan2':
      return problem(
        'atan2',
        'Both sides are zero, so there is no direction.',
        'Enter one of them.',
      );
    default:
      return tooLarge(name);
  }
}
