import { withoutGuard } from './formula-guard.ts';
import { Places } from './text-lines.ts';

/** One record of a CSV file. */
export interface CsvRecord {
  /** Its first line in the file, from 1. */
  readonly line: number;
  /** Its text in the file, exactly. */
  readonly text: string;
  /** Ask once and keep them: they are parted anew each time. */
  readonly cells: readonly string[];
  /** Its quote marks do not pair, and were taken as inch marks. */
  readonly isUnpaired?: boolean;
}

/** Records one after another; those of a list are made when they are asked for. */
export interface RecordRun {
  readonly length: number;
  at(place: number): CsvRecord | undefined;
}

/**
 * The records of a file. A record that is one line without quotes is kept as its place in the text alone: to keep its
 * cells, or itself, would take several times the room of the file.
 */
export class RecordList implements RecordRun, Iterable<CsvRecord> {
  readonly text: string;
  readonly delimiter: string;
  private readonly lines = new Places(1024);
  private readonly starts = new Places(1024);
  private readonly ends = new Places(1024);
  private readonly others = new Map<number, CsvRecord>();

  constructor(text: string, delimiter: string) {
    this.text = text;
    this.delimiter = delimiter;
  }

  get length(): number {
    return this.lines.length;
  }

  /** Adds a record whose cells are what stands between the delimiters of one stretch of the text. */
  addPlain(line: number, start: number, end: number): void {
    this.lines.add(line);
    this.starts.add(start);
    this.ends.add(end);
  }

  /** Adds a record of any other kind. */
  add(record: CsvRecord): void {
    this.others.set(this.length, record);
    this.addPlain(record.line, 0, 0);
  }

  at(place: number): CsvRecord | undefined {
    const other = this.others.get(place);
    if (other || place >= this.length) return other;
    const text = this.text.slice(this.startAt(place), this.endAt(place));
    return new PlainRecord(this.lines.at(place), text, this.delimiter);
  }

  /** Whether a record is one stretch of the text without quotes. */
  isPlainAt(place: number): boolean {
    return this.others.size === 0 || !this.others.has(place);
  }

  lineAt(place: number): number {
    return this.lines.at(place);
  }

  /** Where a plain record starts in the text. */
  startAt(place: number): number {
    return this.starts.at(place);
  }

  /** Where it ends. */
  endAt(place: number): number {
    return this.ends.at(place);
  }

  *[Symbol.iterator](): Iterator<CsvRecord> {
    for (let place = 0; place < this.length; place++) {
      const record = this.at(place);
      if (record) yield record;
    }
  }
}

class PlainRecord implements CsvRecord {
  readonly line: number;
  readonly text: string;
  private readonly delimiter: string;

  constructor(line: number, text: string, delimiter: string) {
    this.line = line;
    this.text = text;
    this.delimiter = delimiter;
  }

  get cells(): readonly string[] {
    const cells = this.text.split(this.delimiter);
    return this.text.includes("'") ? unguarded(cells) : cells;
  }
}

/** Cells without the marks that a careful program put before what looked like a command. */
export function unguarded(cells: readonly string[]): readonly string[] {
  return cells.some((cell) => cell.startsWith("'")) ? cells.map(withoutGuard) : cells;
}
