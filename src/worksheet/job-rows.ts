import { nearest, problem, type Problem } from '../units/index.ts';
import type { Book } from './book.ts';
import { SHEETS } from './sheets.ts';
import type { SheetView } from './view.ts';

/** Names and what is typed under them. */
export type Texts = ReadonlyMap<string, string>;

/** What a job file types into one row. */
export interface JobRow {
  /** What messages call it: its key, or `row 2` of a list. */
  readonly name: string;
  /** The key of the row; undefined for one to add. */
  readonly key: string | undefined;
  /** Column -> entry. */
  readonly cells: Texts;
}

/** Types rows of a job file into a sheet, as a person would; rows without a key are added. The first name that is nowhere stops it. */
export function typeJobRows(
  sheetId: string,
  rows: readonly JobRow[],
  book: Book,
  where: string,
): Problem | undefined {
  if (sheetId === 'job') {
    return problem(where, 'The job has no rows.', 'Write what you type on the job under “inputs”.');
  }
  for (const row of rows) {
    // Looked up afresh: an entry may bring rows to a sheet that follows.
    const sheet = book.sheet(sheetId);
    if (!sheet) return strange('sheet', sheetId, idsOf(book.sheets), where);
    const wrong = typeRow(row, sheet, book, where);
    if (wrong) return wrong;
  }
  return undefined;
}

/** The ids of the columns of a sheet that a person may type in. */
export function enteredColumns(sheet: SheetView | undefined): readonly string[] {
  return idsOf((sheet?.columns ?? []).filter(({ entered }) => entered));
}

/** A name that is nowhere, with the nearest one or those there are. */
export function strange(
  what: string,
  name: string,
  known: readonly string[],
  where: string,
): Problem {
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

function typeRow(
  { name, key, cells }: JobRow,
  sheet: SheetView,
  book: Book,
  where: string,
): Problem | undefined {
  const columns = enteredColumns(sheet);
  const stray = [...cells.keys()].find((column) => !columns.includes(column));
  if (stray !== undefined) return strange('column to type in', stray, columns, `${where}, ${name}`);
  const keys = Array.from({ length: sheet.rowCount }, (_, row) => sheet.rowKey(row));
  const places = keys.flatMap((each, row) => (each === key ? [row] : []));
  if (places.length > 0) {
    const entries = places.flatMap((row) =>
      [...cells].map(([column, text]) => ({
        sheet: sheet.id,
        row: sheet.rowId(row),
        column,
        text,
      })),
    );
    book.typeAll('job file', entries);
    return undefined;
  }
  if (!sheet.growable) {
    return key === undefined
      ? problem(`${where}, ${name}`, 'This sheet takes no rows of its own.', rowsAdvice(keys))
      : strange('row', key, keys, where);
  }
  const named = key === undefined ? cells : namedBy(key, cells, sheet);
  if (!named) return missing(key ?? '', keys, sheet.id, where);
  if (named.size === 0) {
    return problem(
      `${where}, ${name}`,
      'Nothing is typed in it.',
      'Write its cells, or take it out.',
    );
  }
  book.rows.put('job file', sheet.id, undefined, [named]);
  return undefined;
}

// A sheet whose rows are named by an hour or by their place takes a key that is new; where a name
// was read or chosen, a new one may be a slip.
function namedBy(key: string, cells: Texts, sheet: SheetView): Texts | undefined {
  const rows = SHEETS.find(({ id }) => id === sheet.id)?.rows;
  const column = sheet.columns.find(({ id }) => rows?.from === 'entered' && id === rows.key);
  if (column?.kind.type !== 'quantity') return undefined;
  if (column.entered) return new Map([[column.id, key], ...cells]);
  return key === String(sheet.rowCount + 1) ? cells : undefined;
}

function missing(key: string, keys: readonly string[], sheet: string, where: string): Problem {
  const { found, fix, ...rest } = strange('row', key, keys, where);
  return { ...rest, found, fix: `${fix} To add rows, list them: "${sheet}": [{...}].` };
}

function rowsAdvice(keys: readonly string[]): string {
  return `Name a row that is there: {${keys
    .slice(0, 3)
    .map((key) => `"${key}": {...}`)
    .join(', ')}}.`;
}

function idsOf(all: readonly { readonly id: string }[]): readonly string[] {
  return all.map(({ id }) => id);
}
