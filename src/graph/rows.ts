import type { Column } from './column.ts';
import { KNOWN } from './state.ts';

/** A set of rows that columns stand on: typed by a person, or derived from another set. */
export interface Rows {
  readonly name: string;
  readonly count: number;
  /** Another number whenever rows came, went or moved. */
  version: number;
  /** The set these rows follow, where each row is a row of it. */
  readonly parent: Rows | undefined;
  /** Place in the parent of each row. */
  readonly parentPlaces: Int32Array;
  /** Place here of a parent's row, or -1. */
  placeOf(parentRow: number): number;
  /** Columns that decide which rows there are. */
  readonly deciders: readonly Column[];
  /** Works out the rows again; true where they are other rows than before. */
  refresh(): boolean;
}

const NONE = new Int32Array(0);

/** Rows a person adds and removes. */
export class EnteredRows implements Rows {
  readonly parent = undefined;
  readonly parentPlaces = NONE;
  readonly deciders = [];
  count: number;
  version = 0;
  readonly name: string;

  constructor(name: string, count: number) {
    this.name = name;
    this.count = count;
  }

  placeOf(): number {
    return -1;
  }

  refresh(): boolean {
    return false;
  }
}

/** The rows of another set where a flag column is true. */
export class FollowingRows implements Rows {
  readonly name: string;
  readonly parent: Rows;
  readonly deciders: readonly Column[];
  count = 0;
  version = 0;
  parentPlaces: Int32Array = NONE;
  private places: Int32Array = NONE;
  /** Room for the places in the parent. */
  private chosen: Int32Array = NONE;
  private readonly where: Column | undefined;

  /** `where` absent means every row of the parent. */
  constructor(name: string, parent: Rows, where?: Column) {
    this.name = name;
    this.parent = parent;
    this.where = where;
    this.deciders = where ? [where] : [];
  }

  placeOf(parentRow: number): number {
    return this.places[parentRow] ?? -1;
  }

  refresh(): boolean {
    const rows = this.parent.count;
    // In place, as they are chosen anew with every key that is typed into a long sheet.
    if (this.places.length !== rows) {
      this.places = new Int32Array(rows);
      this.chosen = new Int32Array(rows);
    }
    const { where, places, chosen } = this;
    const before = this.parentPlaces.length;
    let isSame = true;
    let count = 0;
    for (let row = 0; row < rows; row++) {
      const isChosen = !where || where.values[row] === 1;
      places[row] = isChosen ? count : -1;
      if (!isChosen) continue;
      if (count >= before || this.parentPlaces[count] !== row) isSame = false;
      chosen[count++] = row;
    }
    this.parentPlaces = chosen.subarray(0, count);
    this.count = count;
    return !isSame || count !== before;
  }
}

/** Which of two different values of a column stands first: below zero where the first of them does. */
export type Before = (a: number, b: number) => number;

/** The values that one value of a column stands for: the items of a list. */
export type Items = (value: number) => readonly number[];

/** One row for each different combination of some columns' known values, largest first; the last column counts most. A list counts as each of its items. */
export class GroupedRows implements Rows {
  readonly name: string;
  readonly parent = undefined;
  readonly parentPlaces = NONE;
  readonly deciders: readonly Column[];
  count = 0;
  version = 0;
  /** The combinations, one array a key column. */
  keys: readonly Float64Array[] = [];
  private readonly before: readonly (Before | undefined)[];
  private readonly items: readonly (Items | undefined)[];

  /** `before`, a column each, orders what is not a size: numbers that stand for texts. `items`, a column each, opens lists. */
  constructor(
    name: string,
    by: readonly Column[],
    before: readonly (Before | undefined)[] = [],
    items: readonly (Items | undefined)[] = [],
  ) {
    this.name = name;
    this.deciders = by;
    this.before = before;
    this.items = items;
  }

  placeOf(): number {
    return -1;
  }

  refresh(): boolean {
    const before = this.keys;
    const groups: Branch = new Map<number, Branch>();
    const { deciders } = this;
    const count = deciders[0]?.rows.count ?? 0;
    for (let row = 0; row < count; row++) {
      if (deciders.every(({ states }) => states[row] === KNOWN)) this.grow(groups, row, 0);
    }
    const sorted = combinations(groups, deciders.length).sort((a, b) => this.compare(a, b));
    this.count = sorted.length;
    this.keys = this.deciders.map((_, at) => Float64Array.from(sorted, (key) => key[at] ?? NaN));
    return !(
      before.length === this.keys.length &&
      before.every((keys, at) => sameNumbers(keys, this.keys[at] ?? new Float64Array()))
    );
  }

  /** Notes the combinations of a row, from one key column on; most rows bring none that is new. */
  private grow(branch: Branch, row: number, at: number): void {
    const column = this.deciders[at];
    if (!column) return;
    const value = column.values[row] ?? NaN;
    const items = this.items[at]?.(value);
    if (items) for (const item of items) this.grow(branchOf(branch, item), row, at + 1);
    else this.grow(branchOf(branch, value), row, at + 1);
  }

  private compare(a: readonly number[], b: readonly number[]): number {
    for (let at = a.length - 1; at >= 0; at--) {
      const [x, y] = [a[at] ?? 0, b[at] ?? 0];
      if (x !== y) return this.before[at]?.(x, y) ?? y - x;
    }
    return 0;
  }
}

/** Values of one key column, each with those of the next that come with it. */
type Branch = Map<number, Branch>;

function branchOf(branch: Branch, value: number): Branch {
  let next = branch.get(value);
  if (!next) branch.set(value, (next = new Map<number, Branch>()));
  return next;
}

function combinations(branch: Branch, depth: number): (readonly number[])[] {
  if (depth === 0) return [[]];
  return [...branch].flatMap(([value, next]) =>
    combinations(next, depth - 1).map((rest) => [value, ...rest]),
  );
}

/** Place in an ancestor of a row, following parents upward; -1 where the ancestor is none. */
export function placeIn(ancestor: Rows, rows: Rows, row: number): number {
  let at = row;
  for (let set: Rows | undefined = rows; set; set = set.parent) {
    if (set === ancestor) return at;
    at = set.parentPlaces[at] ?? -1;
  }
  return -1;
}

/** Place in a descendant of an ancestor's row; -1 where it is not there. */
export function placeBelow(ancestor: Rows, rows: Rows, ancestorRow: number): number {
  if (rows === ancestor) return ancestorRow;
  if (!rows.parent) return -1;
  const above = placeBelow(ancestor, rows.parent, ancestorRow);
  return above < 0 ? -1 : rows.placeOf(above);
}

function sameNumbers(a: ArrayLike<number>, b: ArrayLike<number>): boolean {
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}
