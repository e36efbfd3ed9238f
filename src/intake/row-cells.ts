import { LENGTH, isQuantity } from '../units/index.ts';
import type { FileColumn } from './assign.ts';
import { ColumnOrder } from './entries.ts';
import type { FileMarks } from './file-marks.ts';
import type { IntakeColumn, IntakeRow } from './intake.ts';
import {
  isDitto,
  lengthEntry,
  readLength,
  type ColumnWriting,
  type LengthEntry,
} from './length-entry.ts';
import { assume, closeRow, keep, openRow, type LevelLength, type OpenRow } from './open-row.ts';
import { rockTest } from './rock-test.ts';
import { RUN } from './runs.ts';
import { splitFooting, splitLean } from './split-cell.ts';

/** Turns the records of one table into rows of the posts sheet. */
export interface RowReader {
  read(
    line: number,
    cells: readonly string[],
    stated: { readonly level: string | undefined; readonly run: string | undefined },
  ): IntakeRow;
  /** Columns with bare numbers whose unit nobody knows, and their headers. */
  readonly unitless: ReadonlyMap<string, string>;
}

/** Long readings: a bare one is asked about even where the file's small unit is known. */
export const LONG_READINGS: ReadonlySet<string> = new Set([
  'station',
  'height',
  'post_top',
  'tree_distance',
]);

/** Which columns of the sheet hold a length. */
export function measuredColumns(sheet: readonly IntakeColumn[]): (column: string) => boolean {
  const lengths = new Set(sheet.filter(({ kind }) => isQuantity(kind, LENGTH)).map(({ id }) => id));
  return (column) => lengths.has(column) || column === 'footing';
}

