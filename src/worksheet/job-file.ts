import { nearest, problem, type Problem } from '../units/index.ts';
import type { Book } from './book.ts';
import { SHEETS } from './sheets.ts';
import type { Entry, SheetView } from './view.ts';

/** What a job file says beside a site file; every part is optional. */
export interface JobFile {
  readonly inputs: ReadonlyMap<string, string>;
  readonly formulas: ReadonlyMap<string, string>;
  /** Headers of the site file, settled: a column's id, or null for none. */
  readonly columns: ReadonlyMap<string, string | null>;
  /** Sheet -> row key -> column -> entry. */
  readonly entries: ReadonlyMap<string, ReadonlyMap<string, ReadonlyMap<string, string>>>;
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
  const parts = mapOf(parsed);
  if (!parts) return problem(WHERE, 'It is not an object.', 'Write {"inputs": {...}}.');
  const unknown = [...parts.keys()].find((part) => !PARTS.includes(part));
  if (unknown !== undefined) return strange('part', unknown, PARTS, WHERE);
  const inputs = textsOf(parts.get('inputs'));
  const formulas = textsOf(parts.get('formulas'));
  const columns = columnsOf(parts.get('columns'));
  const entries = nested(parts.get('entries'), (rows) => nested(rows, textsOf));
  if (!inputs || !formulas || !columns || !entries) {
    const wrong = !inputs ? 'inputs' : !formulas ? 'formulas' : !columns ? 'columns' : 'entries';
    return problem(
      `${WHERE}, ${wrong}`,
      'A value there is not text.',
      'Put every value in quotes, as it would be typed.',
    );
  }
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
    const wrong = typeRows(sheet, rows, book);
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

function typeRows(
  sheetId: string,
  rows: ReadonlyMap<string, ReadonlyMap<string, string>>,
  book: Book,
): Problem | undefined {
  const where = `${WHERE}, entries, ${sheetId}`;
  if (sheetId === 'job') {
    return problem(where, 'The job has no rows.', 'Write what you type on the job under “inputs”.');
  }
  for (const [key, cells] of rows) {
    // Looked up afresh: an entry may bring rows to a sheet that follows.
    const sheet = book.sheet(sheetId);
    if (!sheet)
      return strange(
        'sheet',
        sheetId,
        book.sheets.map(({ id }) => id),
        `${WHERE}, entries`,
      );
    const columns = enteredColumns(sheet);
    const keys = Array.from({ length: sheet.rowCount }, (_, row) => sheet.rowKey(row));
    const places = keys.flatMap((each, row) => (each === key ? [row] : []));
    if (places.length === 0) return strange('row', key, keys, where);
    const entries: Entry[] = [];
    for (const [column, text] of cells) {
      if (!columns.includes(column))
        return strange('column to type in', column, columns, `${where}, ${key}`);
      for (const row of places)
        entries.push({ sheet: sheetId, row: sheet.rowId(row), column, text });
    }
    book.typeAll('job file', entries);
  }
  return undefined;
}

function enteredColumns(sheet: SheetView | undefined): readonly string[] {
  return (sheet?.columns ?? []).filter(({ entered }) => entered).map(({ id }) => id);
}

// A column named without its sheet, or on the wrong one, is offered where it stands.
function sameColumn(column: string, names: readonly string[]): readonly string[] {
  const meant = nearest(column, [...new Set(names.map((name) => name.split('.')[1] ?? ''))]);
  const close = names.filter((name) => name.endsWith(`.${meant ?? column}`));
  return close.length > 0 ? close : names;
}

function strange(what: string, name: string, known: readonly string[], where: string): Problem {
  const meant = nearest(name, known);
  const some = known.slice(0, 12).join(', ');
  return problem(
    where,
    `There is no ${what} “${name}”.`,
    meant === undefined
      ? `Use one of these: ${some}${known.length > 12 ? ', ...' : ''}.`
      : `Did you mean “${meant}”?`,
  );
}

function mapOf(value: unknown): ReadonlyMap<string, unknown> | undefined {
  if (value === undefined) return new Map();
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  return new Map<string, unknown>(Object.entries(value));
}

function textsOf(value: unknown): ReadonlyMap<string, string> | undefined {
  return nested(value, (item) =>
    typeof item === 'string' ? item : typeof item === 'number' ? String(item) : undefined,
  );
}

function columnsOf(value: unknown): ReadonlyMap<string, string | null> | undefined {
  return nested(value, (item) => (typeof item === 'string' || item === null ? item : undefined));
}

function nested<T>(
  value: unknown,
  read: (item: unknown) => T | undefined,
): ReadonlyMap<string, T> | undefined {
  const items = mapOf(value);
  if (!items) return undefined;
  const found = new Map<string, T>();
  for (const [key, item] of items) {
    const one = read(item);
    if (one === undefined) return undefined;
    found.set(key, one);
  }
  return found;
}
