import { records } from '../csv/index.ts';
import type { ColumnView, Entry, SheetView } from '../worksheet/index.ts';
import { tableIn } from './pasted-table.ts';
import type { Block } from './selection.ts';

/** Puts cells on the clipboard, as text and as a table. */
export function copyCells(event: ClipboardEvent, rows: readonly (readonly string[])[]): void {
  if (!event.clipboardData) return;
  event.clipboardData.setData('text/plain', asTabbedText(rows));
  event.clipboardData.setData('text/html', asTable(rows));
  event.preventDefault();
}

/** The rows of a paste: cells of its text, or of its table where that has more of them. */
export function pastedRows(event: ClipboardEvent): readonly (readonly string[])[] {
  event.preventDefault();
  const text = textRows(event.clipboardData?.getData('text/plain') ?? '');
  // Some programs put a table on the clipboard whose text runs its cells together.
  const table = text.some((cells) => cells.length > 1)
    ? []
    : tableIn(event.clipboardData?.getData('text/html') ?? '');
  return table.some((cells) => cells.length > 1) ? table : text;
}

/** What a paste would type, and what of it has no place. */
export interface PastePlan {
  readonly entries: readonly Entry[];
  /** Rows beyond the last, with what would be typed in them. */
  readonly added: readonly ReadonlyMap<string, string>[];
  /** How many cells would be typed with the added rows, and without. */
  readonly cells: { readonly withRows: number; readonly here: number };
  /** Cells that fall on columns that are worked out, and past the last column. */
  readonly onWorked: number;
  readonly pastColumns: number;
  /** What was pasted, and the columns it falls on; undefined past the last. */
  readonly rows: readonly (readonly string[])[];
  readonly columns: readonly (ColumnView | undefined)[];
  /** How many of the pasted rows fall on rows that are there. */
  readonly rowsHere: number;
  readonly fits: boolean;
}

/** Lays pasted rows over a sheet from the corner of a block on; one cell, or rows that fill the block evenly, fill it. */
export function planPaste(
  pasted: readonly (readonly string[])[],
  view: SheetView,
  columns: readonly ColumnView[],
  block: Block,
): PastePlan {
  const rows = tiled(pasted, block);
  const width = rows.reduce((most, cells) => Math.max(most, cells.length), 0);
  const under = Array.from({ length: width }, (_, across) => columns[block.left + across]);
  const rowsHere = Math.max(0, Math.min(rows.length, view.rowCount - block.top));
  const entries: Entry[] = [];
  const added: Map<string, string>[] = [];
  let onWorked = 0;
  let pastColumns = 0;
  rows.forEach((cells, down) => {
    const row = down < rowsHere ? view.rowId(block.top + down) : undefined;
    const fresh = new Map<string, string>();
    cells.forEach((cell, across) => {
      const column = under[across];
      if (!column) pastColumns += 1;
      else if (!column.entered) onWorked += 1;
      else if (row === undefined) fresh.set(column.id, cell.trim());
      else entries.push({ sheet: view.id, row, column: column.id, text: cell.trim() });
    });
    if (row === undefined) added.push(fresh);
  });
  const inAdded = added.reduce((sum, { size }) => sum + size, 0);
  return {
    entries,
    added,
    cells: { withRows: entries.length + inAdded, here: entries.length },
    onWorked,
    pastColumns,
    rows,
    columns: under,
    rowsHere,
    fits: onWorked + pastColumns + added.length === 0,
  };
}

// Only tabs part the cells of a text, and blank lines stay where they were.
function textRows(text: string): readonly (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  let next = 2;
  // The first line tells the reader what parts the cells, so that a comma stays a comma.
  for (const { line, cells, text: whole } of records(`sep=\t\n${text}`).records) {
    for (; next < line; next += 1) rows.push([]);
    rows.push(cells);
    // A cell may run over several lines.
    next = line + whole.split('\n').length;
  }
  return rows;
}

function tiled(
  rows: readonly (readonly string[])[],
  { top, bottom, left, right }: Block,
): readonly (readonly string[])[] {
  const [height, width] = [bottom - top + 1, right - left + 1];
  const across = rows[0]?.length ?? 0;
  const isEven = rows.length > 0 && across > 0 && rows.every(({ length }) => length === across);
  const fills = isEven && height % rows.length === 0 && width % across === 0;
  if (!fills || (height === rows.length && width === across)) return rows;
  return Array.from({ length: height }, (_, down) =>
    Array.from({ length: width }, (_, place) => rows[down % rows.length]?.[place % across] ?? ''),
  );
}

function asTabbedText(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => cells.map(quotedWhereNeeded).join('\t')).join('\r\n');
}

function asTable(rows: readonly (readonly string[])[]): string {
  const lines = rows.map((cells) => cells.map((cell) => `<td>${escaped(cell)}</td>`).join(''));
  return `<table>${lines.map((line) => `<tr>${line}</tr>`).join('')}</table>`;
}

function quotedWhereNeeded(cell: string): string {
  return /[\t\r\n]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
