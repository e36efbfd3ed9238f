import type { CellPlaces } from '../csv/index.ts';
import { LENGTH, isQuantity } from '../units/index.ts';
import type { FileColumn } from './assign.ts';
import type { FileMarks } from './file-marks.ts';
import type { IntakeColumn } from './intake.ts';
import {
  isDitto,
  lengthEntry,
  readLength,
  type ColumnWriting,
  type LengthEntry,
} from './length-entry.ts';
import { assume, closeRow, openRow, type LevelLength, type OpenRow } from './open-row.ts';
import { DECIMAL, FRACTION, WITH_MARK, numberIn } from './plain-number.ts';
import { rockTest } from './rock-test.ts';
import type { ColumnStore, RowStore } from './row-store.ts';
import { RUN } from './runs.ts';
import { splitFooting, splitLean } from './split-cell.ts';

/** Turns the records of one table into rows of the posts sheet. */
export interface RowReader {
  /** Puts a record into the store, as its next row. */
  read(
    cells: CellPlaces,
    stated: { readonly level: string | undefined; readonly run: string | undefined } | undefined,
  ): void;
  /** Columns with bare numbers whose unit nobody knows, and their headers. */
  readonly unitless: ReadonlyMap<string, string>;
  /** Lines with more cells than the header names. */
  readonly tooLong: ReadonlySet<number>;
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
  store: RowStore,
): RowReader {
  const isMeasured = measuredColumns(sheet);
  const unitless = new Map<string, string>();
  const tooLong = new Set<number>();
  const row = openRow(store);
  let above: { readonly stated: string; readonly level: LevelLength } | undefined;
  const probes = columns.filter(({ column }) => column === 'probe_depth').length;
  const plans = columns.map(planFor);

  return {
    unitless,
    tooLong,
    read(cells, stated) {
      store.next(cells.line);
      for (const plan of plans) {
        if (!cells.has(plan.index)) continue;
        const behind = plan.asItStands(cells);
        if (behind === undefined) take(plan, cells.cell(plan.index), cells.isUnpaired);
        else plan.store.put(store.row, cells, plan.index, behind);
      }
      for (let index = plans.length; index < cells.count; index++) {
        if (!cells.has(index)) continue;
        tooLong.add(cells.line);
        store.column('kept', `column ${String(index + 1)}`).put(store.row, cells, index, '');
      }
      if (stated?.run !== undefined) store.set('kept', RUN, stated.run);
      closeRow(row, stated?.level === undefined ? undefined : levelAbove(stated.level));
    },
  };

  function planFor(file: FileColumn): Plan {
    const { column, header } = file;
    const plan = {
      ...file,
      measured: column !== null && isMeasured(column),
      store: column === null ? store.column('kept', header) : store.column('cells', column),
      entries: new Map<string, LengthEntry>(),
      writing: {
        unit: file.unit,
        usual:
          file.disputed || (column !== null && LONG_READINGS.has(column)) ? undefined : marks.small,
        decimal: marks.decimal,
        below: file.below,
      },
    };
    return { ...plan, asItStands: asItStands(plan) };
  }

  /** Tells what goes behind a cell to make it an entry; undefined where it wants a closer look. */
  function asItStands(plan: Omit<Plan, 'asItStands'>): Plan['asItStands'] {
    const { column, index, unit, over, below } = plan;
    if (column === null) return () => '';
    if (column === 'footing' || column === 'rock_test' || (column === 'post_size' && unit))
      return () => undefined;
    if (!plan.measured) return (cells) => (cells.isUnpaired ? undefined : '');
    const isFace = column === 'probe_depth' && probes > 1;
    if (isFace || over !== undefined || below || marks.decimal === ',') return () => undefined;
    const behind = unit === undefined ? undefined : ` ${unit}`;
    const behindFraction = unit === 'in' || unit === 'ft' ? behind : undefined;
    return (cells) => {
      const found = numberIn(cells, index);
      if (found === WITH_MARK) return '';
      return found === DECIMAL ? behind : found === FRACTION ? behindFraction : undefined;
    };
  }

  function take(plan: Plan, cell: string, isUnpaired: boolean): void {
    const { column, header } = plan;
    const words = isUnpaired ? withoutStray(cell) : cell;
    if (column === 'footing') takeFooting(row, plan, cell);
    else if (column === 'lean_gap') takeLean(row, plan, cell);
    else if (column === 'probe_depth' && probes > 1) {
      row.faces = [...row.faces, { header, cell, entry: measure(plan, cell, column) }];
    } else if (plan.measured && column !== null)
      place(row, plan, column, measure(plan, cell, column));
    else if (column === 'rock_test') enter(plan, rockTest(words));
    else if (column === 'post_size' && plan.unit !== undefined) {
      enter(plan, lengthEntry(cell, plan.writing).text);
    } else enter(plan, words);
  }

  function enter(plan: Plan, text: string): void {
    plan.store.putText(store.row, text);
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
    store.set('cells', column, entry.text);
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
      if (store.get('cells', column) !== undefined) {
        store.set('kept', plan.header, cell);
        continue;
      }
      const entry = measure(plan, size, column);
      store.set('cells', column, entry.text);
      const why = entry.usual ? `; ${takenAs(plan.header)}` : '';
      if (parts) assume(row, column, `written as “${cell}”${why}`);
    }
  }

  function takeLean(row: OpenRow, plan: Plan, cell: string): void {
    const worded = !SIMPLE.test(cell);
    const parts = worded ? splitLean(cell) : undefined;
    if (parts) {
      store.set('cells', 'lean_gap', parts.gap);
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

interface Plan extends FileColumn {
  /** What goes behind the cell to make it an entry; undefined where it wants a closer look. */
  readonly asItStands: (cells: CellPlaces) => string | undefined;
  readonly store: ColumnStore;
  readonly measured: boolean;
  readonly writing: ColumnWriting;
  /** Entries by cell: a file says the same things over and over. */
  readonly entries: Map<string, LengthEntry>;
}

/** A number and a tape's unit, and nothing more. */
const SIMPLE = /^[~\s]*[-+−]?[\d\s.,/⁄¼½¾⅛⅜⅝⅞"'″′”’-]+(?:in|mm|cm|ft|m)?\.?$/i;
