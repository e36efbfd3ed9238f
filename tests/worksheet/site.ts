import { expect } from 'vitest';
import { Notebook } from '../../src/notebook/index.ts';
import {
  openBook,
  startDocument,
  type Book,
  type CellView,
  type Stop,
} from '../../src/worksheet/index.ts';
import { si } from '../trade/si.ts';

type Typed = Readonly<Record<string, string>>;

/** A new notebook as a person would fill it: job inputs first, then posts, typed. */
export function siteOf(inputs: Typed, posts: readonly Typed[] = []): Book {
  const book = openBook(new Notebook(startDocument('site')));
  typeInto(book, 'job', 'job', inputs);
  posts.forEach((post, at) => {
    addTyped(book, 'posts', { post: String(at + 1), ...post });
  });
  return book;
}

/** Adds a row and types into it; gives its id. */
export function addTyped(book: Book, sheet: string, cells: Typed): string {
  const row = book.addRow(sheet);
  typeInto(book, sheet, row, cells);
  return row;
}

/** Types into one row. */
export function typeInto(book: Book, sheet: string, row: string, cells: Typed): void {
  const entries = Object.entries(cells).map(([column, text]) => ({ sheet, row, column, text }));
  book.typeAll('typed', entries);
}

/** Posts 1 to `count` at even stations, all to be replaced. */
export function run(count: number, bay: number, cells: Typed = {}): readonly Typed[] {
  return Array.from({ length: count }, (_, at) => ({
    station: `${String(at * bay)} ft`,
    remedy: 'replace',
    ...cells,
  }));
}

/** The cell of a row by its key, such as its post number. */
export function cellOf(book: Book, sheet: string, key: string, column: string): CellView {
  const view = book.sheet(sheet)!;
  const row = Array.from({ length: view.rowCount }, (_, at) => at).find(
    (at) => view.rowKey(at) === key,
  );
  if (row === undefined) throw new Error(`${sheet} has no row ${key}.`);
  return view.cell(row, column);
}

/** What a cell shows, as a number in a unit; fails the test where it has none. */
export function amount(book: Book, sheet: string, key: string, column: string, unit = ''): number {
  const { value, state, note } = cellOf(book, sheet, key, column);
  if (typeof value !== 'number') throw new Error(`${sheet}.${column} is ${state}: ${note}`);
  return value / si(1, unit === '' ? 'in/in' : unit);
}

/** The stops and cautions of one rule. */
export function stopsOf(book: Book, sheet: string, rule: string): readonly Stop[] {
  return book.stops().filter((stop) => stop.sheet === sheet && stop.rule === rule);
}

/** Expects every stop of the sheet to speak plainly and to name its source. */
export function expectPlainStops(book: Book, sheet: string): void {
  for (const { message, source } of book.stops().filter((stop) => stop.sheet === sheet)) {
    expect(message).not.toMatch(/invalid|failed|null|undefined|NaN|!|\{/);
    expect(source).not.toBe('');
  }
}
