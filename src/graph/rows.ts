import type { Column } from './column.ts';
import { KNOWN } from './state.ts';

/** A set of rows that columns stand on: typed by a person, or derived from another set. */
export interface Rows {
  readonly name: string;
  readonly count: number;
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
  parentPlaces: Int32Array = NONE;
  private places: Int32Array = NONE;
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
    const before = this.parentPlaces;
    const places = new Int32Array(this.parent.count).fill(-1);
    const chosen: number[] = [];
    for (let row = 0; row < this.parent.count; row++) {
      if (this.where && this.where.values[row] !== 1) continue;
      places[row] = chosen.length;
      chosen.push(row);
    }
    this.places = places;
    this.parentPlaces = Int32Array.from(chosen);
    this.count = chosen.length;
    return !sameNumbers(before, this.parentPlaces);
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
    const groups = new Map<string, readonly number[]>();
    const first = this.deciders[0];
    for (let row = 0; first && row < first.rows.count; row++) {
      if (this.deciders.some((column) => column.states[row] !== KNOWN)) continue;
      for (const key of this.combinations(row)) groups.set(key.join(' '), key);
    }
    const sorted = [...groups.values()].sort((a, b) => this.compare(a, b));
    this.count = sorted.length;
    this.keys = this.deciders.map((_, at) => Float64Array.from(sorted, (key) => key[at] ?? NaN));
    return !(
      before.length === this.keys.length &&
      before.every((keys, at) => sameNumbers(keys, this.keys[at] ?? new Float64Array()))
    );
  }

  private combinations(row: number): readonly (readonly number[])[] {
    return this.deciders.reduce<readonly (readonly number[])[]>(
      (keys, { values }, at) => {
        const value = values[row] ?? NaN;
        const items = this.items[at]?.(value) ?? [value];
        return keys.flatMap((key) => items.map((item) => [...key, item]));
      },
      [[]],
    );
  }

  private compare(a: readonly number[], b: readonly number[]): number {
    for (let at = a.length - 1; at >= 0; at--) {
      const [x, y] = [a[at] ?? 0, b[at] ?? 0];
      if (x !== y) return this.before[at]?.(x, y) ?? y - x;
    }
    return 0;
  }
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
