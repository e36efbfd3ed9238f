import type { CellView, ColumnView, SheetView } from '../worksheet/index.ts';
import type { ColumnHabits } from './column-habits.ts';
import { headWords } from './shown-columns.ts';

/** Rows that are measured before a column is first shown. */
const MEASURED = 120;
/** The widest a column starts out, and what stands between two. [characters] */
const LONGEST_SHOWN = 44;
const BETWEEN = 2.3;
/** The most that what a cell waits for asks of its column; the rest is in the note of the cell. [characters] */
const LONGEST_WAIT = 12;
/** A column gives up this much of the space between two before the sheet has to be scrolled. */
const PINCHED = 0.96;
/** What is set smaller than an entry: what a cell waits for, and what it was suggested. */
const SMALL = 0.82;
/** Where the second line of a head breaks. [characters] */
const UNDER = 9;

/**
 * The widths of the columns. They are counted from the texts and not laid out by the browser, so that
 * a row is laid out by itself and an edit never moves the rest of the page.
 */
export class GridTracks {
  /** By column and unit, in characters. */
  private readonly counted = new Map<string, number>();

  /** The style of the box around the rows, whose rows share its tracks. */
  style(view: SheetView, columns: readonly ColumnView[], habits: ColumnHabits): string {
    const tracks: string[] = [];
    const widths: string[] = [];
    for (const column of columns) {
      const set = habits.width(column.id);
      const width = set ?? this.widthOf(view, column);
      const least = set === undefined ? `${(width * PINCHED).toFixed(1)}ch` : `${String(width)}px`;
      tracks.push(set === undefined ? `minmax(${least},${width.toFixed(1)}fr)` : least);
      widths.push(least);
    }
    return `--tracks:${tracks.join(' ')};width:max(100%,${widths.join(' + ')})`;
  }

  /** Makes room for what stands in a row now. */
  fit(view: SheetView, columns: readonly ColumnView[], row: number): void {
    for (const column of columns) {
      const key = keyOf(column);
      const known = this.counted.get(key);
      if (known === undefined) continue;
      const needed = roomFor(view.cell(row, column.id)) + BETWEEN;
      if (needed > known) this.counted.set(key, needed);
    }
  }

  /** Whether a cell has more to show than its column has room for. */
  isLong(column: ColumnView, cell: CellView, habits: ColumnHabits): boolean {
    if (habits.width(column.id) !== undefined) return true;
    return cellWidth(cell) + BETWEEN > (this.counted.get(keyOf(column)) ?? 0);
  }

  /** Counts again; the columns of a long sheet stay, or they would jump. */
  forget(view: SheetView | undefined): void {
    if ((view?.rowCount ?? 0) <= MEASURED) this.counted.clear();
  }

  private widthOf(view: SheetView, column: ColumnView): number {
    const key = keyOf(column);
    let width = this.counted.get(key);
    if (width === undefined) {
      width = widest(view, column);
      this.counted.set(key, width);
    }
    return width;
  }
}

function keyOf({ id, unit }: ColumnView): string {
  return `${id} ${unit}`;
}

function widest(view: SheetView, column: ColumnView): number {
  let most = 0;
  for (let row = 0; row < Math.min(MEASURED, view.rowCount); row += 1)
    most = Math.max(most, roomFor(view.cell(row, column.id)));
  return Math.max(headWidth(column), most) + BETWEEN;
}

// The head is set smaller than the cells; its second line breaks where it is long.
function headWidth(column: ColumnView): number {
  const { label } = column;
  const under = headWords(column).length - label.length - 2;
  return Math.max(label.length * 0.95, Math.min(UNDER, under * 0.8));
}

function roomFor(cell: CellView): number {
  return Math.min(cell.state === 'waiting' ? LONGEST_WAIT : LONGEST_SHOWN, cellWidth(cell));
}

function cellWidth({ state, text, note, suggested }: CellView): number {
  const isNote = state === 'waiting' || text === '';
  const beside = suggested === undefined ? 0 : textWidth(` suggested ${suggested}`);
  return (isNote ? SMALL * textWidth(note) : textWidth(text)) + SMALL * beside;
}

/** In widths of a digit: a fraction is set small, thin signs take half, letters somewhat less than a digit, m and w more. */
function textWidth(text: string): number {
  const set = text.replaceAll(/\d+\/\d+/g, '000');
  const thin = set.match(/[ '".,:;ilt|-]/g)?.length ?? 0;
  const letters = set.match(/[a-hjkn-su-vx-z]/g)?.length ?? 0;
  const wide = set.match(/[mwMW]/g)?.length ?? 0;
  return set.length - thin / 2 - letters * 0.04 + wide / 2;
}
