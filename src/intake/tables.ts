import type { CsvRecord, RecordRun } from '../csv/index.ts';
import type { PassedLine } from '../notebook/index.ts';
import { statedUnit } from './file-marks.ts';
import {
  findHead,
  headHere,
  part,
  recordKey,
  type Matcher,
  type TableHead,
} from './header-rows.ts';
import { beginsWithFigure, namedRun, notARow, statedLevel } from './lines.ts';

/** One table of a file: its head, and the places of the records below it that may be rows. */
export interface Table {
  readonly head: TableHead;
  readonly rows: readonly number[];
  /** What lines of their own state, each from the first row below it on. */
  readonly stated: readonly Stated[];
}

/** The level length and the run that hold for the rows from a place on. */
export interface Stated {
  readonly from: number;
  readonly level: string | undefined;
  readonly run: string | undefined;
}

/** A file taken apart; undefined where no line of it names columns. */
export interface Tables {
  readonly tables: readonly Table[];
  readonly passedOver: PassedLine[];
  /** Units that lines of their own state for all readings. */
  readonly units: readonly string[];
}

/** Parts a file into tables, and passes over the lines that are no row whatever their columns mean. */
export function tablesOf(all: RecordRun, match: Matcher): Tables | undefined {
  const first = findHead(all, 0, match);
  if (!first) return undefined;
  const passedOver: PassedLine[] = [];
  const said = new Said();
  const pass = ({ line, text }: CsvRecord, why: string): void => {
    passedOver.push({ line, text, why });
  };
  for (const record of part(all, 0, first.at))
    pass(record, `a line above the header${said.hear(record)}`);

  const tables: Table[] = [];
  let head: TableHead | undefined = first;
  let at = first.at;
  while (head) {
    const { lines, headers }: TableHead = head;
    const rows: number[] = [];
    const stated: Stated[] = [];
    tables.push({ head, rows, stated });
    for (const { record, why } of lines) pass(record, why);
    at += lines.length;
    const again = repeatedHeads(lines);
    const notes = new Set(
      [...headers.keys()].filter((index) => match(headers[index] ?? '').column === 'note'),
    );
    head = undefined;
    for (; at < all.length; at++) {
      const record = all.at(at);
      if (!record) break;
      const why = again(record) ?? notARow(record, notes);
      if (why !== undefined) {
        pass(record, why);
        continue;
      }
      head = headHere(all, at, match);
      if (head) {
        // A run is named for the table it stands over.
        if (!standsAlone(all.at(at - 1) ?? record)) said.run = undefined;
        break;
      }
      if (standsAlone(record)) {
        pass(record, `a line of its own${said.hear(record)}`);
        continue;
      }
      const { level, run } = said;
      const last = stated.at(-1);
      if (last?.level !== level || last?.run !== run) stated.push({ from: at, level, run });
      rows.push(at);
    }
  }
  return { tables, passedOver, units: said.units };
}

/** What lines of their own have said so far. */
class Said {
  readonly units: string[] = [];
  level: string | undefined;
  run: string | undefined;

  /** Takes a line in, and says what it states, to stand behind why it is no row. */
  hear(record: CsvRecord): string {
    const filled = filledCells(record.cells);
    const line = filled.join(' ');
    const unit = statedUnit(line);
    if (unit !== undefined) this.units.push(unit);
    const level = statedLevel(line);
    this.level = level ?? this.level;
    const run = filled.length <= 2 ? namedRun(filled) : undefined;
    this.run = run ?? this.run;
    if (level !== undefined) return `; it states the level length, ${level}`;
    return run === undefined ? '' : `; it names the run, ${run}`;
  }
}

/** Whether a line below the head states a level length, or names a run, and is no post. */
function standsAlone(record: CsvRecord): boolean {
  if (beginsWithFigure(record) && !/level|edge|wasser|richt|nivel/i.test(record.text)) return false;
  const { cells } = record;
  let count = 0;
  for (const cell of cells) if (cell !== '' && cell.trim() !== '') count++;
  if (count > 2) return false;
  const filled = filledCells(cells);
  const [first = '', second = ''] = filled;
  if (/^\d/.test(first)) return statedLevel(first) !== undefined;
  return statedLevel(`${first} ${second}`.trim()) !== undefined || namedRun(filled) !== undefined;
}

/** Tells a line that heads the table once more. */
function repeatedHeads(lines: TableHead['lines']): (record: CsvRecord) => string | undefined {
  const keys = new Map(lines.map(({ record, why }) => [recordKey(record), why]));
  const starts = new Set(lines.map(({ record }) => startOf(record)));
  const hasFigures = lines.some(({ record }) => beginsWithFigure(record));
  return (record) => {
    if (!hasFigures && beginsWithFigure(record)) return undefined;
    if (!starts.has(startOf(record))) return undefined;
    const why = keys.get(recordKey(record));
    return why === undefined ? undefined : `${why}, repeated`;
  };
}

function startOf({ cells }: CsvRecord): string {
  return (cells[0] ?? '').trim().slice(0, 2).toLowerCase();
}

function filledCells(cells: readonly string[]): string[] {
  return cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
}
