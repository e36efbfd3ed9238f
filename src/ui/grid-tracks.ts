import type { CellView, ColumnView, SheetView } from '../worksheet/index.ts';
import type { ColumnHabits } from './column-habits.ts';
import { headWords } from './shown-columns.ts';

/** Rows that are measured before a column is first shown. */
const MEASURED = 120;
/** The widest a column starts out, and what stands between two. [characters] */
const LONGEST_SHOWN = 44;
const BETWEEN = 2.3;
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
      const width = String(set ?? Math.round(this.widthOf(view, column) * 10) / 10);
      tracks.push(set === undefined ? `minmax(${width}ch,${width}fr)` : `${width}px`);
      widths.push(set === undefined ? `${width}ch` : `${width}px`);
    }
    return `--tracks:${tracks.join(' ')};width:max(100%,${widths.join(' + ')})`;
  }

  /** Makes room for what stands in a row now. */
  fit(view: SheetView, columns: readonly ColumnView[], row: number): void {
    for (const column of columns) {
      const key = keyOf(column);
      const known = this.counted.get(key);
      if (known === undefined) continue;
      const needed = Math.min(LONGEST_SHOWN, cellWidth(view.cell(row, column.id))) + BETWEEN;
      if (needed > known) this.counted.set(key, needed);
    }
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
    most = Math.max(most, cellWidth(view.cell(row, column.id)));
  return Math.max(headWidth(column), Math.min(LONGEST_SHOWN, most)) + BETWEEN;
}

// The head is set smaller than the cells; its second line breaks where it is long.
function headWidth(column: ColumnView): number {
  const { label } = column;
  const under = headWords(column).length - label.length - 2;
  return Math.max(label.length * 0.95, Math.min(UNDER, under * 0.8));
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
