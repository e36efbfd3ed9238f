import { GroupedRows, placeBelow, placeIn, type Rows } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import type { BandModel, SheetModel } from './model.ts';
import type { SheetView } from './view.ts';

/** Where a sheet shows the row of an id; undefined where it is not. */
export function placeOfRow(sheet: SheetView, id: string): number | undefined {
  if (sheet.placeOf) {
    const at = sheet.placeOf(id);
    return at < 0 ? undefined : at;
  }
  for (let at = 0; at < sheet.rowCount; at++) if (sheet.rowId(at) === id) return at;
  return undefined;
}

/** The stable id of a row: its own, or that of the row it follows. */
export function rowIdAt(
  sheet: SheetModel,
  band: BandModel,
  row: number,
  notebook: Notebook,
  models: ReadonlyMap<string, SheetModel>,
): string | undefined {
  const { rows, id } = sheet.definition;
  switch (rows.from) {
    case 'single':
      return 'job';
    case 'entered':
      return notebook.rows(id)[row]?.id;
    case 'following': {
      const top = topOf(sheet, models);
      const topRows = top.bands[0]?.rows;
      const place = topRows ? placeIn(topRows, band.rows, row) : -1;
      return notebook.rows(top.definition.id)[place]?.id;
    }
    case 'lines':
      return band.rows instanceof GroupedRows
        ? `${band.line?.id ?? ''} ${String(row + 1)}`
        : band.line?.id;
  }
}

/** Where the row of this id stands on its band, or -1. */
export function rowAt(
  sheet: SheetModel,
  band: BandModel,
  rowId: string,
  notebook: Notebook,
  models: ReadonlyMap<string, SheetModel>,
): number {
  const { rows, id } = sheet.definition;
  if (rows.from === 'single') return 0;
  if (rows.from === 'entered') return notebook.place(id, rowId) ?? -1;
  if (rows.from === 'lines') {
    for (let row = 0; row < band.rows.count; row++) {
      if (rowIdAt(sheet, band, row, notebook, models) === rowId) return row;
    }
    return -1;
  }
  const top = topOf(sheet, models);
  const topRows: Rows | undefined = top.bands[0]?.rows;
  const place = notebook.place(top.definition.id, rowId);
  return topRows && place !== undefined ? placeBelow(topRows, band.rows, place) : -1;
}

/** The entered sheet at the end of a chain of sheets that follow one another. */
function topOf(sheet: SheetModel, models: ReadonlyMap<string, SheetModel>): SheetModel {
  const { rows } = sheet.definition;
  const parent = rows.from === 'following' ? models.get(rows.sheet) : undefined;
  return parent ? topOf(parent, models) : sheet;
}