/** A reader for the rows of one table. */
export function rowReader(
  columns: readonly FileColumn[],
  sheet: readonly IntakeColumn[],
  marks: FileMarks,
): RowReader {
  const isMeasured = measuredColumns(sheet);
  const unitless = new Map<string, string>();
  const order = new ColumnOrder();
  let above: { readonly stated: string; readonly level: LevelLength } | undefined;
  const probes = columns.filter(({ column }) => column === 'probe_depth').length;
  const plans = columns.map((column): Plan => ({
    ...column,
    measured: column.column !== null && isMeasured(column.column),
    behind: behindPlain(column),
    place:
      column.column === null || column.column === 'footing' ? -1 : order.placeOf(column.column),
    entries: new Map(),
    writing: {
      unit: column.unit,
      usual:
        column.disputed || (column.column !== null && LONG_READINGS.has(column.column))
          ? undefined
          : marks.small,
      decimal: marks.decimal,
      below: column.below,
    },
  }));

  return {
    unitless,
    read(line, cells, { level, run }) {
      const row = openRow(line, order);
      for (const plan of plans) {
        const cell = cells[plan.index]?.trim() ?? '';
        if (cell === '') continue;
        if (plan.behind !== undefined && isPlainNumber(cell))
          row.cells.put(plan.place, cell + plan.behind);
        else take(row, plan, cell);
      }
      for (let index = plans.length; index < cells.length; index++) {
        const cell = cells[index]?.trim() ?? '';
        if (cell !== '') keep(row, `column ${String(index + 1)}`, cell);
      }
      if (run !== undefined) keep(row, RUN, run);
      return closeRow(row, level === undefined ? undefined : levelAbove(level));
    },
  };

  function behindPlain({ column, unit, over, below }: FileColumn): string | undefined {
    const whole = column !== null && isMeasured(column) && column !== 'footing' && !below;
    const face = column === 'probe_depth' && probes > 1;
    return whole && !face && unit !== undefined && over === undefined && marks.decimal !== ','
      ? ` ${unit}`
      : undefined;
  }

  function take(row: OpenRow, plan: Plan, cell: string): void {
    const { column, header } = plan;
    if (column === null) keep(row, header, cell);
    else if (column === 'footing') takeFooting(row, plan, cell);
    else if (column === 'lean_gap') takeLean(row, plan, cell);
    else if (column === 'probe_depth' && probes > 1) {
      row.faces = [...row.faces, { header, cell, entry: measure(plan, cell, column) }];
    } else if (plan.measured) place(row, plan, column, measure(plan, cell, column));
    else if (column === 'rock_test') row.cells.set(column, rockTest(withoutStray(cell)));
    else if (column === 'post_size' && plan.unit !== undefined) {
      row.cells.set(column, lengthEntry(cell, plan.writing).text);
    } else row.cells.put(plan.place, withoutStray(cell));
  }

  function measure(plan: Plan, cell: string, column: string): LengthEntry {
    let entry = plan.entries.get(cell);
    if (!entry) {
      entry = lengthEntry(cell, plan.writing);
      if (plan.entries.size < MOST_ENTRIES) plan.entries.set(cell, entry);
    }
    if (entry.unitless) unitless.set(column, plan.header);
    return entry;
  }

  function place(row: OpenRow, { header }: Plan, column: string, entry: LengthEntry): void {
    row.cells.set(column, entry.text);
    if (entry.usual) assume(row, column, takenAs(header));
  }

  function takenAs(header: string): string {
    return `“${header}” gives no unit; taken as ${marks.small ?? ''}, the one small unit in the file`;
  }

  function takeFooting(row: OpenRow, plan: Plan, cell: string): void {
    const parts = splitFooting(cell);
    const sizes = parts
      ? { footing_width: parts.width, footing_depth: parts.depth }
      : isDitto(cell)
        ? { footing_width: cell, footing_depth: cell }
        : { footing_width: cell };
    for (const [column, size] of Object.entries(sizes)) {
      if (row.cells.has(column)) {
        keep(row, plan.header, cell);
        continue;
      }
      const entry = measure(plan, size, column);
      row.cells.set(column, entry.text);
      const why = entry.usual ? `; ${takenAs(plan.header)}` : '';
      if (parts) assume(row, column, `written as “${cell}”${why}`);
    }
  }

  function takeLean(row: OpenRow, plan: Plan, cell: string): void {
    const worded = !SIMPLE.test(cell);
    const parts = worded ? splitLean(cell) : undefined;
    if (parts) {
      row.cells.set('lean_gap', parts.gap);
      assume(row, 'lean_gap', `written as “${cell}”`);
      row.over = { text: parts.over, slope: parts.slope, why: `from the lean cell, “${cell}”` };
      return;
    }
    const entry = measure(plan, cell, 'lean_gap');
    place(row, plan, 'lean_gap', entry);
    row.toward = worded ? readLength(entry.text.replace(/ \?$/, ''), 'in')?.toward : undefined;
    if (plan.over !== undefined) row.over = levelInHeader(plan, plan.over);
  }

  function levelInHeader(plan: Plan, over: string): LevelLength {
    const entry = lengthEntry(over, { ...plan.writing, unit: undefined });
    if (entry.unitless) unitless.set('level_length', plan.header);
    const slope = /^1 (?:ft|m)$/.test(entry.text);
    return { text: entry.text, slope, why: `from the header “${plan.header}”` };
  }

  function levelAbove(stated: string): LevelLength {
    if (above?.stated !== stated) above = { stated, level: readLevelAbove(stated) };
    return above.level;
  }

  function readLevelAbove(stated: string): LevelLength {
    const entry = lengthEntry(stated, {
      unit: undefined,
      usual: marks.small,
      decimal: marks.decimal,
      below: false,
    });
    if (entry.unitless) unitless.set('level_length', 'level length above the table');
    return { text: entry.text, slope: false, why: `stated once in the file: “${stated}”` };
  }
}

/** Words without a quote that opened before them and was never closed. */
function withoutStray(cell: string): string {
  return cell.startsWith('"') && cell.length > 1 && !cell.includes('"', 1) ? cell.slice(1) : cell;
}

/** As many different cells of a column as are remembered: a column that hardly repeats itself is not worth more. */
const MOST_ENTRIES = 2000;

/**
 * Whether a cell is a plain number such as `12` or `4.75`, which only wants its unit behind it. Five figures in a row
 * may be a date.
 */
function isPlainNumber(cell: string): boolean {
  let point = -1;
  const { length } = cell;
  if (length > 8) return false;
  for (let at = 0; at < length; at++) {
    const code = cell.charCodeAt(at);
    if (code === 46 && point === -1 && at > 0) point = at;
    else if (code < 48 || code > 57) return false;
  }
  return point === -1 ? length < 5 : point < length - 1;
}

interface Plan extends FileColumn {
  /** What goes behind a plain number to make it an entry; undefined where its cells want a closer look. */
  readonly behind: string | undefined;
  /** The column's place in the order of the row's entries; -1 where it has none of its own. */
  readonly place: number;
  readonly measured: boolean;
  readonly writing: ColumnWriting;
  /** Entries by cell: a file says the same things over and over. */
  readonly entries: Map<string, LengthEntry>;
}

/** A number and a tape's unit, and nothing more. */
const SIMPLE = /^[~\s]*[-+−]?[\d\s.,/⁄¼½¾⅛⅜⅝⅞"'″′”’-]+(?:in|mm|cm|ft|m)?\.?$/i;
