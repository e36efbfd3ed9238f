import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Ask, BookView, CellView, ColumnView, Entry, SheetView } from '../worksheet/index.ts';
import { send } from './events.ts';
import { hasChoices } from './grid-editor.ts';
import {
  stepFrom,
  type Deed,
  type GridAction,
  type GridSize,
  type Move,
  type Position,
} from './grid-keys.ts';
import { blockOf, positionsOf, type Block } from './selection.ts';

/** What the hand needs of the grid it works on. */
export interface HandledGrid extends ReactiveControllerHost, EventTarget {
  readonly book: BookView | undefined;
  readonly view: SheetView | undefined;
  readonly columns: readonly ColumnView[];
  /** Rows that a page key goes. */
  readonly page: number;
  /** What stands in the open field. */
  fieldText(): string | undefined;
  /** Draws now, so that the field or the cell is there, and puts the focus on it. */
  drawAndFocus(): void;
}

/** Where a person is on a grid and what they are doing there: walking, choosing cells, typing, answering. */
export class GridHand implements ReactiveController, Record<Deed, () => void> {
  at: Position = { row: 0, column: 0 };
  /** The far corner of the chosen block, where one is chosen. */
  anchor: Position | undefined;
  /** The text an edit begins with; undefined while the grid is walked. */
  editing: string | undefined;
  /** The row and what stood in the cell when the edit began; another window may write there meanwhile. */
  private begun: { readonly row: string | undefined; readonly seen: string } | undefined;
  /** The ask whose panel is open. */
  asking: Ask | undefined;

  private readonly grid: HandledGrid;

  constructor(grid: HandledGrid) {
    this.grid = grid;
    grid.addController(this);
  }

  hostUpdate(): void {
    this.at = stepFrom(this.at, 'nowhere', this.size());
  }

  /** The chosen block; the current cell alone where none is. */
  get block(): Block {
    return blockOf(this.at, this.anchor);
  }

  get column(): ColumnView | undefined {
    return this.grid.columns[this.at.column];
  }

  get cell(): CellView | undefined {
    const { column } = this;
    return column && this.hasRow() ? this.grid.view?.cell(this.at.row, column.id) : undefined;
  }

  act(action: GridAction): void {
    if ('ask' in action) return;
    if (action.do === 'move') this.move(action.by, action.extend);
    else if (action.do === 'type') this.typeOver();
    else this[action.do]();
  }

  move(by: Move['by'], extend: boolean): void {
    this.anchor = extend ? (this.anchor ?? this.at) : undefined;
    this.goTo(stepFrom(this.at, by, this.size()));
  }

  /** Makes a cell the current one and puts the focus there. */
  goTo(position: Position): void {
    const from = this.rowId();
    this.at = position;
    this.grid.drawAndFocus();
    const row = this.rowId();
    if (row !== from && this.grid.view)
      send(this.grid, 'row-current', { sheet: this.grid.view.id, row });
  }

  /** Goes with rows that were moved by one. */
  shift(by: -1 | 1): void {
    const { anchor } = this;
    this.anchor = anchor && { ...anchor, row: anchor.row + by };
    this.goTo({ ...this.at, row: this.at.row + by });
  }

  typeOver(): void {
    this.grid.book?.rows.finishLong();
    if (this.column?.entered) this.begin('');
  }

  /** Enter: answers an ask, shows how a result was worked out, or types. */
  open(): void {
    const ask = this.cell?.state === 'ask' ? this.askHere() : undefined;
    if (ask) {
      this.asking = ask;
      this.grid.requestUpdate();
    } else if (this.column?.entered) this.edit();
    else this.showWorking();
  }

  edit(): void {
    this.grid.book?.rows.finishLong();
    const { cell, column } = this;
    if (!column?.entered) return;
    // A list opens on what the cell says, though a formula may have said it.
    const shown = hasChoices(column) && cell?.state === 'known' ? cell.text : '';
    this.begin(cell?.typed ?? shown);
  }

  clear(): void {
    this.fill('', 'clear');
  }

  undo(): void {
    const label = this.grid.book?.undoLabel;
    this.grid.book?.undo();
    if (label !== undefined) send(this.grid, 'say', `Taken back: ${label}.`);
  }

  redo(): void {
    const label = this.grid.book?.redoLabel;
    this.grid.book?.redo();
    if (label !== undefined) send(this.grid, 'say', `Done again: ${label}.`);
  }

