import { toBase64, type Change, type Notebook, type Row } from '../notebook/index.ts';
import { isDoubt, isProblem, readEntry } from '../units/index.ts';
import { rowFrom, type CameIn } from './bring-in.ts';
import type { Intake, IntakeColumn, IntakeRow } from './intake.ts';

/** How the rows of a file stand to those of the sheet, by their post numbers. */
export interface Comparison {
  /** Rows whose post is not on the sheet, or is there or in the file twice. */
  readonly fresh: readonly IntakeRow[];
  readonly changed: readonly ChangedRow[];
  /** Post numbers of rows that say what stands there already. */
  readonly same: readonly string[];
}

/** A row of the file that says otherwise than the sheet does. */
export interface ChangedRow {
  readonly post: string;
  /** The id of the row on the sheet. */
  readonly row: string;
  readonly line: number;
  readonly cells: readonly ChangedCell[];
}

export interface ChangedCell {
  readonly column: string;
  /** What stands there; blank where nothing does. */
  readonly before: string;
  readonly after: string;
}

/** Compares a file with the posts that are there. A blank in the file says nothing, and changes nothing. */
export function compareSite(
  { rows }: Pick<Intake, 'rows'>,
  standing: readonly Row[],
  columns: readonly IntakeColumn[],
): Comparison {
  const kinds = new Map(columns.map((column) => [column.id, column]));
  const posts = once(standing, ({ cells }) => postOf(cells));
  const inFile = once(rows, ({ cells }) => postOf(cells));
  const fresh: IntakeRow[] = [];
  const changed: ChangedRow[] = [];
  const same: string[] = [];
  for (const row of rows) {
    const post = postOf(row.cells);
    const there = inFile.get(post) === row ? posts.get(post) : undefined;
    if (!there) {
      fresh.push(row);
      continue;
    }
    const cells = [...row.cells].flatMap(([column, after]): readonly ChangedCell[] => {
      const before = there.cells.get(column) ?? '';
      const isSame = after.trim() === '' || saysTheSame(before, after, kinds.get(column));
      return isSame ? [] : [{ column, before, after }];
    });
    const called = row.cells.get('post') ?? '';
    if (cells.length === 0) same.push(called);
    else changed.push({ post: called, row: there.id, line: row.line, cells });
  }
  return { fresh, changed, same };
}

/** Puts a compared file into the notebook as one act: changes typed over, new rows below. */
export function mergeIn(
  comparison: Comparison,
  intake: Intake,
  file: CameIn,
  notebook: Notebook,
): void {
  const ids = notebook.freshIds(comparison.fresh.length);
  const rows = comparison.fresh.map((row, at) => rowFrom(row, ids[at] ?? '', intake, file));
  const cells = comparison.changed.flatMap(({ row, cells }) =>
    cells.map(({ column, after }): Change => {
      const before = notebook.row('posts', row)?.cells.get(column);
      return { edit: 'cell', sheet: 'posts', row, column, before, after };
    }),
  );
  const at = notebook.rows('posts').length;
  notebook.do(`merge ${file.name}`, [
    ...cells,
    ...(rows.length === 0 ? [] : [{ edit: 'add rows', sheet: 'posts', at, rows } as const]),
    {
      edit: 'add file',
      file: {
        name: file.name,
        bytes: toBase64(file.bytes),
        linesRead: intake.linesRead,
        passedOver: intake.passedOver,
      },
    },
  ]);
}

/** What is named once, by its name; what is named twice, or not at all, is left out. */
export function once<T>(items: readonly T[], nameOf: (item: T) => string): ReadonlyMap<string, T> {
  const named = new Map<string, T>();
  const twice = new Set<string>(['']);
  for (const item of items) {
    const name = nameOf(item);
    if (named.has(name)) twice.add(name);
    named.set(name, item);
  }
  for (const name of twice) named.delete(name);
  return named;
}

/** The post number of a row, as it is compared. */
export function postOf(cells: ReadonlyMap<string, string>): string {
  return (cells.get('post') ?? '').trim().toLowerCase();
}

// `3/8"` and `0.375 in` are one reading; what can't be read is compared as it is written.
export function saysTheSame(
  before: string,
  after: string,
  column: IntakeColumn | undefined,
): boolean {
  if (before.trim() === after.trim()) return true;
  if (!column || before.trim() === '') return false;
  const options = column.unit === '' ? {} : { unit: column.unit };
  const [a, b] = [before, after].map((text) => readEntry(text, column.kind, options));
  if (!a || !b || isProblem(a) || isDoubt(a) || isProblem(b) || isDoubt(b)) return false;
  if (typeof a.value !== 'number' || typeof b.value !== 'number')
    return String(a.value) === String(b.value);
  // One length in two units differs in its last digit.
  return Math.abs(a.value - b.value) <= 1e-9 * Math.max(Math.abs(a.value), Math.abs(b.value));
}
