import type { CsvRecord } from '../csv/index.ts';
import type { PassedLine } from '../notebook/index.ts';
import { findHead, headHere, recordKey, type Matcher, type TableHead } from './header-rows.ts';
import { notARow, statedLevel } from './lines.ts';
import { statedUnit } from './file-marks.ts';

/** One table of a file: its head, and the records below it that may be rows. */
export interface Table {
  readonly head: TableHead;
  readonly rows: TableRow[];
}

/** A record below a head, with the level length stated above it. */
export interface TableRow {
  readonly record: CsvRecord;
  readonly level: string | undefined;
}

/** A file taken apart; undefined where no line of it names columns. */
export interface Tables {
  readonly tables: readonly Table[];
  readonly passedOver: PassedLine[];
  /** Units that lines of their own state for all readings. */
  readonly units: readonly string[];
}

/** Parts a file into tables, and passes over the lines that are no row whatever their columns mean. */
export function tablesOf(all: readonly CsvRecord[], match: Matcher): Tables | undefined {
  const first = findHead(all, 0, match);
  if (!first) return undefined;
  const passedOver: PassedLine[] = [];
  const units: string[] = [];
  let level: string | undefined;
  const pass = (record: CsvRecord, why: string): void => {
    passedOver.push({ line: record.line, text: record.text, why });
  };
  const hear = (record: CsvRecord): string => {
    const line = record.cells
      .map((cell) => cell.trim())
      .filter((cell) => cell !== '')
      .join(' ');
    const unit = statedUnit(line);
    if (unit !== undefined) units.push(unit);
    const stated = statedLevel(line);
    level = stated ?? level;
    return stated === undefined ? '' : `; it states the level length, ${stated}`;
  };
  for (const record of all.slice(0, first.at))
    pass(record, `a line above the header${hear(record)}`);

  const tables: Table[] = [];
  let head: TableHead | undefined = first;
  let at = first.at;
  while (head) {
    const { lines, headers }: TableHead = head;
    const table: Table = { head, rows: [] };
    tables.push(table);
    for (const { record, why } of lines) pass(record, why);
    at += lines.length;
    const keys = new Map(lines.map(({ record, why }) => [recordKey(record), why]));
    const notes = new Set(
      [...headers.keys()].filter((index) => match(headers[index] ?? '').column === 'note'),
    );
    head = undefined;
    for (; at < all.length; at++) {
      const record = all[at];
      if (!record) break;
      const again = keys.get(recordKey(record));
      const why = again === undefined ? notARow(record.cells, notes) : `${again}, repeated`;
      if (why !== undefined) {
        pass(record, why);
        continue;
      }
      head = headHere(all, at, match);
      if (head) break;
      if (record.cells.filter((cell) => cell.trim() !== '').length <= 2 && statedAlone(record)) {
        pass(record, `a line of its own${hear(record)}`);
        continue;
      }
      table.rows.push({ record, level });
    }
  }
  return { tables, passedOver, units };
}

/** Whether a line below the head states a level length and is no post. */
function statedAlone(record: CsvRecord): boolean {
  const [first = '', second = ''] = record.cells
    .map((cell) => cell.trim())
    .filter((cell) => cell !== '');
  return !/^\d/.test(first) && statedLevel(`${first} ${second}`.trim()) !== undefined;
}
