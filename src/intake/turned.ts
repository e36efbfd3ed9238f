import type { CsvRecord, RecordRun } from '../csv/index.ts';
import type { PassedLine } from '../notebook/index.ts';
import { unitWord } from './header-unit.ts';
import { part, type Matcher } from './header-rows.ts';

/** A table on its side, stood up: one record a post, each at the line that numbers the posts. */
export interface Upright {
  /** Lines above and between the readings, then the posts. */
  readonly records: readonly CsvRecord[];
  /** The lines of the file that were passed over, out of what was passed over of the records. */
  fileLines(passed: readonly PassedLine[]): readonly PassedLine[];
  /** What to say of the file, and of columns that are no post. */
  notes(passed: readonly PassedLine[]): readonly string[];
}

/**
 * Stands a table up whose lines are readings and whose columns are posts; undefined where the file is no such table.
 * It is one where its first column names the post and at least two readings more than its best line does.
 */
export function stoodUp(records: RecordRun, match: Matcher): Upright | undefined {
  if (records.length > MOST_LINES) return undefined;
  const all = part(records, 0, records.length);
  const known = all.map((record) => headedColumn(record, match));
  const down = new Set(known.filter((column) => column !== undefined));
  if (!down.has('post') || down.size < 3) return undefined;
  const across = Math.max(...all.map((record) => knownAcross(record, match)));
  if (across >= down.size - 1) return undefined;

  const blank: PassedLine[] = [];
  const asides: CsvRecord[] = [];
  const blocks: CsvRecord[][] = [];
  for (const [at, record] of all.entries()) {
    const block = blocks.at(-1);
    if (known[at] === 'post') blocks.push([record]);
    else if (block && others(record).length > 0) block.push(record);
    else if (block && known[at] !== undefined)
      blank.push({ line: record.line, text: record.text, why: 'a reading that nobody took' });
    else asides.push(record);
  }
  const lines = new Set(asides.map(({ line }) => line));
  return {
    records: [...asides, ...blocks.flatMap(turned)],
    fileLines: (passed) => [...passed.filter(({ line }) => lines.has(line)), ...blank],
    notes: (passed) => [
      `The table lies on its side: its lines are readings, its columns posts. Each post is listed under line ${String(blocks[0]?.[0]?.line ?? 1)}, which numbers them.`,
      ...passed
        .filter(({ line, why }) => !lines.has(line) && !/^the (?:header|row of units)/.test(why))
        .map(({ text, why }) => `The column “${text}” is passed over: ${why}.`),
    ],
  };
}

/** More readings than this nobody takes of a post. */
const MOST_LINES = 300;

/** The column that a line's first cell names, where values follow it. */
function headedColumn({ cells }: CsvRecord, match: Matcher): string | undefined {
  const header = cells[0]?.trim() ?? '';
  return header === '' ? undefined : match(header).column;
}

function knownAcross({ cells }: CsvRecord, match: Matcher): number {
  const read = cells.slice(1).map((cell) => match(cell.trim()).column);
  return new Set(read.filter((column) => column !== undefined)).size;
}

function others({ cells }: CsvRecord): readonly string[] {
  return cells.slice(1).filter((cell) => cell.trim() !== '');
}

/** The columns of a block as records, at the line of its post numbers. */
function turned(block: readonly CsvRecord[]): readonly CsvRecord[] {
  const width = Math.max(...block.map(({ cells }) => cells.length));
  const line = block[0]?.line ?? 1;
  const records = Array.from({ length: width }, (_, place): CsvRecord => {
    const cells = block.map((record) => record.cells[place] ?? '');
    return { line, text: cells.join(' | '), cells };
  });
  const isUnits = records[1]?.cells.every(
    (cell) => cell.trim() === '' || unitWord(cell.trim()) !== undefined,
  );
  return records.filter(
    ({ cells }, place) =>
      place === 0 || (place === 1 && isUnits) || cells.some((cell) => cell.trim() !== ''),
  );
}
