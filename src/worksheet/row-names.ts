import { decode } from '../formula/index.ts';
import { KNOWN } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import type { Engine } from './engine.ts';
import type { ColumnDefinition } from './definition.ts';
import type { BandModel, SheetModel } from './model.ts';
import { rowIdAt } from './row-ids.ts';
import { shownText, shownUnit } from './shown.ts';

/** What a row is called aloud: `post 3`, `hole 3`, `80 lb`; blank for the job. */
export function rowNameAt(
  sheet: SheetModel,
  band: BandModel,
  row: number,
  notebook: Notebook,
  engine: Engine,
): string {
  const key = rowKeyAt(sheet, band, row, notebook, engine);
  const { rows } = sheet.definition;
  if (rows.from === 'single') return '';
  return `${rows.called} ${key === '' ? `in row ${String(row + 1)}` : key}`.trim();
}

/** What stands in the key column of a row; blank where nothing does. */
export function rowKeyAt(
  sheet: SheetModel,
  band: BandModel,
  row: number,
  notebook: Notebook,
  engine: Engine,
): string {
  const { rows, id } = sheet.definition;
  if (rows.from === 'single') return '';
  const key = band.columns.get(rows.key);
  if (key?.result.states[row] === KNOWN) {
    const value = decode(key.result.values[row] ?? NaN, key.kind, engine.words);
    return shownText(value, key.kind, shownUnit(key.definition, notebook.document));
  }
  // Before the sheets are worked out, the entry itself serves.
  const rowId = rowIdAt(sheet, band, row, notebook, engine.models) ?? '';
  return rows.from === 'entered' ? (notebook.row(id, rowId)?.cells.get(rows.key) ?? '') : '';
}

/** What a column is called aloud; where its sheet has another of the same label, its second line tells them apart. */
export function columnCalled(
  { id, called, label, hint }: ColumnDefinition,
  { definition }: SheetModel,
): string {
  if (called !== undefined) return called;
  const isAlone = !definition.columns.some((other) => other.label === label && other.id !== id);
  return isAlone || hint === undefined ? label : `${label} (${hint})`;
}
