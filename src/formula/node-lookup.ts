import { KNOWN, WRONG, worse, type Column, type State } from '../graph/index.ts';
import type { KeyText } from './gather.ts';
import type { Node, Trace } from './node.ts';
import { AggregateNode, type Band } from './node-aggregate.ts';
import type { OutsideNode } from './node-column.ts';

/** A column of keys and the values that belong to them. */
export interface KeyedColumn {
  readonly keys: Column;
  readonly values: Column;
}

/** What stands under one key. */
interface Found {
  count: number;
  value: number;
  state: State;
}

/** `value_for(key, sheet.keys, sheet.values)` for many rows: the keys are gone through once, not once a row. */
export class LookupNode extends AggregateNode {
  private readonly wanted: Node;
  private readonly columns: readonly KeyedColumn[];
  private index: ReadonlyMap<number, Found> | undefined;

  /** `outside` holds the wanted key, once for each band. */
  constructor(
    bands: readonly Band[],
    outside: readonly [OutsideNode, ...OutsideNode[]],
    columns: readonly KeyedColumn[],
    keyText: KeyText,
  ) {
    super('value_for', bands, outside, false, keyText);
    this.wanted = outside[0].of;
    this.columns = columns;
  }

  override work(count: number): number {
    const indexed = this.columns.reduce((sum, { keys }) => sum + keys.rows.count, 0);
    return count + this.wanted.work(count) + indexed;
  }

  override repeatedWork(count: number): number {
    return this.wanted.repeatedWork(count);
  }

  override restart(): void {
    super.restart();
    this.index = undefined;
  }

  override fill(from: number, count: number): void {
    this.filled = count;
    const { wanted } = this;
    wanted.fill(from, count);
    this.index ??= indexed(this.columns);
    const data = this.hold(count);
    for (let i = 0; i < count; i++) {
      const found = this.index.get(wanted.value(i));
      data[i] = found?.count === 1 && found.state === KNOWN ? found.value : NaN;
    }
  }

  override trace(i: number, trace?: Trace): State {
    if (this.knows(i)) return KNOWN;
    const isEmpty = this.columns.every(({ keys }) => keys.rows.count === 0);
    if (trace || isEmpty) return super.trace(i, trace);
    const { wanted } = this;
    if (!wanted.knows(i)) return wanted.trace(i);
    const found = this.index?.get(wanted.value(i));
    return found && found.state !== KNOWN ? found.state : WRONG;
  }
}

function indexed(columns: readonly KeyedColumn[]): ReadonlyMap<number, Found> {
  const index = new Map<number, Found>();
  for (const { keys, values } of columns) {
    for (let row = 0; row < keys.rows.count; row++) {
      const key = keys.values[row] as number;
      // A row without a key is nobody's.
      if (key !== key) continue;
      const value = values.values[row] as number;
      const state = values.states[row] as State;
      const found = index.get(key);
      if (found) {
        found.count += 1;
        found.state = worse(found.state, state);
      } else index.set(key, { count: 1, value, state });
    }
  }
  return index;
}
