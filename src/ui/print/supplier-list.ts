import type { BookView, CellView, SheetView } from '../../worksheet/index.ts';

/** One line of the list, with the cells of its row. */
export interface SupplierLine {
  readonly row: number;
  readonly item: string;
  cell(column: string): CellView | undefined;
}

/** The lines of one item, largest size and longest length first. */
export interface SupplierGroup {
  readonly item: string;
  readonly lines: readonly SupplierLine[];
}

/** The materials sheet grouped by item, in the sheet's own order of items. */
export function supplierGroups(book: BookView): readonly SupplierGroup[] {
  const sheet = book.sheet('materials');
  const groups = new Map<string, SupplierLine[]>();
  for (const line of linesOf(sheet)) {
    const group = groups.get(line.item);
    if (group) group.push(line);
    else groups.set(line.item, [line]);
  }
  return [...groups].map(([item, lines]) => ({ item, lines: [...lines].sort(largestFirst) }));
}

function linesOf(sheet: SheetView | undefined): readonly SupplierLine[] {
  if (!sheet) return [];
  const columns = new Set(sheet.columns.map(({ id }) => id));
  const cell = (row: number, column: string) =>
    columns.has(column) ? sheet.cell(row, column) : undefined;
  return Array.from({ length: sheet.rowCount }, (_, row) => ({
    row,
    item: cell(row, 'item')?.text ?? sheet.rowName(row),
    cell: (column) => cell(row, column),
  }));
}

function largestFirst(a: SupplierLine, b: SupplierLine): number {
  const size = SIZES.compare(b.cell('size')?.text ?? '', a.cell('size')?.text ?? '');
  if (size !== 0) return size;
  return lengthOf(b) - lengthOf(a) || a.row - b.row;
}

// `6x6` before `4x6` before `4x4`, and 10 before 8: the numbers in a size count as numbers.
const SIZES = new Intl.Collator('en', { numeric: true });

function lengthOf(line: SupplierLine): number {
  const value = line.cell('length')?.value;
  return typeof value === 'number' && Number.isFinite(value) ? value : -1;
}
