import type { BookView, ColumnView, Entry, SheetView } from '../worksheet/index.ts';
import type { ColumnHabits } from './column-habits.ts';
import { send } from './events.ts';
import type { GridHand } from './grid-hand.ts';
import type { RowOrder } from './row-order.ts';
import { counted } from './waiting.ts';

/** What the deeds need of the grid they work on. */
export interface WorkedGrid extends EventTarget {
  readonly book: BookView | undefined;
  readonly view: SheetView | undefined;
  readonly columns: readonly ColumnView[];
  readonly order: RowOrder;
  readonly habits: ColumnHabits;
  readonly hand: GridHand;
  requestUpdate(): void;
  /** Draws now, and leaves the focus where it is. */
  draw(): void;
  drawAndFocus(): void;
  /** The place of a row, by its id; -1 where it is not shown. */
  placeOfRow(id: string): number;
  /** How wide a column stands on the screen. [px] */
  shownWidth(column: string): number;
}

/** How far a key makes a column wider or narrower. [px] */
const STEP = 24;

/** What can be done with the rows and columns of a grid beside typing. */
export class GridDeeds {
  private readonly grid: WorkedGrid;

  constructor(grid: WorkedGrid) {
    this.grid = grid;
  }

  /** Types the first row of the chosen cells into the rows below it. */
  repeatDown(): void {
    this.fillDown((column, _sources, count) => {
      const { top } = this.grid.hand.block;
      const cell = this.grid.view?.cell(top, column.id);
      return Array.from({ length: count }, () => cell?.typed ?? '');
    }, 'repeat down');
  }

  /** Goes on with the run that the filled top of the chosen cells begins. */
  runOn(): void {
    this.fillDown((column, sources, count) => {
      return this.grid.book?.rows.runOn(this.grid.view?.id ?? '', column.id, sources, count) ?? [];
    }, 'continue the run');
  }

  addRow(): void {
    const { view, book } = this.grid;
    if (view) this.goToRow(book?.addRow(view.id));
  }

  /** Takes the current row out, whatever else is chosen. */
  removeRow(): void {
    const { view, book, hand } = this.grid;
    const row = hand.rowId();
    if (!view || row === undefined) return;
    const name = view.rowName(hand.at.row);
    book?.removeRow(view.id, row);
    this.say(`${name} removed. Undo brings it back.`);
    this.grid.drawAndFocus();
  }

  insertAbove(): void {
    this.insert(this.grid.hand.block.top);
  }

  insertBelow(): void {
    this.insert(this.grid.hand.block.bottom + 1);
  }

  double(): void {
    const { view, book } = this.grid;
    const rows = this.chosenRows();
    if (!view?.growable || rows.length === 0) return;
    const label = `double ${this.rowWords(rows)}`;
    const [first] = book?.rows.double(label, view.id, rows) ?? [];
    this.goToRow(first);
    this.say(`${sentenceCase(label)}: done.`);
  }

  removeRows(): void {
    const { view, book } = this.grid;
    const rows = this.chosenRows();
    if (!view?.growable || rows.length === 0) return;
    const words = this.rowWords(rows);
    book?.rows.remove(`remove ${words}`, view.id, rows);
    this.grid.hand.anchor = undefined;
    this.say(
      `${sentenceCase(words)} removed. Undo brings ${rows.length === 1 ? 'it' : 'them'} back.`,
    );
    this.grid.drawAndFocus();
  }

  moveUp(): void {
    this.move(-1);
  }

  moveDown(): void {
    this.move(1);
  }

  narrower(): void {
    this.widen(-STEP);
  }

  wider(): void {
    this.widen(STEP);
  }

  /** Lets the current column fit its cells again. */
  fit(): void {
    const { column } = this.grid.hand;
    if (column) this.grid.habits.setWidth(column.id, undefined);
    this.grid.requestUpdate();
  }

  hide(): void {
    const { hand, habits, columns } = this.grid;
    const { left, right } = hand.block;
    const hidden = columns.slice(Math.max(1, left), right + 1);
    if (hidden.length === 0) return;
    for (const { id } of hidden) habits.hide(id);
    hand.anchor = undefined;
    this.say(`${hidden.map(({ label }) => label).join(', ')} hidden.`);
    this.grid.requestUpdate();
    this.grid.drawAndFocus();
  }

