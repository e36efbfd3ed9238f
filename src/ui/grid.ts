import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import './ask.ts';
import { cellStyles } from './cell.ts';
import { copyCells, pasteOver, pastedRows } from './clipboard.ts';
import { send } from './events.ts';
import { FollowBook } from './follow-book.ts';
import { editorStyles } from './grid-editor.ts';
import { gridFoot } from './grid-foot.ts';
import { GridHand, type HandledGrid } from './grid-hand.ts';
import { typingKey, walkingKey } from './grid-keys.ts';
import { gridHead, gridRow, gridTotals, type GridSight } from './grid-rows.ts';
import { gridStyles } from './grid-styles.ts';
import { ALL_DRAWN_UP_TO, columnWidths, stripsOf } from './grid-window.ts';
import { placeBeside } from './panel-place.ts';
import { RowOrder } from './row-order.ts';
import { positionsOf } from './selection.ts';
import { shownColumns } from './shown-columns.ts';
import { base } from './tokens.ts';

/**
 * A sheet as a grid to be walked and typed into by keys, mouse or finger (WAI-ARIA APG, Grid
 * pattern). It hands over what was typed, exactly, and shows what the book makes of it.
 *
 * @fires row-current - Another row became the current one.
 * @fires show-working - Somebody wants to see how the current cell was worked out.
 * @fires say - Words for the status line.
 */
@customElement('bp-grid')
export class Grid extends LitElement implements HandledGrid {
  static override styles = [base, cellStyles, gridStyles, editorStyles];

  @property({ attribute: false }) book: BookView | undefined;
  /** The id of the sheet to show. */
  @property() sheet = '';
  /** The id of the row that is current on the page, which may be set from outside. */
  @property() current = '';

  /** The sheet as last drawn, and the columns shown of it. */
  view: SheetView | undefined;
  columns: readonly ColumnView[] = [];

  @state() private more = false;
  @state() private used = false;
  @state() private scrolled = { scrollTop: 0, viewHeight: 600, rowHeight: 34 };

  @query('.scroller') private readonly scroller!: HTMLElement | null;
  @query('.editor') private readonly editor!: HTMLInputElement | HTMLSelectElement | null;
  @query('.cell.current') private readonly currentCell!: HTMLElement | null;
  @query('.asking') private readonly panel!: HTMLElement | null;

  private readonly order = new RowOrder();
  private focusedBefore: Element | null = null;
  private readonly follow = new FollowBook(this, () => this.book);
  private readonly hand = new GridHand(this);
  private readonly measured = new ResizeObserver(() => {
    this.measure();
  });

  override disconnectedCallback() {
    super.disconnectedCallback();
    this.measured.disconnect();
  }

  /** Rows that a page key goes. */
  get page(): number {
    const { viewHeight, rowHeight } = this.scrolled;
    return Math.max(1, Math.floor(viewHeight / rowHeight) - 3);
  }

  /** Puts the focus on a cell, by row id and column id; either may be left out. */
  goTo(row: string | undefined, column: string | undefined): void {
    this.performUpdate();
    if (column !== undefined && !this.columns.some(({ id }) => id === column)) this.more = true;
    this.performUpdate();
    this.hand.goTo({
      row: row === undefined ? this.hand.at.row : Math.max(0, this.placeOfRow(row)),
      column: Math.max(
        0,
        this.columns.findIndex(({ id }) => id === column),
      ),
    });
  }

  fieldText(): string | undefined {
    return this.editor?.value;
  }

