import Papa from 'papaparse';
import { withGuard } from './formula-guard.ts';

/** A cell to write: text as it stands, or a number. */
export type CsvField = string | number;

/** How a file is written. */
export interface WriteOptions {
  /** A comma where nothing is said. */
  readonly delimiter?: ',' | ';' | '\t';
  /** Whether the file starts with a byte order mark, which some programs need to read accents. */
  readonly bom?: boolean;
}

/** The rows as CSV text: CRLF line ends, quotes where they are needed, and no cell that another program would run. */
export function writeCsv(
  rows: readonly (readonly CsvField[])[],
  options: WriteOptions = {},
): string {
  const safe = rows.map((row) => row.map(fieldText));
  const text = Papa.unparse(safe, { delimiter: options.delimiter ?? ',', newline: '\r\n' });
  return `${options.bom === true ? '\ufeff' : ''}${text}${rows.length > 0 ? '\r\n' : ''}`;
}

function fieldText(field: CsvField): string {
  if (typeof field === 'string') return withGuard(field);
  return Number.isFinite(field) ? String(field) : '';
}
