import { decode, records } from '../csv/index.ts';
import { isProblem } from '../units/index.ts';
import type { IntakeColumn } from './intake.ts';
import { saysTheSame, type ChangedCell } from './merge.ts';

/** A column of any sheet, as a file may head it. */
export interface SheetColumn extends IntakeColumn {
  readonly label: string;
  readonly called: string;
  /** Whether a person may type there. */
  readonly entered: boolean;
}

/** A row of a sheet: its id, and what stands in each of some columns. */
export interface StandingRow {
  readonly id: string;
  readonly text: (column: string) => string;
}

/** Rows of a file for a sheet of their own columns. */
export interface SheetFile {
  readonly rows: readonly { readonly line: number; readonly cells: ReadonlyMap<string, string> }[];
  /** Lines and columns that nothing was taken from, in words. */
  readonly passedOver: readonly string[];
  readonly linesRead: number;
}

/** A row of a file for a sheet. */
interface FileRow {
  readonly cells: ReadonlyMap<string, string>;
}

/** How such a file stands to the sheet, by the columns that name its rows. */
export interface SheetComparison<Row extends FileRow = FileRow> {
  readonly fresh: readonly Row[];
  readonly changed: readonly {
    readonly name: string;
    readonly row: string;
    readonly cells: readonly ChangedCell[];
  }[];
  readonly same: readonly string[];
}

/** Reads a file by the columns of one sheet; undefined where no line heads the columns that name its rows and another that is typed. */
export function readSheetFile(
  bytes: Uint8Array,
  columns: readonly SheetColumn[],
  keys: readonly string[],
): SheetFile | undefined {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return undefined;
  const all = records(decoded.text).records;
  const at = all.findIndex(({ cells }) => {
    const heads = cells.map((head) => columnHeaded(head, columns));
    return (
      keys.slice(0, 1).every((key) => heads.some((column) => column?.id === key)) &&
      heads.some((column) => column?.entered === true && !keys.includes(column.id))
    );
  });
  const head = all[at];
  if (!head) return undefined;
  const heads = head.cells.map((cell) => columnHeaded(cell, columns));
  const taken = heads.map((column) =>
    column && (column.entered || keys.includes(column.id)) ? column : undefined,
  );
  const passedOver = head.cells.flatMap((cell, place) =>
    taken[place] || cell.trim() === ''
      ? []
      : [
          `Column “${cell.trim()}”: ${heads[place] ? 'is worked out here' : 'is none of this sheet'}.`,
        ],
  );
  const rows: { line: number; cells: ReadonlyMap<string, string> }[] = [];
  for (const { cells, line } of all.slice(at + 1)) {
    const row = new Map<string, string>();
    taken.forEach((column, place) => {
      const text = (cells[place] ?? '').trim();
      if (column && text !== '') row.set(column.id, withHeadUnit(text, head.cells[place] ?? ''));
    });
    if (keys.slice(0, 1).every((key) => row.has(key))) rows.push({ line, cells: row });
    else if (cells.some((cell) => cell.trim() !== ''))
      passedOver.push(`Line ${String(line)}: does not say which row it is for.`);
  }
  return { rows, passedOver, linesRead: all.length - at - 1 };
}

/** Compares such a file with the rows that stand there. A blank in the file says nothing, and changes nothing. */
export function compareSheet<Row extends FileRow>(
  rows: readonly Row[],
  standing: readonly StandingRow[],
  columns: readonly SheetColumn[],
  keys: readonly string[],
): SheetComparison<Row> {
  const byId = new Map(columns.map((column) => [column.id, column]));
  const there = new Map(standing.map((row) => [nameOf(keys, row.text), row]));
  const fresh: Row[] = [];
  const changed: SheetComparison['changed'][number][] = [];
  const same: string[] = [];
  for (const row of rows) {
    const found = there.get(nameOf(keys, (key) => row.cells.get(key) ?? ''));
    if (!found) {
      fresh.push(row);
      continue;
    }
    const cells = [...row.cells].flatMap(([column, after]): readonly ChangedCell[] => {
      if (keys.includes(column)) return [];
      const before = found.text(column);
      return saysTheSame(before, after, byId.get(column)) ? [] : [{ column, before, after }];
    });
    const name = keys.flatMap((key) => row.cells.get(key) ?? []).join(' ');
    if (cells.length === 0) same.push(name);
    else changed.push({ name, row: found.id, cells });
  }
  return { fresh, changed, same };
}

function columnHeaded(head: string, columns: readonly SheetColumn[]): SheetColumn | undefined {
  const word = plain(head);
  if (word === '') return undefined;
  return columns.find(({ id, label, called }) =>
    [id, label, called].some((name) => plain(name) === word),
  );
}

// `Depth reached (in)` and `depth_reached` head the same column.
function plain(head: string): string {
  return head
    .toLowerCase()
    .replace(/\(.*?\)|,.*$/g, '')
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

// A number under a head with a unit is in that unit.
function withHeadUnit(text: string, head: string): string {
  const unit = /[(,]\s*(in|ft|mm|cm|m|h|hours)\s*\)?\s*$/i.exec(head)?.[1]?.toLowerCase();
  return unit !== undefined && /^[-+]?[\d\s./]+$/.test(text)
    ? `${text} ${unit.replace('hours', 'h')}`
    : text;
}

function nameOf(keys: readonly string[], text: (key: string) => string): string {
  return keys.map((key) => text(key).trim().toLowerCase()).join('|');
}
