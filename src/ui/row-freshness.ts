import type { CellView, ColumnView } from '../worksheet/index.ts';

/** Which rows of a sheet have to be drawn again: a number of each, another one whenever what it shows may be another. */
export class RowFreshness {
  private changes = 0;
  private all = 0;
  private readonly rows = new Map<string, number>();
  private readonly unsettled = new Set<string>();

  /** Notes the rows of the sheet that changed. */
  note(rows: 'all' | ReadonlySet<string>): void {
    this.changes += 1;
    if (rows === 'all') {
      this.all = this.changes;
      this.rows.clear();
    } else for (const id of rows) this.rows.set(id, this.changes);
  }

  /** Notes how a row was drawn: what says why it has no value may say something else after any change. */
  drawn(id: string, isSettled: boolean): void {
    if (isSettled) this.unsettled.delete(id);
    else this.unsettled.add(id);
  }

  of(id: string): number {
    return this.unsettled.has(id) ? this.changes : (this.rows.get(id) ?? this.all);
  }
}

/** The changed cells of one sheet, by row, from names as `sheet/row/column`. */
export function byRow(
  cells: ReadonlySet<string>,
  sheet: string,
): ReadonlyMap<string, ReadonlySet<string>> {
  const rows = new Map<string, Set<string>>();
  for (const name of cells) {
    const [of, row = '', column = ''] = name.split('/');
    if (of !== sheet) continue;
    const columns = rows.get(row);
    if (columns) columns.add(column);
    else rows.set(row, new Set([column]));
  }
  return rows;
}

/**
 * Whether nothing but its own row and a change that is told of can make a cell show something else. What keeps a cell
 * waiting may change anywhere; a line of a list is worked out though its column has no one formula.
 */
export function isSettled({ formula }: ColumnView, { state }: CellView): boolean {
  if (state === 'known') return true;
  return formula === undefined && state !== 'wrong' && state !== 'waiting';
}
