import { parseUnit, writeDuration } from '../units/index.ts';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import { PLAIN_DIALECT, shownIn, type Dialect } from './export-dialect.ts';

/** Gives a cell as a list for people has it: rounded, with its unit, as the dialect wants it; blank where it is not known. The one row of the job is called `job`. */
export type Measures = (sheet: string, row: string, column: string) => string;

/** Gives the cells of a book as it stands now; each sheet is looked through once, however many rows are asked for. */
export function measuresIn(book: BookView, dialect: Dialect): Measures {
  const sheets = new Map<string, Places | undefined>();
  return (id, row, column) => {
    if (!sheets.has(id)) sheets.set(id, placesIn(book.sheet(id)));
    const { sheet, rows, heads } = sheets.get(id) ?? {};
    const at = rows?.get(row);
    const head = heads?.get(column);
    return sheet && at !== undefined && head ? measureAt(sheet, at, head, dialect) : '';
  };
}

interface Places {
  readonly sheet: SheetView;
  readonly rows: ReadonlyMap<string, number>;
  readonly heads: ReadonlyMap<string, ColumnView>;
}

function placesIn(sheet: SheetView | undefined): Places | undefined {
  if (!sheet) return undefined;
  const rows = new Map<string, number>();
  for (let at = sheet.rowCount - 1; at >= 0; at--) rows.set(sheet.rowId(at), at);
  return { sheet, rows, heads: new Map(sheet.columns.map((head) => [head.id, head])) };
}

function measureAt(sheet: SheetView, at: number, head: ColumnView, dialect: Dialect): string {
  const { state, text, value } = sheet.cell(at, head.id);
  if (state !== 'known' || text === '') return '';
  if (head.unit === 'h' && typeof value === 'number') return writeDuration(value);
  const shown = head.unit === '' || /['"′″]/u.test(text) ? text : `${text} ${head.unit}`;
  const unit = head.kind.type === 'quantity' ? parseUnit(head.unit) : undefined;
  return unit && typeof value === 'number' && dialect !== PLAIN_DIALECT
    ? shownIn(value, shown, head.kind, unit, dialect)
    : shown;
}
