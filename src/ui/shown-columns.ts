import type { CellView, ColumnView, SheetView } from '../worksheet/index.ts';
import { unitFace } from './unit-face.ts';

/** Rows looked at to see whether a column is filled; a longer sheet shows its habits by then. */
const LOOKED_AT = 500;

/** The columns to show: always, those with something in them, or all where `more` is asked for. */
export function shownColumns(sheet: SheetView, more: boolean): readonly ColumnView[] {
  return sheet.columns.filter(
    (column) =>
      more ||
      column.show === 'always' ||
      (column.show === 'when filled' && isFilled(sheet, column)),
  );
}

/** Whether numbers stand here, which line up on the right. */
export function isFigures({ kind }: ColumnView): boolean {
  return kind.type === 'quantity';
}

/** Whether a cell holds what a person typed, a thing in trouble, or a result. */
export function manner(cell: CellView): string {
  if (cell.state !== 'known') return cell.state;
  return cell.typed === undefined ? 'worked' : 'typed';
}

/** The column's head as one line, for the ear and for labels. */
export function headWords({ label, unit, hint }: ColumnView): string {
  return [label, unitFace(unit), hint].filter((part) => part !== '').join(', ');
}

// A column that is worked out as well has something in every row: it is filled once somebody typed.
function isFilled(sheet: SheetView, { id, entered, formula }: ColumnView): boolean {
  if (sheet.isFilled) return sheet.isFilled(id, LOOKED_AT);
  const looked = Math.min(sheet.rowCount, LOOKED_AT);
  for (let row = 0; row < looked; row += 1) {
    const { state, typed } = sheet.cell(row, id);
    if (typed !== undefined) return true;
    if (entered && formula !== undefined) continue;
    if (state === 'known' || state === 'ask' || state === 'wrong') return true;
  }
  return false;
}
