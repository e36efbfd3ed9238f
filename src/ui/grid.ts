import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { BookView, ChangedRows, ColumnView, SheetView, Stop } from '../worksheet/index.ts';
import { cellStyles } from './cell.ts';
import { ColumnHabits } from './column-habits.ts';
import { FollowBook } from './follow-book.ts';
import { GridAskPanel } from './grid-ask-panel.ts';
import { GridDeeds } from './grid-deeds.ts';
import { editorStyles } from './grid-editor.ts';
import { GridFind } from './grid-find.ts';
import { gridFoot } from './grid-foot.ts';
import { GridHand } from './grid-hand.ts';
import type { GridHost } from './grid-host.ts';
import { typingKey, walkingKey, type SheetDeed } from './grid-keys.ts';
import { GridMenuPanel } from './grid-menu-panel.ts';
import { menuStyles, type MenuGrid } from './grid-menu.ts';
import { GridOrder } from './grid-order.ts';
import { GridPaste } from './grid-paste.ts';
import { GridPointer } from './grid-pointer.ts';
import { gridHead, gridRow, gridTotals, type GridSight } from './grid-rows.ts';
import { GridScroll } from './grid-scroll.ts';
import { gridStyles } from './grid-styles.ts';
import { GridTracks } from './grid-tracks.ts';
import { RowKeys, stripsOf } from './grid-window.ts';
import { byRow, RowFreshness } from './row-freshness.ts';
import { rowOf } from './row-of.ts';
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
export class Grid extends LitElement implements GridHost, MenuGrid {
  static override styles = [base, cellStyles, gridStyles, editorStyles, menuStyles];

  @property({ attribute: false }) book: BookView | undefined;
  /** The id of the sheet to show. */
  @property() sheet = '';
  /** The id of the row that is current on the page, which may be set from outside. */
  @property() current = '';

  /** The sheet as it was read and as last drawn, and the columns shown of it. */
  whole: SheetView | undefined;
  view: SheetView | undefined;
  columns: readonly ColumnView[] = [];

  readonly order = new RowOrder(() => {
    this.requestUpdate();
  });
  habits = new ColumnHabits('');
  readonly hand = new GridHand(this);
  readonly deeds = new GridDeeds(this);
  readonly ordering = new GridOrder(this);
  readonly finding = new GridFind(this, this.ordering);

  @state() private more = false;
  @state() private used = false;

  @query('.editor') private readonly editor!: HTMLInputElement | HTMLSelectElement | null;
  @query('.cell.current') readonly currentCell!: HTMLElement | null;

  private readonly scrolled = new GridScroll(this);
  private readonly tracks = new GridTracks();
  private readonly rowKeys = new RowKeys();
  /** Rows that may have outgrown their columns. */
  private readonly unfitted = new Set<string>();
  private readonly pasting = new GridPaste(this);
  private readonly menu = new GridMenuPanel(this);
  private readonly asking = new GridAskPanel(this);
  private readonly pointer = new GridPointer(this);
  private known: Known | undefined;
  private lit: { of: ReadonlySet<string>; rows: ReadonlyMap<string, ReadonlySet<string>> } = {
    of: new Set(),
    rows: new Map(),
  };
  private readonly fresh = new RowFreshness();
  private readonly follow = new FollowBook(
    this,
    () => this.book,
    ({ rows }) => {
      this.hear(rows);
    },
  );