  showWorking(): void {
    const { column } = this;
    if (!column || !this.grid.view) return;
    send(this.grid, 'show-working', {
      sheet: this.grid.view.id,
      row: this.rowId(),
      column: column.id,
    });
  }

  selectColumn(): void {
    this.anchor = { row: 0, column: this.at.column };
    this.goTo(stepFrom(this.at, 'bottom', this.size()));
  }

  selectRow(): void {
    this.anchor = { row: this.at.row, column: 0 };
    this.goTo(stepFrom(this.at, 'row end', this.size()));
  }

  selectAll(): void {
    this.anchor = { row: 0, column: 0 };
    this.goTo(stepFrom(this.at, 'sheet end', this.size()));
  }

  keep(): void {
    this.keepAndGo('nowhere');
  }

  keepAndGoDown(): void {
    this.keepAndGo('down');
  }

  keepAndGoOn(): void {
    this.keepAndGo('right');
  }

  keepAndGoBack(): void {
    this.keepAndGo('left');
  }

  /** Types the open field's text into every chosen cell. */
  keepInAll(): void {
    const text = this.grid.fieldText() ?? '';
    this.editing = undefined;
    this.fill(text, 'fill');
    this.grid.drawAndFocus();
  }

  restore(): void {
    this.editing = undefined;
    this.grid.drawAndFocus();
  }

  /** Keeps what stands in the open field, wherever the focus went. */
  leave(): void {
    const text = this.grid.fieldText();
    const begun = this.editing;
    if (begun === undefined || text === undefined) return;
    this.editing = undefined;
    if (text !== this.begun?.seen && (text !== begun || begun === '')) this.type(text, this.begun);
    this.grid.requestUpdate();
  }

  /** The ask was answered: the focus goes back to its cell. */
  closeAsk(): void {
    this.asking = undefined;
    this.grid.drawAndFocus();
  }

  /** The panel was left without an answer, and the focus went where the person put it. */
  forgetAsk(): void {
    this.asking = undefined;
    this.grid.requestUpdate();
  }

  /** The chosen cells as text, row by row. */
  chosenText(): string[][] {
    const { top, bottom, left, right } = this.block;
    const columns = this.grid.columns.slice(left, right + 1);
    return Array.from({ length: bottom - top + 1 }, (_, down) =>
      columns.map(({ id }) => {
        const cell = this.grid.view?.cell(top + down, id);
        return cell?.typed ?? cell?.text ?? '';
      }),
    );
  }

  /** The row's id, by its place. */
  rowId(row: number = this.at.row): string | undefined {
    return this.hasRow(row) ? this.grid.view?.rowId(row) : undefined;
  }

  private begin(text: string): void {
    this.editing = text;
    this.begun = { row: this.rowId(), seen: this.cell?.typed ?? '' };
    this.grid.drawAndFocus();
  }

  private keepAndGo(by: Move['by']): void {
    this.leave();
    this.move(by, false);
  }

  private type(text: string, begun?: GridHand['begun']): void {
    const row = begun?.row ?? this.rowId();
    const { column } = this;
    const { book, view } = this.grid;
    if (!book || !view || !column || row === undefined) return;
    book.type(view.id, row, column.id, text, begun?.seen);
    const { cell } = this;
    if (cell?.state === 'wrong' || cell?.state === 'ask') send(this.grid, 'say', cell.note);
  }

  private fill(text: string, verb: string): void {
    const { view, columns, book } = this.grid;
    if (!view) return;
    const entries = positionsOf(this.block).flatMap(({ row, column }): Entry[] => {
      const at = columns[column];
      const rowId = this.rowId(row);
      if (!at?.entered || rowId === undefined) return [];
      return [{ sheet: view.id, row: rowId, column: at.id, text }];
    });
    if (entries.length === 1 && verb === 'clear') this.type('');
    else if (entries.length > 0) book?.typeAll(`${verb} ${String(entries.length)} cells`, entries);
  }

  private askHere(): Ask | undefined {
    const row = this.rowId();
    const asks = (this.grid.book?.asks() ?? []).filter(
      ({ sheet, column }) => sheet === this.grid.view?.id && column === this.column?.id,
    );
    return asks.find((ask) => ask.row === row) ?? asks.find((ask) => ask.row === undefined);
  }

  private hasRow(row: number = this.at.row): boolean {
    return row >= 0 && row < (this.grid.view?.rowCount ?? 0);
  }

  private size(): GridSize {
    const { view, columns, page } = this.grid;
    return { rows: view?.rowCount ?? 0, columns: columns.length, page };
  }
}
