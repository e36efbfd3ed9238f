import type { CsvRecord, RecordRun } from '../csv/index.ts';
import { unitWord } from './header-unit.ts';
import { beginsWithFigure } from './lines.ts';
import type { HeaderMatch } from './match.ts';
import { isPostNumber } from './values.ts';

/** The lines that head a table. */
export interface TableHead {
  /** Place of the first of them among the records. */
  readonly at: number;
  readonly lines: readonly HeadLine[];
  /** One header a column, told apart where the file repeats one. */
  readonly headers: readonly string[];
  /** The unit that a row of units gives each column. */
  readonly units: readonly (string | undefined)[];
}

/** One line of a head, and what it is. */
export interface HeadLine {
  readonly record: CsvRecord;
  readonly why: string;
}

/** Reads a header on its own. */
export type Matcher = (header: string) => HeaderMatch;

const LOOK_AHEAD = 60;

/** The head of the first table at or after a record: the row, or pair of rows, with the most known columns. */
export function findHead(all: RecordRun, from: number, match: Matcher): TableHead | undefined {
  const end = Math.min(all.length, from + LOOK_AHEAD);
  let best: (HeadRows & { readonly at: number }) | undefined;
  for (let at = from; at < end; at++) {
    const rows = headRows(all, at, match);
    if (rows && rows.known > (best?.known ?? 0)) best = { ...rows, at };
  }
  const narrow = part(all, from, end).every(({ cells }) => cells.filter(isFilled).length <= 2);
  if (!best || best.known < (narrow ? 1 : 2)) return undefined;
  return headAt(all, best.at, best);
}

/** The head that begins at this record, in the middle of a file; undefined where the record is no header. */
export function headHere(all: RecordRun, at: number, match: Matcher): TableHead | undefined {
  const record = all.at(at);
  if (!record || beginsWithFigure(record)) return undefined;
  const cells = record.cells.filter(isFilled);
  if (cells.length < 3 || cells.some(startsWithNumber)) return undefined;
  const rows = headRows(all, at, match);
  if (!rows) return undefined;
  const sure = rows.known >= 3 && rows.known >= 0.6 * cells.length;
  return sure || mayHead(all, at, cells, match) ? headAt(all, at, rows) : undefined;
}

/** Whether a short line is the head of another table: it begins with a known column, hints at the rest, and figures follow. */
function mayHead(all: RecordRun, at: number, cells: readonly string[], match: Matcher): boolean {
  const next = all.at(at + 1)?.cells;
  if (!next || !looksLikeData(next) || isPostNumber(cells[0] ?? '')) return false;
  const read = cells.map((cell) => match(cell.trim()));
  const known = read.filter(({ column }) => column !== undefined).length;
  const hinted = read.filter(({ column, weak }) => column !== undefined || weak.length > 0).length;
  return read[0]?.column !== undefined && known >= 2 && hinted >= 0.6 * cells.length;
}

/** The record's cells as one text, to tell a header that comes again. */
export function recordKey(record: CsvRecord): string {
  return record.cells
    .join('|')
    .toLowerCase()
    .replace(/\s+|\|+$/g, '');
}

interface HeadRows {
  readonly headers: readonly string[];
  readonly count: 1 | 2;
  readonly known: number;
}

/** The records from one place up to another. */
export function part(all: RecordRun, from: number, to: number): readonly CsvRecord[] {
  const records: CsvRecord[] = [];
  for (let at = from; at < Math.min(to, all.length); at++) {
    const record = all.at(at);
    if (record) records.push(record);
  }
  return records;
}

function headRows(all: RecordRun, at: number, match: Matcher): HeadRows | undefined {
  const upper = all.at(at)?.cells;
  if (!upper || looksLikeData(upper)) return undefined;
  const single: HeadRows = { headers: upper, count: 1, known: knownColumns(upper, match) };
  const lower = all.at(at + 1)?.cells;
  if (!lower || looksLikeData(lower) || upper.filter(isFilled).length < 2 || isUnitRow(lower))
    return single;
  const headers = joined(upper, lower, match);
  const pair: HeadRows = { headers, count: 2, known: knownColumns(headers, match) };
  // Where the lower row says as much alone, the upper one is a title.
  return pair.known > Math.max(single.known, knownColumns(lower, match)) ? pair : single;
}

function headAt(all: RecordRun, at: number, { headers, count }: HeadRows): TableHead {
  const lines = part(all, at, at + count).map((record, row) => ({
    record,
    why: row === 0 ? 'the header' : 'the header’s second row',
  }));
  const unitRow = all.at(at + count);
  const hasUnits = unitRow !== undefined && isUnitRow(unitRow.cells);
  if (hasUnits) lines.push({ record: unitRow, why: 'the row of units' });
  const units = hasUnits ? unitRow.cells.map((cell) => unitWord(bracketless(cell))) : [];
  return { at, lines, headers: toldApart(headers), units };
}

/** Two header rows as one; a blank upper cell belongs to the cell at its left, where cells were merged. */
function joined(upper: readonly string[], lower: readonly string[], match: Matcher): string[] {
  let group = '';
  return Array.from({ length: Math.max(upper.length, lower.length) }, (_, column) => {
    const above = upper[column]?.trim() ?? '';
    const below = lower[column]?.trim() ?? '';
    group = above === '' ? group : above;
    if (below === '') return above;
    const whole = `${above} ${below}`.trim();
    const readings = [`${group} ${below}`.trim(), below, above];
    return readings.find((header) => header !== '' && match(header).column !== undefined) ?? whole;
  });
}

function knownColumns(headers: readonly string[], match: Matcher): number {
  const columns = new Set<string>();
  for (const header of headers) {
    const { column, face } = match(header.trim());
    if (column !== undefined) columns.add(face ? `${column} ${header}` : column);
  }
  return columns.size;
}

function looksLikeData(cells: readonly string[]): boolean {
  const filled = cells.filter(isFilled);
  return filled.length === 0 || filled.filter(startsWithNumber).length > filled.length / 3;
}

function startsWithNumber(cell: string): boolean {
  return /^\s*[~+-]?\s*[\d¼½¾⅛⅜⅝⅞]/.test(cell);
}

function isFilled(cell: string): boolean {
  return cell.trim() !== '';
}

function isUnitRow(cells: readonly string[]): boolean {
  const filled = cells.filter(isFilled).map(bracketless);
  const units = filled.filter((cell) => unitWord(cell) !== undefined).length;
  return units > 0 && filled.every((cell) => unitWord(cell) !== undefined || UNITLESS.test(cell));
}

const UNITLESS =
  /^(?:-+|–|—|#|nos?\.?|nr\.?|text|n\/?a|dir\.?|compass|units?:?|einheit|unidad(?:es)?)$/i;

function bracketless(cell: string): string {
  return cell.trim().replace(/^[([{]\s*|\s*[)\]}]$/g, '');
}

function toldApart(headers: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return headers.map((cell, column) => {
    const header = cell.replace(/\s+/g, ' ').trim() || `column ${String(column + 1)}`;
    const times = (seen.get(header) ?? 0) + 1;
    seen.set(header, times);
    return times === 1 ? header : `${header} (${String(times)})`;
  });
}
