import { Column, type Input } from './column.ts';
import { inOrder } from './order.ts';
import { recompute, type Changed, type Pass } from './pass.ts';
import { placeBelow, type EnteredRows, type Rows } from './rows.ts';

/** What one slice of work came to. */
export interface Slice {
  readonly changed: ReadonlyMap<Column, Changed>;
  /** Whether nothing is stale any more. */
  readonly isDone: boolean;
}

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
  /** Rows that a pass broken off had not come to, and whether their places shift for certain. */
  private waiting = new Map<Rows, boolean>();
  private pass: Pass | undefined;
  private readonly known = new Set<Rows>();

  /** Adds a column; everything in it is stale. */
  add(column: Column): void {
    this.breakOff();
    this.columns.add(column);
    this.order = undefined;
    this.stale.set(column, 'all');
  }

  /** Says that an entry changed. */
  touch(column: Column, row: number): void {
    this.breakOff();
    const waiting = this.stale.get(column);
    if (waiting === undefined) this.stale.set(column, new Set([row]));
    else if (waiting !== 'all') waiting.add(row);
  }

  /** Says that every entry of a column may have changed. */
  touchAll(column: Column): void {
    this.breakOff();
    this.stale.set(column, 'all');
  }

  /** Takes rows out of, and puts rows into, a set that a person edits. */
  splice(rows: EnteredRows, at: number, removed: number, added: number): void {
    this.breakOff();
    rows.count += added - removed;
    rows.version += 1;
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
    return this.work().changed;
  }

  /**
   * Works out what is stale until time is over, and says which cells came out different in this
   * slice. Until it is done, what was not reached yet is as it was.
   */
  work(isOver?: () => boolean): Slice {
    this.order ??= inOrder(this.columns);
    const pass = (this.pass ??= this.begin());
    const changed = new Map<Column, Changed>();
    for (let node = this.order[pass.next]; node; node = this.order[++pass.next]) {
      if (node instanceof Column) {
        const rows = this.due(node, pass);
        if (rows === undefined) continue;
        if (!recompute(node, rows, pass, isOver)) return { changed, isDone: false };
        const { different } = pass;
        pass.different = undefined;
        // The one row left of several may be as it was, and the column is another all the same.
        if (different !== undefined || pass.moved.has(node.rows)) node.version += 1;
        if (different === undefined) continue;
        pass.changed.set(node, different);
        changed.set(node, different);
        if (isOver?.()) return this.left(pass, changed);
      } else if (isDerived(node)) {
        const shifted = this.isShifted(node, pass);
        if ((shifted || this.isUndecided(node, pass)) && (node.refresh() || shifted)) {
          node.version += 1;
          pass.moved.add(node);
        }
        this.known.add(node);
      }
    }
    this.pass = undefined;
    return { changed, isDone: true };
  }

  /** How much of what was stale is worked out, from 0 to 1. */
  get share(): number {
    return this.pass ? this.pass.next / Math.max(1, this.order?.length ?? 0) : 1;
  }

  private begin(): Pass {
    const { stale, moved, waiting } = this;
    this.stale = new Map();
    this.moved = new Set();
    this.waiting = new Map();
    return { next: 0, row: 0, different: undefined, changed: new Map(), stale, moved, waiting };
  }

  private left(pass: Pass, changed: ReadonlyMap<Column, Changed>): Slice {
    pass.next += 1;
    const isDone = pass.next >= (this.order?.length ?? 0);
    if (isDone) this.pass = undefined;
    return { changed, isDone };
  }

  /** Ends a pass before its end: what it had not come to stays stale. */
  private breakOff(): void {
    const { pass, order } = this;
    if (!pass || !order) return;
    this.pass = undefined;
    for (const node of order.slice(pass.next)) {
      if (node instanceof Column) {
        const rows = this.due(node, pass);
        if (rows === undefined) continue;
        this.stale.set(node, rows === 'all' ? rows : new Set(rows));
        if (pass.moved.has(node.rows)) node.version += 1;
      } else if (isDerived(node)) {
        const shifted = this.isShifted(node, pass);
        if (shifted || this.isUndecided(node, pass)) this.waiting.set(node, shifted);
      }
    }
  }

  /** The rows of a column that a pass has to work out. */
  private due(column: Column, { stale, changed, moved }: Pass): Changed | undefined {
    if (isDerived(column.rows) && moved.has(column.rows)) return 'all';
    const rows = joined(stale.get(column), this.reached(column, changed, moved));
    return widened(rows, column.rows.count);
  }

  // A parent that moved shifts places even where the same rows are chosen.
  private isShifted(rows: Rows, { moved, waiting }: Pass): boolean {
    if (waiting.get(rows) === true || !this.known.has(rows)) return true;
    return rows.parent !== undefined && moved.has(rows.parent);
  }

  private isUndecided(rows: Rows, { changed, moved, waiting }: Pass): boolean {
    if (waiting.has(rows)) return true;
    return rows.deciders.some((column) => changed.has(column) || moved.has(column.rows));
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
