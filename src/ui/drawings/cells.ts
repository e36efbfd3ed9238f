import type { BookView, CellView, ColumnView, SheetView } from '../../worksheet/index.ts';
import { unitWords } from './figures.ts';

/** The cell at a place, or undefined where the sheet has no such row or column. */
export function cellOf(
  sheet: SheetView | undefined,
  row: number,
  column: string,
): CellView | undefined {
  if (!sheet || row < 0 || row >= sheet.rowCount || !columnOf(sheet, column)) return undefined;
  return sheet.cell(row, column);
}

/** The column of this id, or undefined. */
export function columnOf(sheet: SheetView | undefined, column: string): ColumnView | undefined {
  return sheet?.columns.find(({ id }) => id === column);
}

// Nothing on a fence is longer or thinner; a slip of the tape beyond these can't be drawn.
const LONGEST = 1e6;
const THINNEST = 1e-4;

/** The SI number of a known cell; undefined where it is blank, waiting, asked about, wrong, or past drawing. */
export function numberOf(
  sheet: SheetView | undefined,
  row: number,
  column: string,
): number | undefined {
  const cell = cellOf(sheet, row, column);
  return cell?.state === 'known' &&
    typeof cell.value === 'number' &&
    Math.abs(cell.value) <= LONGEST
    ? cell.value
    : undefined;
}

/** As `numberOf`, for what can only be drawn where it is more than nothing: a width, a height. */
export function sizeOf(
  sheet: SheetView | undefined,
  row: number,
  column: string,
): number | undefined {
  const size = numberOf(sheet, row, column);
  return size !== undefined && size >= THINNEST ? size : undefined;
}

/** The text of a known cell, without its unit; blank where it is not known. */
export function wordsOf(sheet: SheetView | undefined, row: number, column: string): string {
  const cell = cellOf(sheet, row, column);
  return cell?.state === 'known' ? cell.text : '';
}

/** The text of a known cell with its column's unit: `3 3/8 in`. */
export function measureOf(sheet: SheetView | undefined, row: number, column: string): string {
  return withUnit(wordsOf(sheet, row, column), columnOf(sheet, column)?.unit ?? '');
}

/** A text and its unit; a text that carries foot or inch marks says its unit already. */
export function withUnit(text: string, unit: string): string {
  return text === '' || unit === '' || /['"′″]/u.test(text) ? text : `${text} ${unitWords(unit)}`;
}

/** The sheet of the job's inputs, whose one row is row 0. */
export function jobOf(book: BookView): SheetView | undefined {
  return book.sheet('job');
}
