import type { SheetView } from '../worksheet/index.ts';

/** Where a row of this id stands on the sheet; -1 where it does not. */
export function rowOf(sheet: SheetView | undefined, id: string | undefined): number {
  if (!sheet || id === undefined) return -1;
  if (sheet.placeOf) return sheet.placeOf(id);
  for (let row = 0; row < sheet.rowCount; row++) if (sheet.rowId(row) === id) return row;
  return -1;
}
