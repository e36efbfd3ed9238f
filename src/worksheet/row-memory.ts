import { placeIn, type Computation, type Rows } from '../graph/index.ts';
import type { ColumnModel, StopModel } from './model.ts';

/** Keeps what was made of a row for as long as the cells it was made from stay as they are. */
export class RowMemory<Made> {
  private readonly rows = new Map<string, { readonly cells: readonly number[]; made: Made }>();
  private circumstances = '';

  /** Forgets all rows where what holds for all of them, such as their units, is not what it was. */
  under(circumstances: string): this {
    if (circumstances !== this.circumstances) this.rows.clear();
    this.circumstances = circumstances;
    return this;
  }

  /** What `make` makes of a row; not made again while `cells` hold the same numbers. */
  recall(row: string, cells: readonly number[], make: () => Made): Made {
    const known = this.rows.get(row);
    if (known && areSame(known.cells, cells)) return known.made;
    const made = make();
    this.rows.set(row, { cells, made });
    return made;
  }
}

/** A memory for each part of an engine, gone with it. */
export class RowMemories<Made> {
  private readonly all = new WeakMap<ColumnModel | StopModel, RowMemory<Made>>();

  of(part: ColumnModel | StopModel): RowMemory<Made> {
    const memory = this.all.get(part) ?? new RowMemory<Made>();
    this.all.set(part, memory);
    return memory;
  }
}

/** The numbers that decide what is shown of some cells of one row. */
export function shownCells(models: readonly ColumnModel[], row: number): readonly number[] {
  const cells: number[] = [];
  for (const { result, entry } of models) {
    cells.push(result.values[row] ?? NaN, result.states[row] ?? 0, entry?.states[row] ?? 0);
  }
  return cells;
}

/** The numbers that decide what a formula comes to on one row, and why it comes to nothing. */
export function readCells(
  { inputs, placed }: Computation,
  rows: Rows,
  row: number,
): readonly number[] {
  const cells: number[] = placed ? [row] : [];
  for (const { column, reach } of inputs) {
    const at = reach === 'row' ? row : reach === 'follow' ? placeIn(column.rows, rows, row) : 0;
    if (reach === 'near' || (reach === 'whole' && column.rows.count !== 1))
      cells.push(column.version);
    else cells.push(column.values[at] ?? NaN, column.states[at] ?? 0);
  }
  return cells;
}

function areSame(a: readonly number[], b: readonly number[]): boolean {
  return a.length === b.length && a.every((each, at) => Object.is(each, b[at]));
}
