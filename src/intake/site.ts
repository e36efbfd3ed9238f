import { decode, records, type CsvRecord } from '../csv/index.ts';
import type { PassedLine } from '../notebook/index.ts';
import { isProblem, nearest, problem, sentence, type Problem } from '../units/index.ts';
import { missingAsks, unitAsks } from './asks.ts';
import { assignColumns, settledFor, type FileColumn } from './assign.ts';
import { MarkFinder, type FileMarks } from './file-marks.ts';
import type {
  FileAsk,
  HeaderMapping,
  Intake,
  IntakeColumn,
  IntakeOptions,
  IntakeRow,
} from './intake.ts';
import { remarks } from './lines.ts';
import { FITS_NONE, headerMatcher } from './match.ts';
import { LONG_READINGS, measuredColumns, rowReader } from './row-cells.ts';
import { settledProblem } from './settled.ts';
import { runsNote } from './runs.ts';
import { stoodUp } from './turned.ts';
import { foldedText } from './words.ts';
import type { Matcher } from './header-rows.ts';
import { tablesOf, type Table, type TableRow } from './tables.ts';

const MOST_COLUMNS = 500;
const MOST_RECORDS = 250_000;
const REPORT_EVERY = 5000;
/** As many rows as tell what a column holds. */
const SAMPLE = 200;

/**
 * Reads a site file: a row for each post or hole it lists, with every entry carrying its own unit, and the lines that
 * hold none, each with why. Nothing is guessed: what the file leaves open is asked, or stays as it was typed. Never
 * throws, whatever the bytes are; a Problem where the file is no list at all.
 */
export function readSite(
  bytes: Uint8Array,
  fileName: string,
  options: IntakeOptions,
): Intake | Problem {
  const { columns, settled, progress } = options;
  const decoded = decode(bytes);
  if (isProblem(decoded)) return { ...decoded, where: fileName };
  progress?.(0.1);
  const { records: all, separatorLine, problems } = records(decoded.text);
  progress?.(0.3);
  const refused = tooBig(all) ?? (all.length === 0 ? EMPTY : undefined);
  if (refused) return { ...refused, where: fileName };

  const known = headerMatcher(columns);
  const match: Matcher = (header) => {
    const told = settledFor(header, settled);
    return told === undefined || told === null ? known(header) : { ...known(header), column: told };
  };
  const upright = stoodUp(all, match);
  const parts = tablesOf(upright?.records ?? all, match);
  if (!parts) return noHeader(fileName, all);
  const wrong = settledProblem(settled, parts.tables, columns);
  if (wrong) return { ...wrong, where: fileName };

  const isMeasured = measuredColumns(columns);
  const passedOver: PassedLine[] = [...parts.passedOver];
  const count = parts.tables.reduce((sum, table) => sum + table.rows.length, 0);
  if (separatorLine)
    passedOver.push({ line: 1, text: separatorLine.text, why: 'it names the separator' });
  const finder = new MarkFinder(
    parts.units,
    (column) => isMeasured(column) || column === 'post_size',
  );
  const tables = parts.tables.map((table) => assigned(table));
  const marks = finder.marks();

  const rows: IntakeRow[] = [];
  const unitless = new Map<string, string>();
  for (const table of tables) {
    const reader = rowReader(table.columns, columns, marks);
    for (const row of table.rows) {
      rows.push(reader.read(row.record.line, row.record.cells, row));
      if (rows.length % REPORT_EVERY === 0) progress?.(0.4 + (0.6 * rows.length) / count);
    }
    for (const [column, header] of reader.unitless) unitless.set(column, header);
  }
  const filled = new Set(
    tables.flatMap((table) => table.columns.map(({ column }) => column ?? '')),
  );
  const rivals = tables.flatMap((table) => table.asks);
  const open = new Set([...filled, ...rivals.map(({ column }) => column)]);
  const layout = layoutOf(filled);
  const mapping = mappingOf(
    tables.flatMap((table) => table.columns),
    columns,
  );
  return {
    rows,
    asks: [
      ...rivals,
      ...unitAsks(unitless, columns, LONG_READINGS),
      ...(layout === 'posts' ? missingAsks(rows, open, columns) : []),
    ],
    passedOver: [...(upright?.fileLines(passedOver) ?? passedOver)].sort((a, b) => a.line - b.line),
    mapping,
    shape: mapping.map(({ header }) => foldedText(header)).join('|'),
    layout,
    turned: upright !== undefined,
    linesRead: all.length + (separatorLine ? 1 : 0),
    notes: [
      ...notesOn(decoded.encoding, marks, filled),
      ...(upright?.notes(passedOver) ?? []),
      ...[runsNote(rows, mapping)].filter((note) => note !== undefined),
      ...problems.map(sentence),
    ],
  };

  function assigned(table: Table): AssignedTable {
    const sample = table.rows.slice(0, SAMPLE).map(({ record }) => record.cells);
    const { columns: fileColumns, asks } = assignColumns(table.head, sample, match, options);
    const remark = remarks(fileColumns, isMeasured);
    finder.head(fileColumns);
    const kept = table.rows.filter(({ record }) => {
      const { cells } = record;
      const why = remark(cells);
      if (why === undefined) finder.row(cells);
      else passedOver.push({ line: record.line, text: record.text, why });
      return why === undefined;
    });
    return { columns: fileColumns, asks, rows: kept };
  }
}

