import {
  BLANK,
  Column,
  KNOWN,
  WRONG,
  type Computation,
  type Input,
  type Rows,
  type State,
} from '../../src/graph/index.ts';

/** Entries that a test types: undefined is a blank. */
export class Typed implements Computation {
  readonly inputs: readonly Input[] = [];
  readonly cells: (number | undefined)[];

  constructor(cells: (number | undefined)[]) {
    this.cells = cells;
  }

  run(values: Float64Array, states: Uint8Array, from: number, to: number): void {
    for (let row = from; row < to; row++) {
      values[row] = this.cells[row] ?? NaN;
      states[row] = this.cells[row] === undefined ? BLANK : KNOWN;
    }
  }
}

/** A formula that counts the rows it was run on. */
export class Counted implements Computation {
  readonly inputs: readonly Input[];
  /** How many rows were worked out since the last `take`. */
  private rows = 0;
  private readonly work: (row: number) => number | undefined;

  constructor(inputs: readonly Input[], work: (row: number) => number | undefined) {
    this.inputs = inputs;
    this.work = work;
  }

  run(values: Float64Array, states: Uint8Array, from: number, to: number): void {
    for (let row = from; row < to; row++) {
      this.rows += 1;
      const value = this.work(row);
      values[row] = value ?? NaN;
      states[row] = value === undefined ? WRONG : KNOWN;
    }
  }

  /** The rows worked out since it was last asked. */
  take(): number {
    const { rows } = this;
    this.rows = 0;
    return rows;
  }
}

/** A column with its computation. */
export function column(name: string, rows: Rows, computation?: Computation): Column {
  const made = new Column(name, rows);
  if (computation) made.computation = computation;
  return made;
}

/** What stands in a column: values, or the state where there is none. */
export function shown(of: Column): (number | string)[] {
  return Array.from({ length: of.rows.count }, (_, row) => {
    const state = of.states[row] as State;
    return state === KNOWN ? of.values[row]! : `state ${state}`;
  });
}

/** The value of a cell, for a computation of a test; 0 where there is none. */
export function at(of: Column, row: number): number {
  const value = of.values[row];
  return value === undefined || Number.isNaN(value) ? 0 : value;
}
