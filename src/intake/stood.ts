import { decode, records } from '../csv/index.ts';
import {
  fromBase64,
  type ImportedFile,
  type NotebookDocument,
  type Row,
} from '../notebook/index.ts';
import { isProblem } from '../units/index.ts';

/** Finds a line of a file as it stood there, a record over several lines whole; undefined where it has none. */
export function linesOf(bytes: Uint8Array): (line: number) => string | undefined {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return () => undefined;
  const texts = new Map(records(decoded.text).records.map(({ line, text }) => [line, text]));
  return (line) => texts.get(line);
}

/** The line that a row of the notebook came from, as it stood in its file; undefined where it came from none. */
export function lineOfRow({ files }: NotebookDocument, row: Row | undefined): string | undefined {
  if (!row?.from) return undefined;
  const { file: name, line } = row.from;
  const file = files.findLast((one) => one.name === name);
  if (!file) return undefined;
  let lines = opened.get(file);
  if (!lines) {
    lines = linesOf(fromBase64(file.bytes));
    opened.set(file, lines);
  }
  return lines(line);
}

// A long file takes a while to open, and is asked for line after line.
const opened = new WeakMap<ImportedFile, (line: number) => string | undefined>();
