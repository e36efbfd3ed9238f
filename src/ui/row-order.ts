import type { SheetView } from '../worksheet/index.ts';
import { pagePace } from './page-pace.ts';
import { rowOf } from './row-of.ts';
import { standing, type Sieve, type Sorting, type Standing } from './row-sorting.ts';

// Fewer rows are in order before the next frame.
const LONG = 1000;

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

/**
 * The order a person asked for, kept while they type. It is worked out once, when somebody asks for it: a row does
 * not jump away or vanish while it is being typed into. Until it stands, a long sheet is shown as it was.
 */
export class RowOrder {
  sorting: Sorting | undefined;
  sieve: Sieve | undefined;

  private drawn: { version: number; of: SheetView; view: SheetView } | undefined;
  /** The places of the rows to show, as long as the sheet has the same rows. */
  private placed:
    { of: SheetView; version: number | undefined; order: readonly number[] } | undefined;
  private standing: Standing | undefined;
  private work: Generator<void, Standing> | undefined;
  private readonly stands: () => void;

  /** `stands` is called where an order took some time, once it stands. */
  constructor(stands: () => void = () => undefined) {
    this.stands = stands;
  }

  /** The sheet as it is to be shown. */
  seen(view: SheetView, version: number): SheetView {
    if (!this.standing) return view;
    // Drawing alone moves no row.
    if (this.drawn?.version !== version || this.drawn.of !== view)
      this.drawn = { version, of: view, view: inOrder(view, this.orderIn(view, this.standing)) };
    return this.drawn.view;
  }

  private orderIn(view: SheetView, standing: Standing): readonly number[] {
    const { placed } = this;
    const version = view.rowsVersion;
    if (placed?.of === view && version !== undefined && placed.version === version)
      return placed.order;
    const order = orderOf(view, standing);
    this.placed = { of: view, version, order };
    return order;
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
    this.sort(view, nextSorting(this.sorting, column));
  }

  /** Keeps only the rows that a sieve lets through; undefined shows all again. */
  sift(view: SheetView, sieve: Sieve | undefined): void {
    this.sieve = sieve;
    this.workOut(view);
  }

  private workOut(view: SheetView): void {
    const { rowCount } = view;
    const work = this.isChanged ? standing(view, this.sorting, this.sieve) : undefined;
    this.work = work;
    if (!work) this.stand(undefined);
    else if (rowCount <= LONG) this.stand(ended(work));
    else this.workOn(work, view, rowCount);
  }

  private workOn(work: Generator<void, Standing>, view: SheetView, rowCount: number): void {
    const pace = pagePace();
    const go = () => {
      // Another order was asked for meanwhile.
      if (this.work !== work) return;
      if (view.rowCount !== rowCount) {
        this.workOut(view);
        return;
      }
      pace.begin();
      let step = work.next();
      while (!step.done && !pace.isOver()) step = work.next();
      if (step.done) {
        this.stand(step.value);
        this.stands();
      } else pace.later(go);
    };
    go();
  }

  private stand(order: Standing | undefined): void {
    this.drawn = undefined;
    this.placed = undefined;
    this.standing = order;
  }
}

function ended(work: Generator<void, Standing>): Standing {
  let step = work.next();
  while (!step.done) step = work.next();
  return step.value;
}

/** The places of the rows to show. Of rows that were not there when the order was worked out every one comes last; removed rows are gone. */
function orderOf(view: SheetView, { rows, ids, known }: Standing): readonly number[] {
  const isAsItWas =
    view.rowCount === known.size && ids.every((id, at) => view.rowId(rows[at] ?? -1) === id);
  return isAsItWas ? rows : placesOf(view, ids, known);
}

/** The sheet with its rows in another order. */
function inOrder(view: SheetView, order: readonly number[]): SheetView {
  const rowAt = (place: number) => order[place] ?? -1;
  let places: ReadonlyMap<number, number> | undefined;
  return {
    id: view.id,
    title: view.title,
    question: view.question,
    editions: view.editions,
    follow: view.follow,
    columns: view.columns,
    growable: view.growable,
    own: view.own === true,
    rowCount: order.length,
    rowId: (place) => view.rowId(rowAt(place)),
    placeOf: (id) => {
      places ??= new Map(order.map((row, place) => [row, place]));
      return places.get(rowOf(view, id)) ?? -1;
    },
    rowKey: (place) => view.rowKey(rowAt(place)),
    rowName: (place) => view.rowName(rowAt(place)),
    cell: (place, column) => view.cell(rowAt(place), column),
    // Columns do not come and go with the order of the rows.
    ...(view.isFilled && { isFilled: view.isFilled.bind(view) }),
    totals: () => view.totals(),
  };
}

function placesOf(
  view: SheetView,
  ids: readonly string[],
  known: ReadonlySet<string>,
): readonly number[] {
  const places = new Map(Array.from({ length: view.rowCount }, (_, row) => [view.rowId(row), row]));
  const order = ids.flatMap((id) => {
    const row = places.get(id);
    places.delete(id);
    return row === undefined ? [] : [row];
  });
  order.push(...[...places].filter(([id]) => !known.has(id)).map(([, row]) => row));
  return order;
}

/** The sorting after the present one: largest first, smallest first, as read. */
function nextSorting(now: Sorting | undefined, column: string): Sorting | undefined {
  if (now?.column !== column) return { column, way: 'descending' };
  return now.way === 'descending' ? { column, way: 'ascending' } : undefined;
}
