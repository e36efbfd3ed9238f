import { records } from '../csv/index.ts';
import type { ColumnView, Entry, SheetView } from '../worksheet/index.ts';
import type { Position } from './grid-keys.ts';
import { counted } from './waiting.ts';

/** Puts cells on the clipboard, as text and as a table. */
export function copyCells(event: ClipboardEvent, rows: readonly (readonly string[])[]): void {
  if (!event.clipboardData) return;
  event.clipboardData.setData('text/plain', asTabbedText(rows));
  event.clipboardData.setData('text/html', asTable(rows));
  event.preventDefault();
}

/** The rows of a paste: only tabs part its cells, and blank lines stay where they were. */
export function pastedRows(event: ClipboardEvent): readonly (readonly string[])[] {
  const text = event.clipboardData?.getData('text/plain') ?? '';
  event.preventDefault();
  const rows: (readonly string[])[] = [];
  // The first line tells the reader what parts the cells, so that a comma stays a comma.
  for (const { line, cells } of records(`sep=\t\n${text}`).records) rows[line - 2] = cells;
  return Array.from({ length: rows.length }, (_, row) => rows[row] ?? []);
}

/** What a paste would type, the name of that act, and what to say about it. */
export interface Paste {
  readonly entries: readonly Entry[];
  readonly label: string;
  readonly words: string;
}

/** Lays pasted rows over a sheet from a cell on; cells that are worked out or past the edge are left out. */
export function pasteOver(
  rows: readonly (readonly string[])[],
  view: SheetView,
  columns: readonly ColumnView[],
  from: Position,
): Paste {
  const entries: Entry[] = [];
  let leftOut = 0;
  rows.forEach((cells, down) => {
    const row = from.row + down;
    cells.forEach((text, across) => {
      const column = columns[from.column + across];
      if (row >= view.rowCount || column?.entered !== true) leftOut += 1;
      else
        entries.push({
          sheet: view.id,
          row: view.rowId(row),
          column: column.id,
          text: text.trim(),
        });
    });
  });
  if (entries.length + leftOut === 0) return { entries, label: '', words: '' };
  const pasted = counted(entries.length, 'cell') || 'No cell';
  const rest = leftOut === 0 ? '' : ` ${counted(leftOut, 'cell')} had no place to go here.`;
  return { entries, label: `paste ${pasted}`, words: `${pasted} pasted.${rest}` };
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
