import { readFileSync } from 'node:fs';
import { bringIn, intakeColumns, readSite } from '../../src/intake/index.ts';
import { Notebook } from '../../src/notebook/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';
import {
  applyJobFile,
  openBook,
  readJobFile,
  startDocument,
  type Book,
} from '../../src/worksheet/index.ts';
import { cellOf } from './site.ts';

/** A book into which a site file was brought, and then what a job file says; throws where either is refused. */
export function takeOff(csv: string | Uint8Array, job: object = {}): Book {
  const bytes = typeof csv === 'string' ? new TextEncoder().encode(csv) : csv;
  const said = readJobFile(JSON.stringify(job));
  if (isProblem(said)) throw new Error(sentence(said));
  const notebook = new Notebook(startDocument('site'));
  const book = openBook(notebook);
  const intake = readSite(
    bytes,
    'site.csv',
    intakeColumns(book.sheet('posts')!.columns, said.columns),
  );
  if (isProblem(intake)) throw new Error(sentence(intake));
  bringIn(intake, { name: 'site.csv', bytes }, notebook);
  const wrong = applyJobFile(said, book);
  if (wrong) throw new Error(sentence(wrong));
  return book;
}

/** A sample with its job file, and more inputs over those. */
export function sample(name: string, inputs: Readonly<Record<string, string>> = {}): Book {
  const file = (end: string): Uint8Array =>
    readFileSync(new URL(`../samples/${name}.${end}`, import.meta.url));
  const job = JSON.parse(new TextDecoder().decode(file('job.json'))) as {
    inputs: Record<string, string>;
  };
  return takeOff(file('csv'), { ...job, inputs: { ...job.inputs, ...inputs } });
}

/** What one column shows on every row of a sheet, in order. */
export function shown(book: Book, sheet: string, column: string): readonly string[] {
  const view = book.sheet(sheet)!;
  return Array.from({ length: view.rowCount }, (_, row) => view.cell(row, column).text);
}

/** Bags of a mix, by job and by hole. */
export function bags(book: Book, mix: string): string {
  return `${cellOf(book, 'bags', mix, 'by_job').text}/${cellOf(book, 'bags', mix, 'by_hole').text}`;
}

/** The material list, a line each. */
export function materials(book: Book): readonly string[] {
  const view = book.sheet('materials')!;
  return Array.from({ length: view.rowCount }, (_, row) =>
    ['quantity', 'unit', 'size', 'item', 'length']
      .map((column) => view.cell(row, column).text)
      .filter((text) => text !== '')
      .join(' '),
  );
}
