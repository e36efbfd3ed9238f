import type { ColumnView, SheetView } from '../../worksheet/index.ts';

// As many columns as a portrait page carries beside the row's name, in characters of 8.5 pt.
const PAGE_WIDTH = 112;

/** A sheet's columns in parts that each fit the width of a page; columns that hold nothing, and the number that names the row, are left out. */
export function tableParts(sheet: SheetView): readonly (readonly ColumnView[])[] {
  const parts: ColumnView[][] = [];
  let room = 0;
  for (const column of sheet.columns) {
    const width = widthOf(sheet, column);
    // What only leads to others stands in the working below.
    if (width === 0 || column.id === 'post' || column.show === 'more') continue;
    if (width > room || parts.length === 0) {
      parts.push([]);
      room = PAGE_WIDTH;
    }
    parts.at(-1)?.push(column);
    room -= width;
  }
  return parts;
}

function widthOf(sheet: SheetView, { id, label, show }: ColumnView): number {
  let widest = 0;
  for (let row = 0; row < sheet.rowCount; row++) {
    const { state, text, note } = sheet.cell(row, id);
    widest = Math.max(widest, state === 'known' || state === 'ask' ? text.length : note.length);
  }
  if (widest === 0 && show !== 'always') return 0;
  const words = label.split(' ').map((word) => word.length);
  return Math.min(Math.max(widest, ...words) + 3, 26);
}
