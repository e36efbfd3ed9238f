import { Column, type Input } from './column.ts';
import { inOrder } from './order.ts';
import { placeBelow, type EnteredRows, type Rows } from './rows.ts';

/** The rows of a column that changed: all of them, or these. */
export type Changed = 'all' | ReadonlySet<number>;

/**
 * Columns that follow from one another. After an edit only what depends on it is worked out again:
 * an edited cell runs its own row, an edited job input whole columns, and work stops where a value
 * comes out as it was.
 */
export class Graph {
  private readonly columns = new Set<Column>();
  private order: readonly (Column | Rows)[] | undefined;
  private stale = new Map<Column, 'all' | Set<number>>();
  private moved = new Set<Rows>();
  private readonly known = new Set<Rows>();

  /** Adds a column; everything in it is stale. */
  add(column: Column): void {
    this.columns.add(column);
    this.order = undefined;
    this.stale.set(column, 'all');
  }

  /** Says that an entry changed. */
  touch(column: Column, row: number): void {
    const waiting = this.stale.get(column);
    if (waiting === undefined) this.stale.set(column, new Set([row]));
    else if (waiting !== 'all') waiting.add(row);
  }

  /** Says that every entry of a column may have changed. */
  touchAll(column: Column): void {
    this.stale.set(column, 'all');
  }

  /** Takes rows out of, and puts rows into, a set that a person edits. */
  splice(rows: EnteredRows, at: number, removed: number, added: number): void {
    rows.count += added - removed;
    this.moved.add(rows);
    for (const column of this.columns) {
      if (column.rows !== rows) continue;
      column.splice(at, removed, added);
      // Rows that lost or gained a neighbor are stale as well, and those counted from the first.
      const last = column.computation.placed ? rows.count : at + added + 1;
      const fresh = between(Math.max(0, at - 1), Math.min(rows.count, last), rows.count);
      this.stale.set(column, this.stale.has(column) ? 'all' : fresh);
    }
  }

  /** Works out everything stale, in order, and says which cells came out different. */
  settle(): ReadonlyMap<Column, Changed> {
    const changed = new Map<Column, Changed>();
    const stale = this.stale;
    const moved = this.moved;
    this.stale = new Map();
    this.moved = new Set();
    this.order ??= inOrder(this.columns);
    for (const node of this.order) {
      if (node instanceof Column) {
        const rows =
          isDerived(node.rows) && moved.has(node.rows)
            ? 'all'
            : widened(joined(stale.get(node), this.reached(node, changed, moved)), node.rows.count);
        if (rows === undefined) continue;
        const different = recompute(node, rows);
        if (different === undefined) continue;
        node.version += 1;
        changed.set(node, different);
      } else if (isDerived(node)) {
        // A parent that moved shifts places even where the same rows are chosen.
        const shifted = (node.parent && moved.has(node.parent)) || !this.known.has(node);
        const undecided =
          shifted || node.deciders.some((column) => changed.has(column) || moved.has(column.rows));
        if (undecided && (node.refresh() || shifted)) moved.add(node);
        this.known.add(node);
      }
    }
    return changed;
  }

  private reached(
    column: Column,
    changed: ReadonlyMap<Column, Changed>,
    moved: ReadonlySet<Rows>,
  ): Changed | undefined {
    let reached: Changed | undefined;
    for (const input of column.computation.inputs) {
      if (reached === 'all') break;
      if (input.reach === 'whole' && moved.has(input.column.rows)) reached = 'all';
      const rows = changed.get(input.column);
      if (rows !== undefined) reached = joined(reached, throughReach(column.rows, input, rows));
    }
    return reached;
  }
}

function isDerived(rows: Rows): boolean {
  return rows.parent !== undefined || rows.deciders.length > 0;
}

function throughReach(rows: Rows, { column, reach }: Input, changed: Changed): Changed {
  if (reach === 'whole' || changed === 'all') return 'all';
  if (reach === 'row') return changed;
  const reached = new Set<number>();
  for (const row of changed) {
    if (reach === 'near') {
      for (const near of [row - 1, row, row + 1]) {
        if (near >= 0 && near < rows.count) reached.add(near);
      }
    } else {
      const below = placeBelow(column.rows, rows, row);
      if (below >= 0) reached.add(below);
    }
  }
  return reached;
}

function recompute(column: Column, rows: Changed): Changed | undefined {
  column.fit();
  const { computation, values, states } = column;
  const count = column.rows.count;
  // A single value is compared, so that work stops where a total comes out as it was.
  if (rows === 'all' && count === 1) return recompute(column, new Set([0]));
  if (rows === 'all') {
    computation.run(values, states, 0, count);
    return 'all';
  }
  const different = new Set<number>();
  for (const row of rows) {
    if (row >= count) continue;
    const value = values[row];
    const state = states[row];
    computation.run(values, states, row, row + 1);
    if (!Object.is(values[row], value) || states[row] !== state || (state ?? 0) > 1) {
      different.add(row);
    }
  }
  return different.size === 0 ? undefined : different;
}

/** The rows `from` to `to` (not included); a file of 100,000 of them, listed for each column, would fill the memory. */
function between(from: number, to: number, count: number): 'all' | Set<number> {
  return isMost(to - from, count)
    ? 'all'
    : new Set(Array.from({ length: Math.max(0, to - from) }, (_, at) => from + at));
}

function widened(changed: Changed | undefined, count: number): Changed | undefined {
  if (changed === undefined || changed === 'all') return changed;
  return isMost(changed.size, count) ? 'all' : changed;
}

/** From so many rows on, one run over the column is quicker than one a row. */
function isMost(rows: number, count: number): boolean {
  return rows > 64 && rows * 16 > count;
}

function joined(a: Changed | undefined, b: Changed): Changed;
function joined(a: Changed | undefined, b: Changed | undefined): Changed | undefined;
function joined(a: Changed | undefined, b: Changed | undefined): Changed | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  if (a === 'all' || b === 'all') return 'all';
  return new Set([...a, ...b]);
}
