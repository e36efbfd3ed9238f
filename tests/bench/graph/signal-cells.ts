import { computed, signal, type ReadonlySignal, type Signal } from '@preact/signals-core';
import type { Column, Words } from '../../../src/graph/index.ts';
import type { WorkedColumn } from './columns.ts';
import { straightCell } from './straight.ts';

/** The same columns with a reactive cell for each: what is entered a signal, what follows from it computed. */
export interface SignalSheet {
  /** Puts a value into the changed input. */
  set(value: number): void;
  /** Reads every cell, as a screen or a list would. */
  readAll(): number;
  /** The values of a column, to compare. */
  values(column: Column): Float64Array;
  readonly cells: number;
}

/** Builds the cells; columns that nobody works out here hold still. */
export function signalSheet(
  worked: readonly WorkedColumn[],
  words: Words,
  changed: Column,
): SignalSheet {
  const cells = new Map<Column, readonly ReadonlySignal<number>[]>();
  const input: Signal<number> = signal(changed.values[0] ?? NaN);
  cells.set(changed, [input]);
  const makers = new Map(worked.map((each) => [each.column, each]));

  function cellsOf(column: Column): readonly ReadonlySignal<number>[] {
    const known = cells.get(column);
    if (known) return known;
    const { count } = column.rows;
    const maker = makers.get(column);
    if (!maker) {
      const still = Array.from({ length: count }, (_, row) => signal(column.values[row] ?? NaN));
      cells.set(column, still);
      return still;
    }
    const made: ReadonlySignal<number>[] = [];
    cells.set(column, made);
    const work = straightCell(maker, words, cellsOf);
    for (let row = 0; row < count; row++) made.push(computed(() => work(row)));
    return made;
  }

  for (const { column } of worked) cellsOf(column);
  const all = worked.flatMap(({ column }) => [...cellsOf(column)]);
  return {
    set: (value) => (input.value = value),
    readAll: () => {
      let sum = 0;
      for (const cell of all) sum += cell.value;
      return sum;
    },
    values: (column) => Float64Array.from(cellsOf(column), (cell) => cell.value),
    cells: all.length,
  };
}
