import { writeCsv, type WriteOptions } from '../csv/index.ts';
import { LENGTH, isQuantity, parseUnit, type Kind, type Unit } from '../units/index.ts';
import type { CellView, ColumnView, SheetView } from '../worksheet/index.ts';
import { PLAIN_DIALECT, exactIn, shownIn, type Dialect } from './export-dialect.ts';

/** A list as rows of text, its heads first. */
export type Table = readonly (readonly string[])[];

/** A table as a CSV file. */
export function tableCsv(table: Table, options?: WriteOptions): string {
  return writeCsv(table, options);
}

/** The chosen columns of a sheet; every quantity carries its unit, so that the list can be read anywhere, and read back. */
export function sheetTable(
  sheet: SheetView,
  chosen: readonly string[],
  dialect: Dialect = PLAIN_DIALECT,
): Table {
  const columns = chosen.flatMap((id) => sheet.columns.filter((column) => column.id === id));
  const rows = Array.from({ length: sheet.rowCount }, (_, row) =>
    columns.map((column) => cellText(sheet.cell(row, column.id), column, dialect)),
  );
  return [columns.map(headText), ...rows];
}

/**
 * A cell as text with its unit: what was entered, on this sheet or the one it follows, to the last digit, so that it
 * reads back as it was, and what was worked out as the sheet shows it. An ask stands as it was typed; what waits is
 * blank.
 */
function cellText(cell: CellView, { kind, unit, formula }: ColumnView, dialect: Dialect): string {
  if (cell.state === 'ask') return cell.typed ?? cell.text;
  if (cell.state !== 'known') return '';
  const parsed = kind.type === 'quantity' && unit !== '' ? parseUnit(unit) : undefined;
  if (!parsed || typeof cell.value !== 'number') return cell.text;
  const isEntered = formula === undefined || (cell.typed ?? '') !== '' || FOLLOWED.test(formula);
  return isEntered
    ? enteredText(cell.value, kind, parsed, dialect)
    : shownIn(cell.value, `${cell.text} ${unit}`, kind, parsed, dialect);
}

/** A formula that takes a cell over from another sheet as it stands there. */
const FOLLOWED = /^\w+\.\w+$/;

/** What was entered, to the last digit. A 4 mm that the sheet's inches would make endless is written in mm. */
function enteredText(value: number, kind: Kind, unit: Unit, dialect: Dialect): string {
  const exact = exactIn(value, kind, unit, dialect);
  if (dialect.lengths !== 'job' || !isQuantity(kind, LENGTH) || !ENDLESS.test(exact)) return exact;
  const others = [MILLIMETER, INCH].map((other) => other && exactIn(value, kind, other, dialect));
  return others.find((text) => text !== undefined && !ENDLESS.test(text)) ?? exact;
}

const MILLIMETER = parseUnit('mm');
const INCH = parseUnit('in');
// Tapes are read to a thirty-second or sixty-fourth, and meters to a tenth of a millimeter.
const ENDLESS = /[.,]\d{7}/;

function headText({ called }: ColumnView): string {
  return called;
}
