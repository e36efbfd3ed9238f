import {
  CellPlaces,
  decode,
  recordList,
  type CsvRecord,
  type RecordList,
  type RecordRun,
} from '../csv/index.ts';
import type { PassedLine } from '../notebook/index.ts';
import { isProblem, nearest, problem, sentence, type Problem } from '../units/index.ts';
import { missingAsks, unitAsks } from './asks.ts';
import { assignColumns, settledFor, type FileColumn } from './assign.ts';
import { MarkFinder, type FileMarks } from './file-marks.ts';
import type { FileAsk, HeaderMapping, Intake, IntakeColumn, IntakeOptions } from './intake.ts';
import { remarks } from './lines.ts';
import { FITS_NONE, headerMatcher } from './match.ts';
import { LONG_READINGS, measuredColumns, rowReader } from './row-cells.ts';
import { RowStore } from './row-store.ts';
import { rowsOf } from './stored-rows.ts';
import { settledProblem } from './settled.ts';
import { runsNote } from './runs.ts';
import { stoodUp } from './turned.ts';
import { foldedText } from './words.ts';
import type { Matcher } from './header-rows.ts';
import { tablesOf, type Table } from './tables.ts';

const MOST_COLUMNS = 500;
const MOST_RECORDS = 250_000;
const REPORT_EVERY = 5000;
/** How much of the reading is done once the file is a text, once its lines are parted, and once its columns are known. */
const SHARES = { decoded: 0.15, parted: 0.4, looked: 0.65 };
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
  const decoded = decode(bytes, (share) => progress?.(SHARES.decoded * share));
  if (isProblem(decoded)) return { ...decoded, where: fileName };
  const {
    records: all,
    separatorLine,
    problems,
  } = recordList(decoded.text, (share) =>
    progress?.(SHARES.decoded + (SHARES.parted - SHARES.decoded) * share),
  );
  const refused = tooBig(all) ?? (all.length === 0 ? EMPTY : undefined);
  if (refused) return { ...refused, where: fileName };

  const known = headerMatcher(columns);
  const match: Matcher = (header) => {
    const told = settledFor(header, settled);
    return told === undefined || told === null ? known(header) : { ...known(header), column: told };
  };
  const upright = stoodUp(all, match);
  const source: RecordRun = upright?.records ?? all;
  const parts = tablesOf(source, match);
  if (!parts) return noHeader(fileName, all.at(0));
  const wrong = settledProblem(settled, parts.tables, columns);
  if (wrong) return { ...wrong, where: fileName };

  const isMeasured = measuredColumns(columns);
  const passedOver: PassedLine[] = [...parts.passedOver];
  if (separatorLine)
    passedOver.push({ line: 1, text: separatorLine.text, why: 'it names the separator' });
  const finder = new MarkFinder(
    parts.units,
    (column) => isMeasured(column) || column === 'post_size',
  );
  const cells = new CellPlaces(source);
  const tables = parts.tables.map((table) => assigned(table));
  const marks = finder.marks();

  const count = tables.reduce((sum, table) => sum + table.rows.length, 0);
  const store = new RowStore(all.text, count);
  const unitless = new Map<string, string>();
  const tooLong: number[] = [];
  for (const table of tables) {
    const reader = rowReader(table.columns, columns, marks, store);
    const { stated } = table;
    let next = 0;
    for (const place of table.rows) {
      while ((stated[next]?.from ?? Infinity) <= place) next++;
      cells.look(place);
      reader.read(cells, stated[next - 1]);
      if (store.row % REPORT_EVERY === 0)
        progress?.(SHARES.looked + ((1 - SHARES.looked) * store.row) / count);
    }
    for (const [column, header] of reader.unitless) unitless.set(column, header);
    for (const line of reader.tooLong) tooLong.push(line);
  }
  const stored = store.stored();
  const rows = rowsOf(stored);
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
    stored,
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
      ...(upright ? [] : tooLongNote(tooLong)),
      ...problems.map(sentence),
    ],
  };

  function assigned(table: Table): AssignedTable {
    const sample = table.rows.slice(0, SAMPLE).map((place) => source.at(place)?.cells ?? []);
    const { columns: fileColumns, asks } = assignColumns(table.head, sample, match, options);
    const remark = remarks(fileColumns, isMeasured);
    finder.head(fileColumns);
    const rows = table.rows.filter((place) => {
      if (place % REPORT_EVERY === 0)
        progress?.(SHARES.parted + ((SHARES.looked - SHARES.parted) * place) / source.length);
      cells.look(place);
      const why = remark(cells);
      if (why === undefined) {
        finder.row(cells);
        return true;
      }
      passedOver.push({ line: cells.line, text: source.at(place)?.text ?? '', why });
      return false;
    });
    return { columns: fileColumns, asks, rows, stated: table.stated };
  }
}

interface AssignedTable extends Pick<Table, 'rows' | 'stated'> {
  readonly columns: readonly FileColumn[];
  readonly asks: readonly FileAsk[];
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

/** What became of cells past the last header, which a comma in a note makes. */
function tooLongNote(lines: readonly number[]): string[] {
  if (lines.length === 0) return [];
  const more = lines.length > 6 ? ` and ${String(lines.length - 6)} more` : '';
  return [
    `More cells than headers at line ${lines.slice(0, 6).join(', ')}${more}: the rest is kept beside the row and fills no column. See whether a comma split a note there.`,
  ];
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

function tooBig(all: RecordList): Problem | undefined {
  let widest = 0;
  for (let place = 0; place < all.length; place++) {
    // A line shorter than this has fewer cells.
    if (all.isPlainAt(place) && all.endAt(place) - all.startAt(place) < MOST_COLUMNS) continue;
    widest = Math.max(widest, all.at(place)?.cells.length ?? 0);
  }
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

function noHeader(fileName: string, first: CsvRecord | undefined): Problem {
  const begins = first?.text.slice(0, 80) ?? '';
  return problem(
    `${fileName}, line ${String(first?.line ?? 1)}`,
    `No line of the file names its columns; it begins with “${begins}”.`,
    'Put a line of headers above the readings, such as Post, Station, Lean gap, Level length.',
  );
}
