import type { BookView } from '../worksheet/index.ts';
import type { Dialect } from './export-dialect.ts';
import { sheetTable, type Table } from './table.ts';

// Lists that go to other people leave out the columns that only lead to others.
const HOLE_COLUMNS = [
  'post',
  'embedment',
  'governing_rule',
  'depth',
  'width',
  'gravel',
  'depth_reached',
  'shortfall',
  'stopped_by',
  'rock_choice',
  'set_how',
  'post_size',
  'post_length',
  'post_stock',
  'concrete',
  'bags',
];

/** Every post with its readings and what came of them. Entries read back as they were. */
export function postTable(book: BookView, dialect?: Dialect): Table {
  const sheet = book.sheet('posts');
  if (!sheet) return [];
  const shown = sheet.columns.filter(({ show, id, entered }) => {
    if (show === 'more') return false;
    return (
      show === 'always' || (entered && hasEntry(sheet.rowCount, (row) => sheet.cell(row, id).typed))
    );
  });
  return sheetTable(
    sheet,
    shown.map(({ id }) => id),
    dialect,
  );
}

/** Every hole: how deep, how wide, and what goes into it. */
export function holeTable(book: BookView, dialect?: Dialect): Table {
  const sheet = book.sheet('holes');
  return sheet ? sheetTable(sheet, HOLE_COLUMNS, dialect) : [];
}

function hasEntry(count: number, typed: (row: number) => string | undefined): boolean {
  for (let row = 0; row < count; row++) if ((typed(row) ?? '') !== '') return true;
  return false;
}
