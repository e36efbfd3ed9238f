import Papa from 'papaparse';
import { problem, type Problem } from '../units/index.ts';
import type { Heard } from './decode.ts';
import { guessDelimiter, usualCells, walkLine, type Delimiter } from './delimiter.ts';
import { inchCells, splitByHand } from './inch-marks.ts';
import { RecordList, unguarded, type CsvRecord } from './record-list.ts';
import { TextLines } from './text-lines.ts';

/** The records of a file; lines that are blank, or hold separators alone, are left out. */
export interface Records<Run = readonly CsvRecord[]> {
  readonly records: Run;
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
  const found = recordList(text);
  return { ...found, records: [...found.records] };
}

/** The same for a text that may be long: its records are made when they are asked for. */
export function recordList(text: string, heard?: Heard): Records<RecordList> {
  const raw = new TextLines(text.startsWith('\ufeff') ? text.slice(1) : text);
  const bare = unquotedLines(raw);
  const lines = bare ?? raw;
  const declared = /^"?sep=(.)"?\s*$/i.exec(lines.at(0) ?? '')?.[1];
  const first = declared === undefined ? 0 : 1;
  const sample = lines.filled(first, SAMPLE);
  const layout: Delimiter =
    declared === undefined
      ? guessDelimiter(sample)
      : { delimiter: declared, cells: usualCells(sample, declared).cells };
  const { delimiter } = layout;
  const reader = new Papa.Parser({ delimiter, newline: '\n' });
  const found = new RecordList(lines.text, delimiter);
  const problems: Problem[] = bare ? [EACH_QUOTED] : [];

  for (let index = first; index < lines.length; index++) {
    if (index % HEARD_EVERY === 0) heard?.(index / lines.length);
    if (holdsNothing(lines, index, delimiter)) continue;
    if (!quotesACell(lines, index, delimiter)) {
      if (bare) add(index, '', lines.at(index)?.split(delimiter) ?? []);
      else found.addPlain(index + 1, lines.startOf(index), lines.endOf(index));
      continue;
    }
    const line = lines.at(index) ?? '';
    const last = recordEnd(lines, index, layout);
    const whole = last === undefined || last === index ? line : joined(lines, index, last);
    const cells = last === undefined ? undefined : quotedCells(reader, whole);
    if (cells === undefined) {
      add(index, line, splitByHand(line, layout), true);
      problems.push(unpaired(index + 1, 'A quote mark opens a cell and nothing closes it.'));
      continue;
    }
    const inches =
      last === index && cells.length < layout.cells ? inchCells(line, layout) : undefined;
    if (inches) {
      add(index, line, inches, true);
      problems.push(unpaired(index + 1, 'Quote marks run two cells together.'));
    } else {
      add(index, whole, cells);
    }
    index = last ?? index;
  }
  const named = declared === undefined ? undefined : (lines.at(0) ?? '');
  const separatorLine = named === undefined ? undefined : { line: 1, text: named, cells: [named] };
  return { records: found, delimiter, separatorLine, problems };

  function add(index: number, written: string, cells: readonly string[], isUnpaired = false): void {
    if (cells.every((cell) => cell.trim() === '')) return;
    const recordText = bare ? (raw.at(index) ?? '') : written;
    found.add({ line: index + 1, text: recordText, cells: unguarded(cells), isUnpaired });
  }
}

/** As many lines tell what parts the cells. */
const SAMPLE = 1000;
const HEARD_EVERY = 5000;

/** Whether any cell of a line begins with a quote; inch marks behind a figure open nothing. */
function quotesACell(lines: TextLines, index: number, delimiter: string): boolean {
  const { text } = lines;
  const start = lines.startOf(index);
  const end = lines.endOf(index);
  const parting = delimiter.charCodeAt(0);
  for (let at = start; at < end; at++) {
    if (text.charCodeAt(at) !== QUOTE) continue;
    if (at === start || text.charCodeAt(at - 1) === parting) return true;
  }
  return false;
}

const QUOTE = 34;
const COMMA = 44;
const SEMICOLON = 59;

function joined(lines: TextLines, first: number, last: number): string {
  const all: string[] = [];
  for (let line = first; line <= last; line++) all.push(lines.at(line) ?? '');
  return all.join('\n');
}

/** Whether a line is blank, or holds separators alone. */
function holdsNothing(lines: TextLines, index: number, delimiter: string): boolean {
  // Most lines begin with a letter or a figure, and need no closer look.
  const start = lines.text.charCodeAt(lines.startOf(index));
  if (start > 32 && start < 124 && start !== COMMA && start !== SEMICOLON) {
    if (start !== delimiter.charCodeAt(0)) return lines.startOf(index) === lines.endOf(index);
  }
  const line = lines.at(index) ?? '';
  if (/^[\s,;|]*$/.test(line)) return true;
  return line.startsWith(delimiter) && line.split(delimiter).every((cell) => cell.trim() === '');
}

const EACH_QUOTED = problem(
  '',
  'The file has quote marks round each line as a whole.',
  'They were taken off; check the first rows.',
);

/** The lines without the quotes that a program put round each of them as a whole; undefined where none did. */
function unquotedLines(lines: TextLines): TextLines | undefined {
  const bare: string[] = [];
  let filled = 0;
  for (let at = 0; at < lines.length; at++) {
    const line = (lines.at(at) ?? '').trim();
    bare.push(line.slice(1, -1).replaceAll('""', '"'));
    if (line === '') continue;
    if (line.length <= 2 || !/^".*"$/.test(line)) return undefined;
    filled += 1;
  }
  if (filled < 2 || guessDelimiter(lines.filled(0, SAMPLE)).cells > 1) return undefined;
  const found = new TextLines(bare.join('\n'));
  return guessDelimiter(found.filled(0, SAMPLE)).cells > 1 ? found : undefined;
}

/** The line on which a record's last quoted cell closes; undefined where a quote opens and swallows what follows. */
function recordEnd(
  lines: TextLines,
  first: number,
  { delimiter, cells }: Delimiter,
): number | undefined {
  const start = lines.at(first) ?? '';
  let { open } = walkLine(start, delimiter, false);
  const startIsWhole = cells > 2 && start.split(delimiter).length === cells;
  let wholeLines = 0;
  for (let last = first; ; last++) {
    if (!open) return last;
    const next = lines.at(last + 1);
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

/**
 * The cells of one record; undefined where the library sees another number of records than one. It takes blanks behind
 * a closing quote for part of the cell where the text ends there, as no file does.
 */
function quotedCells(reader: Papa.Parser, text: string): readonly string[] | undefined {
  const { data } = reader.parse(text.replace(/" +$/, '"'), 0, false) as {
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
