import type { Rows } from './rows.ts';

/** How a formula reaches the column it reads. */
export type Reach =
  /** The same row. */
  | 'row'
  /** The row that this row follows. */
  | 'follow'
  /** The row above or below. */
  | 'near'
  /** The whole column, or the one value of the job. */
  | 'whole';

/** A column that a computation reads, declared before it runs. */
export interface Input {
  readonly column: Column;
  readonly reach: Reach;
}

/** How a column gets its values. Entries are a computation without inputs. */
export interface Computation {
  readonly inputs: readonly Input[];
  /** Whether a row's place on its sheet decides its value, so that rows behind one that goes change. */
  readonly placed?: boolean;
  /** Writes value and state of the rows `from` to `to` (not included). A value is NaN exactly where the state is not KNOWN. */
  run(values: Float64Array, states: Uint8Array, from: number, to: number): void;
}

/** One typed array of values with one byte of state a cell. */
export class Column {
  readonly name: string;
  readonly rows: Rows;
  values = new Float64Array(0);
  states = new Uint8Array(0);
  computation: Computation = NOTHING;
  /** Another number whenever a cell may have changed. */
  version = 0;

  constructor(name: string, rows: Rows) {
    this.name = name;
    this.rows = rows;
  }

  /** Makes room for the rows there are. */
  fit(): void {
    const count = this.rows.count;
    if (this.values.length >= count && this.values.length <= 2 * count + 64) return;
    // Exact at first, as most columns never grow; one that did once grows by one row after another.
    const room = this.values.length === 0 ? count : count + Math.max(16, count >> 5);
    const values = new Float64Array(room);
    const states = new Uint8Array(room);
    values.set(this.values.subarray(0, Math.min(count, this.values.length)));
    states.set(this.states.subarray(0, Math.min(count, this.states.length)));
    this.values = values;
    this.states = states;
  }

  /** Moves the rows from `at` on after `removed` rows left there and `added` came; the caller has changed the count. */
  splice(at: number, removed: number, added: number): void {
    const before = this.rows.count - added + removed;
    const tail = {
      values: this.values.slice(at + removed, before),
      states: this.states.slice(at + removed, before),
    };
    this.version += 1;
    this.fit();
    this.values.set(tail.values, at + added);
    this.states.set(tail.states, at + added);
  }
}

const NOTHING: Computation = {
  inputs: [],
  run(values, states, from, to) {
    values.fill(NaN, from, to);
    states.fill(1, from, to);
  },
};
