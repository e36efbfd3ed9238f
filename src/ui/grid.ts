import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BookView, ColumnView, SheetView } from '../worksheet/index.ts';
import './ask.ts';
import { cellStyles } from './cell.ts';
import { copyCells, pastedRows, planPaste, type PastePlan } from './clipboard.ts';
import { ColumnHabits } from './column-habits.ts';
import { send } from './events.ts';
import './find-bar.ts';
import type { FindBar, Found } from './find-bar.ts';
import { FollowBook } from './follow-book.ts';
import { GridDeeds } from './grid-deeds.ts';
import { editorStyles } from './grid-editor.ts';
import { gridFoot } from './grid-foot.ts';
import { GridHand, type HandledGrid } from './grid-hand.ts';
import { typingKey, walkingKey, type SheetDeed } from './grid-keys.ts';
import { gridMenu, menuStyles, pressInMenu, type MenuGrid } from './grid-menu.ts';
import { GridPointer } from './grid-pointer.ts';
import { gridHead, gridRow, gridTotals, type GridSight } from './grid-rows.ts';
import { gridStyles } from './grid-styles.ts';
import { ALL_DRAWN_UP_TO, columnWidths, stripsOf } from './grid-window.ts';
import { placeBeside } from './panel-place.ts';
import './paste-preview.ts';
import type { PasteChoice } from './paste-preview.ts';
import { RowOrder, likeThis, oneOfRows, stillOpen, type Sieve } from './row-order.ts';
import { isIn, positionsOf } from './selection.ts';
import { hiddenCount, shownColumns } from './shown-columns.ts';
import { base } from './tokens.ts';
import { counted } from './waiting.ts';

/**
 * A sheet as a grid to be walked and typed into by keys, mouse or finger (WAI-ARIA APG, Grid
 * pattern). It hands over what was typed, exactly, and shows what the book makes of it.
 *
 * @fires row-current - Another row became the current one.
 * @fires show-working - Somebody wants to see how the current cell was worked out.
 * @fires say - Words for the status line.
 */
@customElement('bp-grid')
export class Grid extends LitElement implements HandledGrid, MenuGrid {
  static override styles = [base, cellStyles, gridStyles, editorStyles, menuStyles];

  @property({ attribute: false }) book: BookView | undefined;
  /** The id of the sheet to show. */
  @property() sheet = '';
  /** The id of the row that is current on the page, which may be set from outside. */
  @property() current = '';

  /** The sheet as last drawn, and the columns shown of it. */
  view: SheetView | undefined;
  columns: readonly ColumnView[] = [];

  readonly order = new RowOrder();
  habits = new ColumnHabits('');
  readonly hand = new GridHand(this);
  readonly deeds = new GridDeeds(this);

  @state() private more = false;
  @state() private used = false;
  @state() private scrolled = { scrollTop: 0, viewHeight: 600, rowHeight: 34 };

  @query('.scroller') private readonly scroller!: HTMLElement | null;
  @query('.editor') private readonly editor!: HTMLInputElement | HTMLSelectElement | null;
  @query('.cell.current') private readonly currentCell!: HTMLElement | null;
  @query('.asking') private readonly panel!: HTMLElement | null;
  @query('.menu') private readonly menu!: HTMLElement | null;
  @query('bp-find-bar') private readonly findBar!: FindBar | null;

  @state() private pasting: PastePlan | undefined;
  @state() private finding = false;
  @state() private menuAt = '';

