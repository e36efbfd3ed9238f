import { isProblem, nearest, problem, type Problem } from '../units/index.ts';
import type { Book } from './book.ts';
import { enteredColumns, strange, typeJobRows, type JobRow, type Texts } from './job-rows.ts';
import { SHEETS } from './sheets.ts';
import type { Entry } from './view.ts';

/** What a job file says beside a site file; every part is optional. */
export interface JobFile {
  readonly inputs: Texts;
  readonly formulas: Texts;
  /** Headers of the site file, settled: a column's id, or null for none. */
  readonly columns: ReadonlyMap<string, string | null>;
  /** Sheet -> what is typed into its rows. */
  readonly entries: ReadonlyMap<string, readonly JobRow[]>;
}

export const EMPTY_JOB: JobFile = {
  inputs: new Map(),
  formulas: new Map(),
  columns: new Map(),
  entries: new Map(),
};

const PARTS = ['inputs', 'formulas', 'columns', 'entries'];
const WHERE = 'Job file';

/** Reads the text of a job file. */
export function readJobFile(text: string): JobFile | Problem {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text) as unknown;
  } catch {
    return problem(WHERE, 'It is not JSON.', 'Look for a missing comma, quote or bracket.');
  }
  const parts = mapOf(parsed, WHERE);
  if (isProblem(parts)) return parts;
  const unknown = [...parts.keys()].find((part) => !PARTS.includes(part));
  if (unknown !== undefined) return strange('part', unknown, PARTS, WHERE);
  const inputs = eachOf(parts.get('inputs'), `${WHERE}, inputs`, textOf);
  const formulas = eachOf(parts.get('formulas'), `${WHERE}, formulas`, textOf);
  const columns = eachOf(parts.get('columns'), `${WHERE}, columns`, headerOf);
  const entries = eachOf(parts.get('entries'), `${WHERE}, entries`, rowsOf);
  if (isProblem(inputs)) return inputs;
  if (isProblem(formulas)) return formulas;
  if (isProblem(columns)) return columns;
  if (isProblem(entries)) return entries;
  return { inputs, formulas, columns, entries };
}

/** Types what a job file says into a book, as a person would. The first name that is nowhere stops it, before anything is typed. */
export function applyJobFile(job: JobFile, book: Book): Problem | undefined {
  const entries: Entry[] = [];
  const inputs = enteredColumns(book.sheet('job'));
  for (const [column, text] of job.inputs) {
    if (!inputs.includes(column)) return strange('job input', column, inputs, `${WHERE}, inputs`);
    entries.push({ sheet: 'job', row: 'job', column, text });
  }
  book.typeAll('job file', entries);
  for (const [name, formula] of job.formulas) {
    const [sheet = '', column = ''] = name.split('.');
    const names = book.sheets.flatMap(({ id, columns }) =>
      columns.map((each) => `${id}.${each.id}`),
    );
    if (!names.includes(name)) {
      return strange('column', name, sameColumn(column || sheet, names), `${WHERE}, formulas`);
    }
    const wrong = book.setFormula(sheet, column, formula);
    if (wrong) return { ...wrong, where: `${WHERE}, formula of ${name}, ${wrong.where}` };
  }
  for (const [sheet, rows] of job.entries) {
    const wrong = typeJobRows(sheet, rows, book, `${WHERE}, entries, ${sheet}`);
    if (wrong) return wrong;
  }
  return unknownKey(job, book);
}

/** A job input that names a row of a sheet where no such row stands, such as a mix that nobody sells. */
function unknownKey(job: JobFile, book: Book): Problem | undefined {
  const inputs = SHEETS.find(({ id }) => id === 'job')?.columns ?? [];
  for (const { id, label, suggestFrom } of inputs) {
    const text = job.inputs.get(id);
    if (text === undefined || text.trim() === '' || suggestFrom === undefined) continue;
    const [sheetId = '', column = ''] = suggestFrom.split('.');
    const sheet = book.sheet(sheetId);
    const known = Array.from({ length: sheet?.rowCount ?? 0 }, (_, row) =>
      String(sheet?.cell(row, column).value ?? ''),
    ).filter((key) => key !== '');
    if (!known.includes(text.trim()))
      return strange(label.toLowerCase(), text, known, `${WHERE}, inputs, ${id}`);
  }
  return undefined;
}

// A column named without its sheet, or on the wrong one, is offered where it stands.
function sameColumn(column: string, names: readonly string[]): readonly string[] {
  const meant = nearest(column, [...new Set(names.map((name) => name.split('.')[1] ?? ''))]);
  const close = names.filter((name) => name.endsWith(`.${meant ?? column}`));
  return close.length > 0 ? close : names;
}

function mapOf(value: unknown, where: string): ReadonlyMap<string, unknown> | Problem {
  if (value === undefined) return new Map();
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return problem(where, 'It is not an object.', 'Write names and values between { and }.');
  }
  return new Map<string, unknown>(Object.entries(value));
}

function textOf(value: unknown, where: string): string | Problem {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(value);
  const found = `${JSON.stringify(value)} there is not text.`;
  return problem(where, found, 'Put every value in quotes, as it would be typed.');
}

function headerOf(value: unknown, where: string): string | null | Problem {
  return value === null ? null : textOf(value, where);
}

// An object names rows by their keys; a list holds rows to add.
function rowsOf(value: unknown, where: string): readonly JobRow[] | Problem {
  const isList = Array.isArray(value);
  const rows = isList ? listed(value) : mapOf(value, where);
  if (isProblem(rows)) return rows;
  const found: JobRow[] = [];
  for (const [name, row] of rows) {
    const cells = eachOf(row, `${where}, ${name}`, textOf);
    if (isProblem(cells)) return cells;
    found.push({ name, key: isList ? undefined : name, cells });
  }
  return found;
}

function listed(rows: readonly unknown[]): ReadonlyMap<string, unknown> {
  return new Map(rows.map((row, at) => [`row ${String(at + 1)}`, row]));
}

function eachOf<T>(
  value: unknown,
  where: string,
  read: (item: unknown, where: string) => T | Problem,
): ReadonlyMap<string, T> | Problem {
  const items = mapOf(value, where);
  if (isProblem(items)) return items;
  const found = new Map<string, T>();
  for (const [key, item] of items) {
    const one = read(item, `${where}, ${key}`);
    if (isProblem(one)) return one;
    found.set(key, one);
  }
  return found;
}
