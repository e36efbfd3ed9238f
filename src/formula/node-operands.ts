import { KNOWN, WRONG, worse, type State } from '../graph/index.ts';
import type { Problem } from '../units/index.ts';
import { tooLarge } from './large.ts';
import { ALL_KNOWN, Node, type Trace } from './node.ts';

/** A node with one operand, which it always needs. */
export abstract class OneNode extends Node {
  protected readonly of: Node;

  constructor(of: Node) {
    super([of]);
    this.of = of;
  }

  override stated(count: number): Uint8Array {
    return this.of.stated(count);
  }

  trace(i: number, trace?: Trace): State {
    return this.knows(i) ? KNOWN : this.of.trace(i, trace);
  }

  protected abstract override combine(count: number): void;
}

/** A node with two operands. Where it is not known, it needs both. */
export abstract class PairNode extends Node {
  protected readonly left: Node;
  protected readonly right: Node;

  constructor(left: Node, right: Node) {
    super([left, right]);
    this.left = left;
    this.right = right;
  }

  override stated(count: number): Uint8Array {
    const { left, right } = this;
    // Where all is for want of one side, its states are those of the pair.
    if (this.isStill && !this.knows(0) && left.knowsNone(count) && right.knowsAll(count))
      return left.stated(count);
    return needingAll(this, this.parts, this.room(), count);
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    const { left, right } = this;
    let state: State = left.knows(i) ? KNOWN : left.trace(i, trace);
    if (!right.knows(i)) state = worse(state, right.trace(i, trace));
    if (state !== KNOWN) return state;
    trace?.wrong(this.why?.(left.value(i), right.value(i)) ?? tooLarge(''));
    return WRONG;
  }

  protected abstract override combine(count: number): void;

  /** Why two known operands have no result, where it is not for their size; only asked where there is none. */
  protected why?(left: number, right: number): Problem | undefined;
}

/** The states of a node that needs every one of some others, where no row of theirs was left out; written to `states`. */
export function needingAll(
  node: Node,
  parts: readonly Node[],
  states: Uint8Array,
  count: number,
): Uint8Array {
  if (node.knowsAll(count)) return ALL_KNOWN;
  const { data, at, mask } = node;
  states.fill(KNOWN, 0, count);
  for (const part of parts) {
    const needed = part.stated(count);
    if (needed === ALL_KNOWN) continue;
    for (let i = 0; i < count; i++)
      if ((needed[i] as State) > (states[i] as State)) states[i] = needed[i] as State;
  }
  for (let i = 0; i < count; i++) {
    const value = data[at + (i & mask)] as number;
    if (value === value) states[i] = KNOWN;
    else states[i] ||= WRONG;
  }
  return states;
}

/** The state that results from needing every one of some nodes. */
export function worstOf(nodes: readonly Node[], i: number, trace?: Trace): State {
  let worst: State = KNOWN;
  for (const node of nodes) if (!node.knows(i)) worst = worse(worst, node.trace(i, trace));
  return worst;
}
