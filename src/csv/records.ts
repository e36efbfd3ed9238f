import Papa from 'papaparse';
import { problem, type Problem } from '../units/index.ts';
import { guessDelimiter, usualCells, walkLine, type Delimiter } from './delimiter.ts';
import { inchCells, splitByHand } from './inch-marks.ts';
import { withoutGuard } from './formula-guard.ts';

/** One record of a CSV file. */
export interface CsvRecord {
  /** Its first line in the file, from 1. */
  readonly line: number;
  /** Its text in the file, exactly. */
  readonly text: string;
  /** Ask once and keep them: they are parted anew each time. */
  readonly cells: readonly string[];
}

/** The records of a file; lines that are blank, or hold separators alone, are left out. */
export interface Records {
  readonly records: readonly CsvRecord[];
  readonly delimiter: string;
  /** A first line such as `sep=;`, which names the delimiter and is no record. */
  readonly separatorLine: CsvRecord | undefined;
  /** Lines whose quotes do not pair, and how they were read. */
  readonly problems: readonly Problem[];
}

/** The most lines that one quoted cell may run over. */
const LONGEST_RECORD = 50;

/** The records of a CSV text, whatever its delimiter and line ends. */
export function records(text: string): Records {
  const raw = linesOf(text.startsWith('\ufeff') ? text.slice(1) : text);
  const bare = unquotedLines(raw);
  const lines = bare ?? raw;
  const declared = /^"?sep=(.)"?\s*$/i.exec(lines[0] ?? '')?.[1];
  const body = declared === undefined ? lines : lines.slice(1);
  const layout: Delimiter =
    declared === undefined
      ? guessDelimiter(body)
      : { delimiter: declared, cells: usualCells(body, declared).cells };
  const { delimiter } = layout;
  const reader = new Papa.Parser({ delimiter, newline: '\n' });
  const found: CsvRecord[] = [];
  const problems: Problem[] = bare ? [EACH_QUOTED] : [];

  for (let index = declared === undefined ? 0 : 1; index < lines.length; index++) {
    const line = lines[index] ?? '';
    const number = index + 1;
    if (!quotesACell(line, delimiter)) {
      if (!isOnlySeparators(line, delimiter))
        found.push(new LineRecord(number, bare ? (raw[index] ?? line) : line, line, delimiter));
      continue;
    }
    const last = recordEnd(lines, index, layout);
    const whole = last === undefined ? line : lines.slice(index, last + 1).join('\n');
    const cells = last === undefined ? undefined : quotedCells(reader, whole);
    if (cells === undefined) {
      add(number, line, splitByHand(line, layout));
      problems.push(unpaired(number, 'A quote mark opens a cell and nothing closes it.'));
      continue;
    }
    const inches =
      last === index && cells.length < layout.cells ? inchCells(line, layout) : undefined;
    if (inches) {
      add(number, line, inches);
      problems.push(unpaired(number, 'Quote marks run two cells together.'));
    } else {
      add(number, whole, cells);
    }
    index = last ?? index;
  }
  const separatorLine =
    declared === undefined ? undefined : { line: 1, text: lines[0] ?? '', cells: [lines[0] ?? ''] };
  return { records: found, delimiter, separatorLine, problems };

  function add(line: number, recordText: string, cells: readonly string[]): void {
    if (cells.every((cell) => cell.trim() === '')) return;
    found.push({
      line,
      text: bare ? (raw[line - 1] ?? recordText) : recordText,
      cells: unguarded(cells),
    });
  }
}

/** Whether any cell of a line begins with a quote; inch marks behind a figure open nothing. */
function quotesACell(line: string, delimiter: string): boolean {
  for (let at = line.indexOf('"'); at !== -1; at = line.indexOf('"', at + 1))
    if (at === 0 || line[at - 1] === delimiter) return true;
  return false;
}

/**
 * A record of one line without quotes. Its cells are parted whenever they are asked for: to keep them all would take
 * several times the room of the file.
 */
