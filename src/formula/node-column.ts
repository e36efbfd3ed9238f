import { BLANK, KNOWN, placeIn, type Column, type Rows, type State } from '../graph/index.ts';
import { ALL_KNOWN, Node, type Trace } from './node.ts';

/** A value that stands in the formula itself. */
export class ConstantNode extends Node {
  private readonly constant: number;

  constructor(value: number) {
    super();
    this.constant = value;
  }

  override fill(): void {
    this.holdStill(this.constant);
  }

  override stated(): Uint8Array {
    return ALL_KNOWN;
  }

  trace(): State {
    return KNOWN;
  }
}

/** A column of the same rows, read where it stands. */
export class ColumnNode extends Node {
  private readonly column: Column;
  private from = 0;

  constructor(column: Column) {
    super();
    this.column = column;
  }

  override fill(from: number, count: number): void {
    this.from = from;
    this.data = this.column.values;
    this.at = from;
    // A column that nobody typed in yet, or that follows from the job alone.
    this.noteStill(count);
  }

  override stated(count: number): Uint8Array {
    return this.column.states.subarray(this.from, this.from + count);
  }

  trace(i: number, trace?: Trace): State {
    return stateAt(this.column, this.from + i, trace);
  }
}

/** A column of the rows that these follow. */
export class FollowedNode extends Node {
  private readonly column: Column;
  private readonly rows: Rows;
  private from = 0;

  constructor(column: Column, rows: Rows) {
    super();
    this.column = column;
    this.rows = rows;
  }

  override fill(from: number, count: number): void {
    this.from = from;
    const { column, rows } = this;
    const data = this.hold(count);
    const { values } = column;
    if (rows.parent === column.rows) {
      const { parentPlaces } = rows;
      for (let i = 0; i < count; i++) data[i] = values[parentPlaces[from + i] as number] ?? NaN;
    } else {
      for (let i = 0; i < count; i++) data[i] = values[placeIn(column.rows, rows, from + i)] ?? NaN;
    }
    this.noteStill(count);
  }

  override stated(count: number): Uint8Array {
    if (this.knowsAll(count)) return ALL_KNOWN;
    const states = this.room();
    const { column, rows, from } = this;
    for (let i = 0; i < count; i++)
      states[i] = column.states[placeIn(column.rows, rows, from + i)] ?? BLANK;
    return states;
  }

  trace(i: number, trace?: Trace): State {
    return stateAt(this.column, placeIn(this.column.rows, this.rows, this.from + i), trace);
  }
}

/** The same column one row above or below; blank past the ends. */
export class NeighborNode extends Node {
  private readonly column: Column;
  private readonly step: number;
  private from = 0;

  constructor(column: Column, step: -1 | 1) {
    super();
    this.column = column;
    this.step = step;
  }

  override fill(from: number, count: number): void {
    this.from = from;
    const { values, rows } = this.column;
    const data = this.hold(count);
    for (let i = 0; i < count; i++) {
      const row = from + i + this.step;
      data[i] = row >= 0 && row < rows.count ? (values[row] ?? NaN) : NaN;
    }
  }

  trace(i: number, trace?: Trace): State {
    const row = this.from + i + this.step;
    const isOutside = row < 0 || row >= this.column.rows.count;
    return isOutside ? BLANK : stateAt(this.column, row, trace);
  }
}

/** The one value of a single row, the same for every row here. */
export class SingleNode extends Node {
  private readonly column: Column;

  constructor(column: Column) {
    super();
    this.column = column;
  }

  override fill(): void {
    this.holdStill(this.column.values[0] ?? NaN);
  }

  override stated(count: number): Uint8Array {
    const state = stateAt(this.column, 0, undefined);
    return state === KNOWN ? ALL_KNOWN : this.room().fill(state, 0, count);
  }

  trace(_i: number, trace?: Trace): State {
    return stateAt(this.column, 0, trace);
  }
}

/** A part whose value is the same for every row here. */
export class StillNode extends Node {
  private readonly of: Node;
  private isDone = false;

  constructor(of: Node) {
    super([of]);
    this.of = of;
  }

  override get keeps(): boolean {
    return true;
  }

  // The one row worked out for all is one that somebody looks at.
  override get choosy(): readonly Node[] {
    return [];
  }

  override restart(): void {
    super.restart();
    this.isDone = false;
  }

  override fill(from: number): void {
    if (this.isDone) return;
    this.of.fill(from, 1);
    this.isDone = true;
    this.holdStill(this.of.value(0));
  }

  override stated(count: number): Uint8Array {
    return this.knows(0) ? ALL_KNOWN : this.room().fill(this.of.trace(0), 0, count);
  }

  trace(_i: number, trace?: Trace): State {
    return this.of.trace(0, trace);
  }
}

/** The place of the row on its sheet, from 1. */
export class RowNumberNode extends Node {
  override fill(from: number, count: number): void {
    const data = this.hold(count);
    for (let i = 0; i < count; i++) data[i] = from + i + 1;
  }

  trace(): State {
    return KNOWN;
  }
}

/** Stands inside an aggregate for a value of the row outside. */
export class OutsideNode extends Node {
  readonly of: Node;
  private place = 0;

  constructor(of: Node) {
    super();
    this.of = of;
  }

  /** Takes the value at place `i` of the outer fill, for all rows inside. */
  take(i: number): void {
    this.place = i;
    this.holdStill(this.of.value(i));
  }

  override fill(): void {
    // The value was taken.
  }

  trace(_i: number, trace?: Trace): State {
    return this.of.trace(this.place, trace);
  }
}

function stateAt(column: Column, row: number, trace: Trace | undefined): State {
  const state = (column.states[row] ?? BLANK) as State;
  if (state !== KNOWN) trace?.lacks(column, row);
  return state;
}