  showAll(): void {
    this.grid.habits.showAll();
    this.grid.drawAndFocus();
  }

  private insert(place: number): void {
    const { view, book, order } = this.grid;
    if (!view?.growable) return;
    // In another order than that of reading there is no place between two rows.
    const before = order.isChanged || place >= view.rowCount ? undefined : view.rowId(place);
    const [row] = book?.rows.put('add row', view.id, before, [new Map()]) ?? [];
    this.goToRow(row);
  }

  private move(by: -1 | 1): void {
    const { view, book, order, hand } = this.grid;
    if (!view?.growable) return;
    if (order.isChanged) {
      this.say('Show all rows as read before moving one.');
      return;
    }
    const { top, bottom } = hand.block;
    const target = by < 0 ? top - 1 : bottom + 2;
    if (target < 0 || target > view.rowCount) return;
    const rows = this.chosenRows();
    const label = `move ${this.rowWords(rows)}`;
    book?.rows.move(label, view.id, rows, target < view.rowCount ? view.rowId(target) : undefined);
    hand.shift(by);
    this.say(`${sentenceCase(label)} ${by < 0 ? 'up' : 'down'}: done.`);
  }

  private widen(by: number): void {
    const { hand, habits } = this.grid;
    const { column } = hand;
    if (!column) return;
    const width = (habits.width(column.id) ?? this.grid.shownWidth(column.id)) + by;
    habits.setWidth(column.id, width);
    this.say(`${column.label}: ${String(habits.width(column.id) ?? 0)} pixels wide.`);
    this.grid.requestUpdate();
  }

  private fillDown(
    texts: (column: ColumnView, sources: readonly string[], count: number) => readonly string[],
    verb: string,
  ): void {
    const { view, book, columns, hand } = this.grid;
    if (!view || !book) return;
    const { top, bottom, left, right } = hand.block;
    const entries = columns.slice(left, right + 1).flatMap((column): readonly Entry[] => {
      if (!column.entered) return [];
      const filled = verb === 'repeat down' ? 1 : this.filledFrom(column.id, top, bottom);
      const sources = Array.from({ length: filled }, (_, at) => view.rowId(top + at));
      return texts(column, sources, bottom - top + 1 - filled).map((text, at): Entry => {
        return { sheet: view.id, row: view.rowId(top + filled + at), column: column.id, text };
      });
    });
    if (entries.length === 0) {
      this.say('Choose the cells to fill first: the top one and those below it.');
      return;
    }
    const words = counted(entries.length, 'cell');
    book.typeAll(`${verb}, ${words}`, entries);
    this.say(`${words} filled.`);
  }

  /** How many cells from the top of the block on are filled without a gap; the first always counts. */
  private filledFrom(column: string, top: number, bottom: number): number {
    let filled = 1;
    while (top + filled <= bottom && this.grid.view?.cell(top + filled, column).typed !== undefined)
      filled += 1;
    // Where all are filled, the first two say how it goes.
    return top + filled > bottom ? Math.min(2, bottom - top) || 1 : filled;
  }

  private chosenRows(): readonly string[] {
    const { view, hand } = this.grid;
    const { top, bottom } = hand.block;
    const last = Math.min(bottom, (view?.rowCount ?? 0) - 1);
    return Array.from(
      { length: Math.max(0, last - top + 1) },
      (_, at) => view?.rowId(top + at) ?? '',
    );
  }

  private rowWords(rows: readonly string[]): string {
    if (rows.length !== 1) return counted(rows.length, 'row');
    return this.grid.view?.rowName(this.grid.hand.block.top) ?? 'row';
  }

  private goToRow(row: string | undefined): void {
    if (row === undefined) return;
    this.grid.draw();
    const { hand, columns } = this.grid;
    const place = this.grid.placeOfRow(row);
    const first = columns.findIndex(({ entered }) => entered);
    hand.anchor = undefined;
    if (place >= 0) hand.goTo({ row: place, column: Math.max(0, first) });
  }

  private say(words: string): void {
    send(this.grid, 'say', words);
  }
}

function sentenceCase(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
