import { KNOWN, WRONG, type State, type Words } from '../graph/index.ts';
import { problem } from '../units/index.ts';
import type { AggregateName } from './general.ts';
import { Node, type Trace } from './node.ts';
import { ConstantNode } from './node-column.ts';
import { FewNode } from './node-aggregate.ts';
import { worstOf } from './node-operands.ts';

/** A list written in a formula, kept as one value. */
export class WrittenListNode extends Node {
  private readonly words: Words;

  constructor(items: readonly Node[], words: Words) {
    super(items);
    this.words = words;
  }

  protected override combine(count: number): void {
    const data = this.hold(count);
    for (let i = 0; i < count; i++) {
      const isKnown = this.parts.every((item) => item.knows(i));
      data[i] = isKnown ? this.words.code(this.parts.map((item) => item.value(i))) : NaN;
    }
  }

  trace(i: number, trace?: Trace): State {
    return this.knows(i) ? KNOWN : worstOf(this.parts, i, trace);
  }
}

/** The aggregate of a list held in one cell, as in `max(stock_lengths)`. */
export class ListAggregateNode extends Node {
  private readonly name: AggregateName;
  private readonly list: Node;
  private readonly words: Words;

  constructor(name: AggregateName, list: Node, words: Words) {
    super([list]);
    this.name = name;
    this.list = list;
    this.words = words;
  }

  protected override combine(count: number): void {
    const data = this.hold(count);
    for (let i = 0; i < count; i++) {
      data[i] = this.list.knows(i) ? this.of(this.words.list(this.list.value(i))) : NaN;
    }
  }

  trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    if (!this.list.knows(i)) return this.list.trace(i, trace);
    trace?.wrong(problem(this.name, 'The list is empty.', 'Enter at least one item.'));
    return WRONG;
  }

  private of(items: readonly number[]): number {
    const few = new FewNode(
      this.name,
      items.map((item) => new ConstantNode(item)),
    );
    few.fill(0, 1);
    return few.value(0);
  }
}
