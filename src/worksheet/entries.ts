import { encode } from '../formula/index.ts';
import {
  BLANK,
  KNOWN,
  UNREAD,
  type Column,
  type Computation,
  type Input,
  type Words,
} from '../graph/index.ts';
import type { GroupedRows } from '../graph/index.ts';
import {
  isDoubt,
  isProblem,
  readEntry,
  type Doubt,
  type Kind,
  type Problem,
  type Reading,
} from '../units/index.ts';

/** Reads what was typed, taking a bare number in the unit of its column. */
export function readCell(text: string, kind: Kind, unit: string): Reading | Doubt | Problem {
  const options = unit === '' ? {} : { unit };
  return readEntry(text, kind, options);
}

/** Tells an entry that could be read from an ask. */
export function isReading(read: Reading | Doubt | Problem): read is Reading {
  return !isProblem(read) && !isDoubt(read);
}

// A column of stations has no two alike, and a long file of them would only fill the memory.
const MOST_REMEMBERED = 1000;

/** A column of entries: each cell is read from the text that stands in the notebook. */
export class Entries implements Computation {
  readonly inputs: readonly Input[];
  private readonly textAt: (row: number) => string | undefined;
  private readonly kind: Kind;
  private readonly unit: () => string;
  private readonly words: Words;

  constructor(
    textAt: (row: number) => string | undefined,
    kind: Kind,
    unit: () => string,
    words: Words,
    except?: Column,
  ) {
    this.textAt = textAt;
    this.kind = kind;
    this.unit = unit;
    this.words = words;
    // What stands there for a blank depends on this, where it is given.
    this.inputs = except ? [{ column: except, reach: 'row' }] : [];
  }

  run(values: Float64Array, states: Uint8Array, from: number, to: number): void {
    const unit = this.unit();
    // Readings of one job repeat: `48 in` a hundred times is read once.
    const known = new Map<string, number>();
    for (let row = from; row < to; row++) {
      const text = this.textAt(row);
      if (text === undefined || text.trim() === '') {
        values[row] = NaN;
        states[row] = BLANK;
        continue;
      }
      let value = known.get(text);
      if (value === undefined) {
        value = this.read(text, unit);
        if (known.size < MOST_REMEMBERED) known.set(text, value);
      }
      values[row] = value;
      states[row] = value === value ? KNOWN : UNREAD;
    }
  }

  /** The number that stands for an entry; NaN where it can't be read. */
  private read(text: string, unit: string): number {
    const read = readCell(text, this.kind, unit);
    return isReading(read) ? encode(read.value, this.words) : NaN;
  }
}

/** What is typed stands over what a formula says; something typed that can't be read stands over it too. */
export class EntryOverFormula implements Computation {
  readonly inputs: readonly Input[];
  private readonly entry: Column;
  private readonly formula: Column;

  constructor(entry: Column, formula: Column) {
    this.entry = entry;
    this.formula = formula;
    this.inputs = [
      { column: entry, reach: 'row' },
      { column: formula, reach: 'row' },
    ];
  }

  run(values: Float64Array, states: Uint8Array, from: number, to: number): void {
    for (let row = from; row < to; row++) {
      const source = this.entry.states[row] === BLANK ? this.formula : this.entry;
      values[row] = source.values[row] ?? NaN;
      states[row] = source.states[row] ?? BLANK;
    }
  }
}

/** The values that make each group of rows what it is. */
export class GroupKeys implements Computation {
  readonly inputs: readonly Input[] = [];
  private readonly rows: GroupedRows;
  private readonly key: number;

  constructor(rows: GroupedRows, key: number) {
    this.rows = rows;
    this.key = key;
  }

  run(values: Float64Array, states: Uint8Array, from: number, to: number): void {
    for (let row = from; row < to; row++) {
      values[row] = this.rows.keys[this.key]?.[row] ?? NaN;
      states[row] = KNOWN;
    }
  }
}

/** A column whose formula can't be used: every cell says why. */
export class BadFormula implements Computation {
  readonly inputs: readonly Input[] = [];

  run(values: Float64Array, states: Uint8Array, from: number, to: number): void {
    values.fill(NaN, from, to);
    states.fill(3, from, to);
  }
}
