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

/** Only rows that show what one row shows in a column. */
export function likeThis(view: SheetView, row: number, column: string): Sieve {
  const { text, state } = view.cell(row, column);
  return {
    words: text === '' ? 'the blank ones' : `“${text}”`,
    keeps: (sheet, at) => {
      const cell = sheet.cell(at, column);
      return cell.text === text && (text !== '' || cell.state === state);
    },
  };
}

/** Only rows where something waits, is asked or is wrong. */
export function stillOpen(columns: readonly string[]): Sieve {
  return {
    words: 'what waits or asks',
    keeps: (view, row) =>
      columns.some((column) => ['waiting', 'ask', 'wrong'].includes(view.cell(row, column).state)),
  };
}

/** Only rows that have these words in one of some columns. */
export function withText(words: string, columns: readonly string[]): Sieve {
  const wanted = words.toLowerCase();
  return {
    words: `“${words}”`,
    keeps: (view, row) =>
      columns.some((column) => view.cell(row, column).text.toLowerCase().includes(wanted)),
  };
}

/** Only rows of these ids. */
export function oneOfRows(words: string, ids: readonly string[]): Sieve {
  const kept = new Set(ids);
  return { words, keeps: (view, row) => kept.has(view.rowId(row)) };
}

/** The order a person asked for, kept while they type. */
export class RowOrder {
  sorting: Sorting | undefined;
  sieve: Sieve | undefined;

  private drawn: { version: number; of: SheetView; view: SheetView } | undefined;
  private ids: readonly string[] = [];
  private known: ReadonlySet<string> = new Set();

  /** The sheet as it is to be shown. */
  seen(view: SheetView, version: number): SheetView {
    if (!this.isChanged) return view;
    // Drawing alone moves no row.
    if (this.drawn?.version !== version || this.drawn.of !== view)
      this.drawn = { version, of: view, view: inOrder(view, this.ids, this.known) };
    return this.drawn.view;
  }

  /** Whether rows stand otherwise than as read. */
  get isChanged(): boolean {
    return this.sorting !== undefined || this.sieve !== undefined;
  }

  /** Sorts by a column one way; undefined shows the rows as read. */
  sort(view: SheetView, sorting: Sorting | undefined): void {
    this.sorting = sorting;
    this.workOut(view);
  }

  /** Goes on to the next way of sorting by a column. */
  sortBy(view: SheetView, column: string): void {
    this.sorting = nextSorting(this.sorting, column);
    this.workOut(view);
  }

  /** Keeps only the rows that a sieve lets through; undefined shows all again. */
  sift(view: SheetView, sieve: Sieve | undefined): void {
    this.sieve = sieve;
    this.workOut(view);
  }

  private workOut(view: SheetView): void {
    this.drawn = undefined;
    this.ids = orderedRows(view, this.sorting, this.sieve);
    this.known = new Set(Array.from({ length: view.rowCount }, (_, row) => view.rowId(row)));
  }
}

/**
 * The ids of the rows to show, in order. It is worked out once, when somebody asks for it: a row does
 * not jump away or vanish while it is being typed into.
 */
function orderedRows(
  view: SheetView,
  sorting: Sorting | undefined,
  sieve: Sieve | undefined,
): readonly string[] {
  const rows = Array.from({ length: view.rowCount }, (_, row) => row);
  const kept = sieve ? rows.filter((row) => sieve.keeps(view, row)) : rows;
  if (sorting) {
    const cells = new Map(kept.map((row) => [row, view.cell(row, sorting.column)]));
    const turn = sorting.way === 'ascending' ? 1 : -1;
    kept.sort((a, b) => compared(cells.get(a), cells.get(b), turn) || a - b);
  }
  return kept.map((row) => view.rowId(row));
}

/**
 * The sheet with its rows in another order. Of rows that were not there when the order was worked out
 * (`known` names those that were) the sheet shows every one, last; removed rows are gone.
 */
function inOrder(view: SheetView, ids: readonly string[], known: ReadonlySet<string>): SheetView {
  const places = new Map(Array.from({ length: view.rowCount }, (_, row) => [view.rowId(row), row]));
  const order = ids.flatMap((id) => {
    const row = places.get(id);
    places.delete(id);
    return row === undefined ? [] : [row];
  });
  order.push(...[...places].filter(([id]) => !known.has(id)).map(([, row]) => row));
  const rowAt = (place: number) => order[place] ?? -1;
  return {
    id: view.id,
    title: view.title,
    question: view.question,
    editions: view.editions,
    columns: view.columns,
    growable: view.growable,
    own: view.own === true,
    rowCount: order.length,
    rowId: (place) => view.rowId(rowAt(place)),
    rowKey: (place) => view.rowKey(rowAt(place)),
    rowName: (place) => view.rowName(rowAt(place)),
    cell: (place, column) => view.cell(rowAt(place), column),
    totals: () => view.totals(),
  };
}

/** The sorting after the present one: largest first, smallest first, as read. */
function nextSorting(now: Sorting | undefined, column: string): Sorting | undefined {
  if (now?.column !== column) return { column, way: 'descending' };
  return now.way === 'descending' ? { column, way: 'ascending' } : undefined;
}

// Cells without a value come last, whichever way the rest stand.
function compared(a: CellView | undefined, b: CellView | undefined, turn: number): number {
  const [left, right] = [a?.value ?? a?.text, b?.value ?? b?.text];
  const [hasLeft, hasRight] = [a?.state === 'known', b?.state === 'known'];
  if (!hasLeft || !hasRight) return Number(hasRight) - Number(hasLeft);
  if (typeof left === 'number' && typeof right === 'number') return (left - right) * turn;
  const [first, second] = [String(left), String(right)];
  return first < second ? -turn : first > second ? turn : 0;
}