interface AssignedTable {
  readonly columns: readonly FileColumn[];
  readonly asks: readonly FileAsk[];
  readonly rows: readonly TableRow[];
}

/** A file of holes gives depths and widths to dig and no lean. */
function layoutOf(filled: ReadonlySet<string>): 'posts' | 'holes' {
  const lean = filled.has('lean_gap') || filled.has('lean_gap_along');
  const holes = ['hole_width', 'depth_wanted', 'depth_reached'].some((column) =>
    filled.has(column),
  );
  return holes && !lean ? 'holes' : 'posts';
}

function mappingOf(
  columns: readonly FileColumn[],
  sheet: readonly IntakeColumn[],
): readonly HeaderMapping[] {
  const mapping = new Map<string, HeaderMapping>();
  const labels = sheet.map(({ label }) => label);
  for (const { header, column, why } of columns) {
    const near = why === FITS_NONE ? nearest(header, labels) : undefined;
    const said = near === undefined ? why : `${why}; the nearest is “${near}”`;
    if (!mapping.has(header)) mapping.set(header, { header, column, why: said });
  }
  return [...mapping.values()];
}

function notesOn(encoding: string, { decimal }: FileMarks, filled: ReadonlySet<string>): string[] {
  const notes: string[] = [];
  const letters = ENCODINGS.get(encoding);
  if (letters !== undefined) notes.push(letters);
  if (decimal === ',') notes.push('A comma is the decimal mark in this file.');
  if (!filled.has('post')) notes.push('The file has no column of post numbers: type them in.');
  return notes;
}

const ENCODINGS: ReadonlyMap<string, string> = new Map([
  ['windows-1252', 'The letters were read as Windows-1252, because they are not UTF-8.'],
  ['iso-8859-1', 'The letters were read as Latin-1, because they are not UTF-8.'],
  [
    'mixed',
    'Most letters of the file are UTF-8 and some are not: those were read as Windows-1252. Check its fractions and accents.',
  ],
]);

const EMPTY = problem(
  '',
  'The file has no line with anything on it.',
  'Save the list again, then bring it in.',
);

function tooBig(all: readonly CsvRecord[]): Problem | undefined {
  // A line shorter than this has fewer cells.
  const widest = all
    .filter(({ text }) => text.length >= MOST_COLUMNS)
    .reduce((most, { cells }) => Math.max(most, cells.length), 0);
  if (widest > MOST_COLUMNS) {
    return problem(
      '',
      `The file has ${String(widest)} columns; the most that is read is ${String(MOST_COLUMNS)}.`,
      'Save only the columns with readings.',
    );
  }
  if (all.length > MOST_RECORDS) {
    return problem(
      '',
      `The file has ${String(all.length)} lines; the most that is read is ${String(MOST_RECORDS)}.`,
      'Split it by run or by job.',
    );
  }
  return undefined;
}

function noHeader(fileName: string, all: readonly CsvRecord[]): Problem {
  const first = all[0]?.text.slice(0, 80) ?? '';
  return problem(
    `${fileName}, line ${String(all[0]?.line ?? 1)}`,
    `No line of the file names its columns; it begins with “${first}”.`,
    'Put a line of headers above the readings, such as Post, Station, Lean gap, Level length.',
  );
}
