import { records } from '../csv/index.ts';
import type { Entry } from '../worksheet/view.ts';
import type { Position } from './grid-keys.ts';

/** Rows of cells as text for the clipboard, one row a line, quoted where a cell needs it. */
export function asTabbedText(rows: readonly (readonly string[])[]): string {
  return rows.map((cells) => cells.map(quotedWhereNeeded).join('\t')).join('\r\n');
}

/** The same cells as a table, for programs that read one; every cell is escaped. */
export function asTable(rows: readonly (readonly string[])[]): string {
  const lines = rows.map((cells) => cells.map((cell) => `<td>${escaped(cell)}</td>`).join(''));
  return `<table>${lines.map((line) => `<tr>${line}</tr>`).join('')}</table>`;
}

/** The rows of a pasted text; only tabs part its cells, and blank lines stay where they were. */
export function readTabbedText(text: string): readonly (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  // The first line tells the reader what parts the cells, so that a comma stays a comma.
  for (const { line, cells } of records(`sep=\t\n${text}`).records) rows[line - 2] = cells;
  return Array.from({ length: rows.length }, (_, row) => rows[row] ?? []);
}

/** What a paste would type, and how many of its cells have no place here. */
export interface Paste {
  readonly entries: readonly Entry[];
  readonly leftOut: number;
}

/** Lays pasted rows over a sheet from a cell on; cells that are worked out or past the edge are left out. */
export function pasteOver(
  rows: readonly (readonly string[])[],
  sheet: string,
  columns: readonly { readonly id: string; readonly entered: boolean }[],
  from: Position,
  rowAt: (place: number) => string | undefined,
): Paste {
  const entries: Entry[] = [];
  let leftOut = 0;
  rows.forEach((cells, down) => {
    const row = rowAt(from.row + down);
    cells.forEach((text, across) => {
      const column = columns[from.column + across];
      if (row === undefined || column?.entered !== true) leftOut += 1;
      else entries.push({ sheet, row, column: column.id, text: text.trim() });
    });
  });
  return { entries, leftOut };
}

function quotedWhereNeeded(cell: string): string {
  return /[\t\r\n]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
