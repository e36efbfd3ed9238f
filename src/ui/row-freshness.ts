/** Which rows of a sheet have to be drawn again: a number of each, another one whenever what it shows may be another. */
export class RowFreshness {
  private changes = 0;
  private all = 0;
  private readonly rows = new Map<string, number>();

  /** Notes the rows that changed; none at all where their sheet was not touched. */
  note(rows: 'all' | ReadonlySet<string> | undefined): void {
    if (rows === undefined) return;
    this.changes += 1;
    if (rows === 'all') {
      this.all = this.changes;
      this.rows.clear();
    } else for (const id of rows) this.rows.set(id, this.changes);
  }

  of(id: string): number {
    return this.rows.get(id) ?? this.all;
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