class LineRecord implements CsvRecord {
  readonly line: number;
  readonly text: string;
  private readonly bare: string;
  private readonly delimiter: string;

  constructor(line: number, text: string, bare: string, delimiter: string) {
    this.line = line;
    this.text = text;
    this.bare = bare;
    this.delimiter = delimiter;
  }

  get cells(): readonly string[] {
    const cells = this.bare.split(this.delimiter);
    return this.bare.includes("'") ? unguarded(cells) : cells;
  }
}

function unguarded(cells: readonly string[]): readonly string[] {
  return cells.some((cell) => cell.startsWith("'")) ? cells.map(withoutGuard) : cells;
}

function isOnlySeparators(line: string, delimiter: string): boolean {
  if (/^[\s,;|]*$/.test(line)) return true;
  return line.startsWith(delimiter) && line.split(delimiter).every((cell) => cell.trim() === '');
}

const EACH_QUOTED = problem(
  '',
  'The file has quote marks round each line as a whole.',
  'They were taken off; check the first rows.',
);

/** The lines without the quotes that a program put round each of them as a whole; undefined where none did. */
function unquotedLines(lines: readonly string[]): readonly string[] | undefined {
  const filled = lines.filter((line) => line.trim() !== '');
  const quoted = filled.every((line) => line.length > 2 && /^".*"\s*$/.test(line));
  if (filled.length < 2 || !quoted || guessDelimiter(filled).cells > 1) return undefined;
  const bare = lines.map((line) => line.trim().slice(1, -1).replaceAll('""', '"'));
  return guessDelimiter(bare).cells > 1 ? bare : undefined;
}

/** The lines of a text, whatever ends them. */
function linesOf(text: string): string[] {
  if (!text.includes('\r')) return text.split('\n');
  return text.split(/\r(?!\n)|(?<!\r)\n/.test(text) ? /\r\n|\n|\r/ : '\r\n');
}

/** The line on which a record's last quoted cell closes; undefined where a quote opens and swallows what follows. */
function recordEnd(
  lines: readonly string[],
  first: number,
  { delimiter, cells }: Delimiter,
): number | undefined {
  const start = lines[first] ?? '';
  let { open } = walkLine(start, delimiter, false);
  const startIsWhole = cells > 2 && start.split(delimiter).length === cells;
  let wholeLines = 0;
  for (let last = first; ; last++) {
    if (!open) return last;
    const next = lines[last + 1];
    if (next === undefined || last + 1 - first >= LONGEST_RECORD) return undefined;
    if (cells > 2 && next.split(delimiter, cells + 1).length === cells) wholeLines++;
    if (wholeLines > 0 && (startIsWhole || wholeLines > 1)) return undefined;
    if (countsOn(start, next, last + 1 - first, delimiter)) return undefined;
    open = walkLine(next, delimiter, true).open;
  }
}

/** Whether a later line starts with the post number that is due there, and so is a record of its own. */
function countsOn(start: string, later: string, lines: number, delimiter: string): boolean {
  const number = leadingNumber(start, delimiter);
  return number !== undefined && leadingNumber(later, delimiter) === number + lines;
}

function leadingNumber(line: string, delimiter: string): number | undefined {
  const first = line.slice(0, Math.max(0, line.indexOf(delimiter)));
  return /^\d{1,6}$/.test(first) ? Number(first) : undefined;
}

/** The cells of one record; undefined where the library sees another number of records than one. */
function quotedCells(reader: Papa.Parser, text: string): readonly string[] | undefined {
  const { data } = reader.parse(text, 0, false) as {
    readonly data: readonly (readonly string[])[];
  };
  return data.length === 1 ? data[0] : undefined;
}

function unpaired(line: number, found: string): Problem {
  return problem(
    `line ${String(line)}`,
    found,
    'This line was read with its quote marks taken as inch marks; check its cells.',
  );
}