  private readonly pointer = new GridPointer(this);
  private whole: SheetView | undefined;
  private known: Known | undefined;
  private readonly follow = new FollowBook(this, () => this.book);
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
    this.hand.anchor = undefined;
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
    this.bringIntoView();
  }

  shownWidth(column: string): number {
    const place = this.columns.findIndex(({ id }) => id === column);
    const head = this.renderRoot.querySelector(`.head [data-column='${String(place)}']`);
    return head?.getBoundingClientRect().width ?? 0;
  }

  get hiddenMore(): number {
    return this.view ? hiddenCount(this.view) : 0;
  }

  showMore(): void {
    this.more = !this.more;
  }

  /** Opens the bar that looks for words in all cells. */
  find(): void {
    this.finding = true;
    this.performUpdate();
    this.findBar?.focus();
  }

  sortBy(way: 'ascending' | 'descending' | undefined): void {
    const { column } = this.hand;
    if (this.whole && column) this.order.sort(this.whole, way && { column: column.id, way });
    this.drawAndFocus();
  }

  onlyLikeThis(): void {
    const { column, at } = this.hand;
    if (this.view && column) this.sift(likeThis(this.view, at.row, column.id));
  }

  onlyOpen(): void {
    this.sift(stillOpen(this.columns.map(({ id }) => id)));
  }

  allRows(): void {
    this.sift(undefined);
  }

  /** Opens everything that can be done here, beside the current cell. */
  openMenu(): void {
    if (!this.currentCell) return;
    const { top, bottom } = this.currentCell.getBoundingClientRect();
    const room = Math.max(innerHeight - bottom, top) - 12;
    this.menuAt = `${placeBeside(this.currentCell, innerHeight - bottom >= top)};max-height:${String(Math.round(room))}px`;
  }

  protected override willUpdate(changed: PropertyValues) {
    if (changed.has('sheet')) this.habits = new ColumnHabits(this.sheet);
    this.whole = this.book?.sheet(this.sheet);
    const { version } = this.follow;
    this.view = this.whole && this.order.seen(this.whole, version);
    if (this.known?.version !== version || this.known.more !== this.more || changed.has('sheet'))
      this.known = this.lookAround(version);
    this.columns = this.habits.shown(this.known.columns);
    if (!changed.has('current') || this.current === this.hand.rowId()) return;
    const row = this.placeOfRow(this.current);
    if (row >= 0) this.hand.at = { ...this.hand.at, row };
  }

  protected override render() {
    const { view, columns, hand, pointer } = this;
    if (!view) return nothing;
    const sight = this.sightOf(view);
    return html`
      ${this.finding ? this.renderFind(view) : nothing}
      <div class="scroller" @scroll=${this.noteScroll} @focusin=${() => (this.used = true)}>
        <div
          class="columns"
          .style=${`grid-template-columns:${columnWidths(view, columns, this.habits)}`}
        >
          <div
            role="grid"
            aria-label=${view.title}
            aria-rowcount=${view.rowCount + 1}
            aria-colcount=${columns.length}
            aria-multiselectable="true"
            @keydown=${this.pressKey}
            @pointerdown=${pointer.press}
            @click=${pointer.click}
            @contextmenu=${this.pressOther}
            @focusout=${this.leaveField}
            @copy=${this.copy}
            @cut=${this.cut}
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
      ${this.renderFoot(view)} ${this.renderAsking()} ${this.renderMenu()}
      ${this.pasting ? this.renderPasting(view, this.pasting) : nothing}
    `;
  }

  protected override firstUpdated() {
    if (this.scroller) this.measured.observe(this.scroller);
  }

  protected override updated() {
    if (this.menu && !this.menu.matches(':popover-open')) {
      this.menu.showPopover();
      this.menu.querySelector<HTMLElement>('[role=menuitem]')?.focus();
    }
    if (!this.hand.asking || !this.panel || this.panel.matches(':popover-open')) return;
    this.panel.showPopover();
    void this.panel.querySelector('bp-ask')?.focusFirst();
  }

  private renderMenu(): TemplateResult | typeof nothing {
    if (this.menuAt === '') return nothing;
    return html`<div
      class="menu"
      popover="auto"
      role="menu"
      aria-label="What can be done here"
      .style=${this.menuAt}
      @click=${() => {
        this.closeMenu();
      }}
      @keydown=${(event: KeyboardEvent) => {
        if (event.key === 'Tab') this.closeMenu();
        else if (!this.menu || !pressInMenu(this.menu, event.key)) return;
        event.preventDefault();
        event.stopPropagation();
      }}
      @toggle=${(event: ToggleEvent) => {
        if (event.newState === 'closed') this.closeMenu();
      }}
    >
      ${gridMenu(this)}
    </div>`;
  }

  private renderFind(view: SheetView): TemplateResult {
    return html`<bp-find-bar
      .view=${view}
      .columns=${this.columns}
      @found=${({ detail }: CustomEvent<Found>) => {
        this.showCell(detail);
      }}
      @only-found=${({ detail }: CustomEvent<readonly string[]>) => {
        this.sift(oneOfRows('the rows found', detail));
      }}
      @put-away=${() => {
        this.finding = false;
        this.drawAndFocus();
      }}
    ></bp-find-bar>`;
  }

  private renderPasting(view: SheetView, plan: PastePlan): TemplateResult {
    return html`<bp-paste-preview
      .plan=${plan}
      .growable=${view.growable}
      @paste-choice=${({ detail }: CustomEvent<PasteChoice>) => {
        this.pasting = undefined;
        this.apply(plan, detail);
        this.drawAndFocus();
      }}
    ></bp-paste-preview>`;
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
        sort: this.sortOn,
        sift: () => {
          if (this.order.sieve) this.allRows();
          else this.onlyLikeThis();
        },
        openMenu: () => {
          this.openMenu();
        },
        find: () => {
          this.find();
        },
      },
    );
  }

  private sightOf(view: SheetView): GridSight {
    return {
      view,
      columns: this.columns,
      sorting: this.order.sorting,
      at: this.hand.at,
      current: this.current,
      block: this.hand.anchor && this.hand.block,
      editing: this.hand.editing,
      changed: this.follow.changed,
      stopped: this.known?.stopped ?? new Set(),
    };
  }

  /** What has to be looked for in many rows, found out once a change. */
  private lookAround(version: number): Known {
    const { view, more } = this;
    const stops = this.book?.stops() ?? [];
    const here = stops.flatMap(({ sheet, row, level }) =>
      sheet === view?.id && level === 'stop' && row !== undefined ? [row] : [],
    );
    return { version, more, columns: view ? shownColumns(view, more) : [], stopped: new Set(here) };
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
    if ('ask' in action) this.doDeed(action.ask);
    else this.hand.act(action);
    event.stopPropagation();
    // The first key of an entry goes on into the field that opens for it.
    const goesOn = 'do' in action && action.do === 'type';
    if (!goesOn) event.preventDefault();
  }

  private doDeed(deed: SheetDeed) {
    if (deed === 'openMenu' || deed === 'find') this[deed]();
    else if (deed === 'findNext' || deed === 'findBefore') {
      if (!this.finding) this.find();
      else this.findBar?.step(deed === 'findNext' ? 1 : -1);
    } else this.deeds[deed]();
  }

  private closeMenu() {
    if (this.menuAt === '') return;
    const hadFocus = this.menu?.matches(':focus-within') ?? false;
    this.menuAt = '';
    // What was chosen may have put the focus elsewhere.
    if (hadFocus) this.drawAndFocus();
  }

  private pressOther(event: MouseEvent) {
    const touched = event.target as HTMLElement;
    const place = touched.closest<HTMLElement>('[data-column]')?.dataset;
    if (place === undefined || touched.closest('.editor')) return;
    event.preventDefault();
    const { at, block } = this.hand;
    const row = place['row'] === undefined ? at.row : Number(place['row']);
    const to = { row, column: Number(place['column']) };
    if (!isIn(block, to)) {
      this.hand.anchor = undefined;
      this.hand.goTo(to);
    }
    this.openMenu();
  }

  /** Shows a cell as the current one and leaves the focus where it is. */
  private showCell({ row, column }: Found) {
    const place = this.placeOfRow(row);
    const across = this.columns.findIndex(({ id }) => id === column);
    if (place < 0 || across < 0) return;
    this.hand.anchor = undefined;
    this.hand.at = { row: place, column: across };
    this.requestUpdate();
    this.performUpdate();
    this.bringIntoView();
  }

  private bringIntoView() {
    // Focus alone stops scrolling once any part of the cell is in sight, also under the head.
    this.currentCell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  private leaveField(event: FocusEvent) {
    if (event.target === this.editor) this.hand.leave();
  }

  private copy(event: ClipboardEvent) {
    if (this.hand.editing === undefined) copyCells(event, this.hand.chosenText());
  }

  private cut(event: ClipboardEvent) {
    if (this.hand.editing !== undefined) return;
    copyCells(event, this.hand.chosenText());
    this.hand.clear();
  }

  private paste(event: ClipboardEvent) {
    const { view, columns, hand } = this;
    if (hand.editing !== undefined || !view) return;
    const plan = planPaste(pastedRows(event), view, columns, hand.block);
    if (plan.rows.length === 0) return;
    if (plan.fits) this.apply(plan, 'here');
    else this.pasting = plan;
  }

  private apply(plan: PastePlan, choice: PasteChoice) {
    const { book, view } = this;
    if (!book || !view || choice === 'leave') return;
    const added = choice === 'with rows' ? plan.added : [];
    const cells = choice === 'with rows' ? plan.cells.withRows : plan.cells.here;
    book.rows.put(`paste ${counted(cells, 'cell')}`, view.id, undefined, added, plan.entries);
    const left = plan.rows.reduce((sum, { length }) => sum + length, 0) - cells;
    const rest = left === 0 ? '' : ` ${counted(left, 'cell')} had no place to go here.`;
    send(this, 'say', `${counted(cells, 'cell') || 'No cell'} pasted.${rest}`);
  }

  private readonly sortOn = () => {
    const { column } = this.hand;
    if (this.whole && column) this.order.sortBy(this.whole, column.id);
    this.requestUpdate();
  };

  private sift(sieve: Sieve | undefined) {
    if (this.whole) this.order.sift(this.whole, sieve);
    this.requestUpdate();
  }

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

/** What is known of the sheet until it changes. */
interface Known {
  readonly version: number;
  readonly more: boolean;
  readonly columns: readonly ColumnView[];
  /** Ids of the rows where a stop stands. */
  readonly stopped: ReadonlySet<string>;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-grid': Grid;
  }
}