  get page(): number {
    return this.scrolled.page;
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

  draw(): void {
    this.requestUpdate();
    this.performUpdate();
  }

  drawAndFocus(): void {
    this.draw();
    (this.editor ?? this.currentCell)?.focus({ preventScroll: true });
    this.bringIntoView();
  }

  bringIntoView(): void {
    // Focus alone stops scrolling once any part of the cell is in sight, also under the head.
    this.currentCell?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  shownWidth(column: string): number {
    const place = this.columns.findIndex(({ id }) => id === column);
    const head = this.renderRoot.querySelector(`.head [data-column='${String(place)}']`);
    return head?.getBoundingClientRect().width ?? 0;
  }

  placeOfRow(id: string): number {
    return rowOf(this.view, id);
  }

  protected override willUpdate(changed: PropertyValues) {
    if (changed.has('sheet')) {
      this.habits = new ColumnHabits(this.sheet);
      this.hear(undefined);
    }
    this.whole = this.book?.sheet(this.sheet);
    const { version } = this.follow;
    this.view = this.whole && this.order.seen(this.whole, version);
    if (
      this.known?.version !== version ||
      this.known.more !== this.more ||
      changed.has('sheet') ||
      changed.has('book')
    )
      this.known = this.lookAround(version);
    const columns = this.habits.shown(this.known.columns);
    // The same columns as before leave every row as it is drawn.
    if (!isSame(columns, this.columns)) this.columns = columns;
    if (!changed.has('current') || this.current === this.hand.rowId()) return;
    const row = this.placeOfRow(this.current);
    if (row >= 0) this.hand.at = { ...this.hand.at, row };
  }

  protected override render() {
    const { view, columns, hand, pointer, pasting, scrolled } = this;
    if (!view) return nothing;
    const sight = this.sightOf(view);
    const { scrollTop, viewHeight, rowHeight } = scrolled;
    const window = { scrollTop, viewHeight, rowHeight, rows: view.rowCount, pinned: hand.at.row };
    const strips = stripsOf(window, this.rowKeys);
    for (const strip of strips)
      if ('row' in strip && this.unfitted.delete(view.rowId(strip.row)))
        this.tracks.fit(view, columns, strip.row);
    this.unfitted.clear();
    return html`
      ${this.finding.render()}
      <div class="scroller" @scroll=${scrolled.note} @focusin=${() => (this.used = true)}>
        <div class="columns" .style=${this.tracks.style(view, columns, this.habits)}>
          <div
            role="grid"
            aria-label=${view.title}
            aria-rowcount=${view.rowCount + 1}
            aria-colcount=${columns.length}
            aria-multiselectable="true"
            @keydown=${this.pressKey}
            @pointerdown=${pointer.press}
            @click=${pointer.click}
            @contextmenu=${this.menu.openAt}
            @focusout=${this.leaveField}
            @copy=${pasting.copy}
            @cut=${pasting.cut}
            @paste=${pasting.paste}
          >
            ${gridHead(sight)}
            ${repeat(
              strips,
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
      ${this.renderFoot(view)} ${this.asking.render()} ${this.menu.render()} ${pasting.render()}
    `;
  }

  private renderFoot(view: SheetView): TemplateResult {
    const { hand, order, more, used, ordering, deeds } = this;
    const choosing = hand.anchor && hand.editing !== undefined ? positionsOf(hand.block).length : 0;
    const { column, cell } = hand;
    return gridFoot(
      {
        view,
        column,
        cell,
        row: hand.at.row,
        more,
        used,
        order,
        choosing,
        hidden: this.known?.hidden ?? 0,
      },
      {
        showMore: () => (this.more = !this.more),
        addRow: () => {
          deeds.addRow();
        },
        removeRow: () => {
          deeds.removeRow();
        },
        showWorking: () => {
          hand.showWorking();
        },
        sort: ordering.sortOn,
        sift: () => {
          if (order.sieve) ordering.allRows();
          else ordering.onlyLikeThis();
        },
        openMenu: () => {
          this.menu.open();
        },
        find: () => {
          this.finding.open();
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
      changed: this.changedHere(),
      fresh: this.fresh,
      set: this.habits.set,
      isLong: (column, cell) => this.tracks.isLong(column, cell, this.habits),
      stopped: this.known?.stopped ?? new Set(),
    };
  }

  private changedHere(): ReadonlyMap<string, ReadonlySet<string>> {
    const { changed } = this.follow;
    if (this.lit.of !== changed) this.lit = { of: changed, rows: byRow(changed, this.sheet) };
    return this.lit.rows;
  }

  private hear(rows: ChangedRows | undefined): void {
    // Stops and asks stand in no cell.
    if (rows?.size === 0) return;
    const here = rows ? (rows.get(this.sheet) ?? NONE) : 'all';
    this.fresh.note(here);
    if (here === 'all') this.tracks.forget(this.view);
    else for (const id of here) this.unfitted.add(id);
  }

  /** What has to be looked for in many rows, found out once a change. */
  private lookAround(version: number): Known {
    const { view, more } = this;
    const stops = this.book?.stops({ level: 'stop', sheet: view?.id ?? '' }) ?? [];
    const all = view?.columns ?? [];
    const first = view ? shownColumns(view, false) : [];
    return {
      version,
      more,
      columns: more ? all : first,
      hidden: all.length - first.length,
      stops,
      stopped: this.known?.stops === stops ? this.known.stopped : rowsOf(stops),
    };
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
    if (deed === 'openMenu') this.menu.open();
    else if (deed === 'find') this.finding.open();
    else if (deed === 'findNext') this.finding.step(1);
    else if (deed === 'findBefore') this.finding.step(-1);
    else this.deeds[deed]();
  }

  private leaveField(event: FocusEvent) {
    if (event.target === this.editor) this.hand.leave();
  }
}

const NONE: ReadonlySet<string> = new Set();

function rowsOf(stops: readonly Stop[]): ReadonlySet<string> {
  return new Set(stops.flatMap(({ row }) => row ?? []));
}

function isSame<T>(some: readonly T[], others: readonly T[]): boolean {
  return some.length === others.length && some.every((one, at) => one === others[at]);
}

/** What is known of the sheet until it changes. */
interface Known {
  readonly version: number;
  readonly more: boolean;
  readonly columns: readonly ColumnView[];
  readonly hidden: number;
  readonly stops: readonly Stop[];
  /** Ids of the rows where a stop stands. */
  readonly stopped: ReadonlySet<string>;
}

declare global {
  interface HTMLElementTagNameMap {
    'bp-grid': Grid;
  }
}