  drawAndFocus(): void {
    this.requestUpdate();
    this.performUpdate();
    (this.editor ?? this.currentCell)?.focus({ preventScroll: true });
    // Focus alone stops scrolling once any part of the cell is in sight, also under the head.
    this.currentCell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  protected override willUpdate(changed: PropertyValues) {
    const view = this.book?.sheet(this.sheet);
    this.view = view && this.order.seen(view);
    this.columns = this.view ? shownColumns(this.view, this.more) : [];
    if (!changed.has('current') || this.current === this.hand.rowId()) return;
    const row = this.placeOfRow(this.current);
    if (row >= 0) this.hand.at = { ...this.hand.at, row };
  }

  protected override render() {
    const { view, columns, hand } = this;
    if (!view) return nothing;
    const sight = this.sightOf(view);
    return html`
      <div class="scroller" @scroll=${this.noteScroll} @focusin=${() => (this.used = true)}>
        <div class="columns" .style=${`grid-template-columns:${columnWidths(view, columns)}`}>
          <div
            role="grid"
            aria-label=${view.title}
            aria-rowcount=${view.rowCount + 1}
            aria-colcount=${columns.length}
            aria-multiselectable="true"
            @keydown=${this.pressKey}
            @pointerdown=${this.noteFocus}
            @click=${this.clickCell}
            @focusout=${this.leaveField}
            @copy=${this.copy}
            @paste=${this.paste}
          >
            ${gridHead(sight)}
            ${repeat(
              stripsOf({ ...this.scrolled, rows: view.rowCount, pinned: hand.at.row }),
              ({ key }) => key,
              (strip) =>
                'gap' in strip
                  ? html`<div class="gap" .style=${`height:${String(strip.gap)}px`}></div>`
                  : gridRow(sight, strip.row),
            )}
          </div>
          ${gridTotals(sight)}
        </div>
        ${view.rowCount === 0 ? html`<p class="empty">Nothing here yet.</p>` : nothing}
      </div>
      ${this.renderFoot(view)} ${this.renderAsking()}
    `;
  }

  protected override firstUpdated() {
    if (this.scroller) this.measured.observe(this.scroller);
  }

  protected override updated() {
    if (!this.hand.asking || !this.panel || this.panel.matches(':popover-open')) return;
    this.panel.showPopover();
    void this.panel.querySelector('bp-ask')?.focusFirst();
  }

  private renderAsking(): TemplateResult | typeof nothing {
    const { asking } = this.hand;
    if (!asking) return nothing;
    return html`<div
      class="asking"
      popover="auto"
      role="dialog"
      aria-label="To be answered: ${asking.columnLabel}, ${asking.rowName}"
      .style=${this.currentCell ? placeBeside(this.currentCell) : ''}
      @toggle=${(event: ToggleEvent) => {
        if (event.newState !== 'closed') return;
        // The focus goes back to the cell, unless the person put it elsewhere.
        if (this.panel?.matches(':focus-within') || document.activeElement === document.body)
          this.hand.closeAsk();
        else this.hand.forgetAsk();
      }}
    >
      <bp-ask
        .book=${this.book}
        .ask=${asking}
        @answered=${() => {
          this.hand.closeAsk();
        }}
      ></bp-ask>
    </div>`;
  }

  private renderFoot(view: SheetView): TemplateResult {
    const { hand, order, more } = this;
    const choosing = hand.anchor && hand.editing !== undefined ? positionsOf(hand.block).length : 0;
    return gridFoot(
      {
        view,
        column: hand.column,
        cell: hand.cell,
        row: hand.at.row,
        more,
        used: this.used,
        order,
        choosing,
      },
      {
        showMore: () => (this.more = !this.more),
        addRow: () => {
          this.addRow(view);
        },
        removeRow: () => {
          this.removeRow(view);
        },
        showWorking: () => {
          hand.showWorking();
        },
        sort: this.sort,
        sift: this.sift,
      },
    );
  }

  private sightOf(view: SheetView): GridSight {
    const stops = this.book?.stops() ?? [];
    return {
      view,
      columns: this.columns,
      sorting: this.order.sorting,
      at: this.hand.at,
      current: this.current,
      block: this.hand.anchor && this.hand.block,
      editing: this.hand.editing,
      changed: this.follow.changed,
      stopped: new Set(
        stops.flatMap(({ sheet, row, level }) =>
          sheet === view.id && level === 'stop' && row !== undefined ? [row] : [],
        ),
      ),
    };
  }

  private placeOfRow(id: string): number {
    const { view } = this;
    for (let row = 0; row < (view?.rowCount ?? 0); row += 1) {
      if (view?.rowId(row) === id) return row;
    }
    return -1;
  }

  private measure() {
    const row = parseFloat(getComputedStyle(this).getPropertyValue('--row'));
    const head = this.renderRoot.querySelector('.head');
    const first = this.renderRoot.querySelector('.head .first');
    if (!this.scroller || !head || !first) return;
    // Focus must not land under the head that stays or the column that stays (WCAG 2.2, 2.4.11).
    this.scroller.style.setProperty('--head-height', `${String(head.clientHeight)}px`);
    this.scroller.style.setProperty('--first-width', `${String(first.clientWidth)}px`);
    const answer = this.renderRoot.querySelector('.head .answer');
    this.scroller.style.setProperty('--answer-width', `${String(answer?.clientWidth ?? 0)}px`);
    this.scrolled = {
      ...this.scrolled,
      viewHeight: this.scroller.clientHeight,
      rowHeight: row > 0 ? row : 34,
    };
  }

  private noteScroll() {
    if (!this.scroller || (this.view?.rowCount ?? 0) <= ALL_DRAWN_UP_TO) return;
    this.scrolled = { ...this.scrolled, scrollTop: this.scroller.scrollTop };
  }

  private pressKey(event: KeyboardEvent) {
    const action = this.hand.editing === undefined ? walkingKey(event) : typingKey(event);
    if (!action) return;
    // The first key of an entry goes on into the field that opens for it; a list has picked already.
    if (action.do !== 'type' || this.hand.column?.kind.type === 'choice') event.preventDefault();
    event.stopPropagation();
    this.hand.act(action);
  }

  private noteFocus() {
    this.focusedBefore = this.shadowRoot?.activeElement ?? null;
  }

  // The first touch chooses a cell, the second opens it.
  private clickCell(event: MouseEvent) {
    const touched = event.target as Element;
    const cell = touched.closest<HTMLElement>('.cell');
    if (!cell || touched.closest('.editor')) return;
    if (cell === this.focusedBefore && !event.shiftKey) {
      this.hand.open();
      return;
    }
    this.hand.anchor = event.shiftKey ? (this.hand.anchor ?? this.hand.at) : undefined;
    this.hand.goTo({ row: Number(cell.dataset['row']), column: Number(cell.dataset['column']) });
  }

  private leaveField(event: FocusEvent) {
    if (event.target === this.editor) this.hand.leave();
  }

  private copy(event: ClipboardEvent) {
    if (this.hand.editing === undefined) copyCells(event, this.hand.chosenText());
  }

  private paste(event: ClipboardEvent) {
    const { view, book, columns, hand } = this;
    if (hand.editing !== undefined || !view || !book) return;
    const { top: row, left: column } = hand.block;
    const paste = pasteOver(pastedRows(event), view, columns, { row, column });
    if (paste.entries.length > 0) book.typeAll(paste.label, paste.entries);
    if (paste.words !== '') send(this, 'say', paste.words);
  }

  private readonly sort = () => {
    const view = this.book?.sheet(this.sheet);
    const { column } = this.hand;
    if (view && column) this.order.sortBy(view, column.id);
    this.requestUpdate();
  };

  private readonly sift = () => {
    const view = this.book?.sheet(this.sheet);
    const { column, cell } = this.hand;
    if (!view || !column) return;
    const sieve = this.order.sieve ? undefined : { column: column.id, text: cell?.text ?? '' };
    this.order.sift(view, sieve);
    this.requestUpdate();
  };

  private addRow(view: SheetView) {
    const row = this.book?.addRow(view.id);
    const first = this.columns.find(({ entered }) => entered);
    this.goTo(row, first?.id);
  }

  private removeRow(view: SheetView) {
    const row = this.hand.rowId();
    if (row === undefined) return;
    const name = view.rowName(this.hand.at.row);
    this.book?.removeRow(view.id, row);
    send(this, 'say', `${name} removed. Undo brings it back.`);
    this.drawAndFocus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-grid': Grid;
  }
}
