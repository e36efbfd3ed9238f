import type { Value } from '../units/index.ts';
import type { CellView, SheetView } from '../worksheet/index.ts';

/** Which way a sheet's rows stand: as they were read, or by a column. */
export interface Sorting {
  readonly column: string;
  readonly way: 'ascending' | 'descending';
}

/** Which rows are let through. */
export interface Sieve {
  /** What it lets through, in words. */
  readonly words: string;
  readonly keeps: (view: SheetView, row: number) => boolean;
}

/** Rows in the order somebody asked for. */
export interface Standing {
  /** Places of the rows to show when it was worked out, and their ids. */
  readonly rows: readonly number[];
  readonly ids: readonly string[];
  /** Every row there was. */
  readonly known: ReadonlySet<string>;
}

// A slice of some milliseconds takes many of these.
const ROWS_AT_A_TIME = 16;
const SORTED_AT_A_TIME = 1024;

/** Sifts and sorts the rows of a sheet, a little at each step: a long sheet would hold the page for a second. */
export function* standing(
  view: SheetView,
  sorting: Sorting | undefined,
  sieve: Sieve | undefined,
): Generator<void, Standing> {
  const known = new Set<string>();
  const keys = new Map<number, Key>();
  let rows: number[] = [];
  for (let row = 0; row < view.rowCount; row++) {
    if (row % ROWS_AT_A_TIME === 0) yield;
    known.add(view.rowId(row));
    if (sieve && !sieve.keeps(view, row)) continue;
    rows.push(row);
    if (sorting) keys.set(row, keyOf(view, row, sorting.column));
  }
  if (sorting) {
    const turn = sorting.way === 'ascending' ? 1 : -1;
    rows = yield* sorted(rows, (a, b) => compared(keys.get(a), keys.get(b), turn) || a - b);
  }
  const ids: string[] = [];
  for (const row of rows) {
    if (ids.length % SORTED_AT_A_TIME === 0) yield;
    ids.push(view.rowId(row));
  }
  return { rows, ids, known };
}

type Compare = (a: number, b: number) => number;

function* sorted(rows: readonly number[], compare: Compare): Generator<void, number[]> {
  let runs: number[][] = [];
  for (let at = 0; at < rows.length; at += SORTED_AT_A_TIME) {
    runs.push(rows.slice(at, at + SORTED_AT_A_TIME).sort(compare));
    yield;
  }
  while (runs.length > 1) {
    const longer: number[][] = [];
    for (let at = 0; at < runs.length; at += 2)
      longer.push(yield* merged(runs[at] ?? [], runs[at + 1] ?? [], compare));
    runs = longer;
  }
  return runs[0] ?? [];
}

function* merged(
  left: readonly number[],
  right: readonly number[],
  compare: Compare,
): Generator<void, number[]> {
  const both: number[] = [];
  let [l, r] = [0, 0];
  for (;;) {
    const [a, b] = [left[l], right[r]];
    if (a === undefined || b === undefined) return both.concat(left.slice(l), right.slice(r));
    if (both.length % SORTED_AT_A_TIME === 0) yield;
    const isLeft = compare(a, b) <= 0;
    both.push(isLeft ? a : b);
    if (isLeft) l += 1;
    else r += 1;
  }
}

/** What a cell is sorted by; undefined where it has no value. */
type Key = number | string | undefined;

function keyOf(view: SheetView, row: number, column: string): Key {
  // Without the words around it: a long sheet has a hundred thousand cells in a column.
  const value = view.value ? view.value(row, column) : worth(view.cell(row, column));
  return value === undefined || typeof value === 'number' ? value : String(value);
}

function worth({ state, value, text }: CellView): Value | undefined {
  return state === 'known' ? (value ?? text) : undefined;
}

// Cells without a value come last, whichever way the rest stand.
function compared(a: Key, b: Key, turn: number): number {
  if (a === undefined || b === undefined) return Number(b !== undefined) - Number(a !== undefined);
  if (typeof a === 'number' && typeof b === 'number') return (a - b) * turn;
  const [first, second] = [String(a), String(b)];
  return first < second ? -turn : first > second ? turn : 0;
}
