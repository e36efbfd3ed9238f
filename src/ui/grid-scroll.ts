import type { ReactiveController } from 'lit';
import type { GridHost } from './grid-host.ts';
import { ALL_DRAWN_UP_TO } from './grid-window.ts';

/** How far a grid is scrolled, and how much of it is seen; lengths in px. */
export class GridScroll implements ReactiveController {
  scrollTop = 0;
  viewHeight = 600;
  rowHeight = 34;

  private readonly grid: GridHost;
  private readonly measured = new ResizeObserver(() => {
    this.measure();
  });
  private observed: Element | null = null;

  constructor(grid: GridHost) {
    this.grid = grid;
    grid.addController(this);
  }

  /** Rows that a page key goes. */
  get page(): number {
    return Math.max(1, Math.floor(this.viewHeight / this.rowHeight) - 3);
  }

  hostUpdated(): void {
    const { scroller } = this;
    if (this.observed || !scroller) return;
    this.observed = scroller;
    this.measured.observe(scroller);
    // Its width follows the columns that are shown.
    const columns = scroller.querySelector('.columns');
    if (columns) this.measured.observe(columns);
  }

  hostDisconnected(): void {
    this.measured.disconnect();
    this.observed = null;
  }

  readonly note = (): void => {
    const { scroller } = this;
    if (scroller) this.stick(scroller);
    if (!scroller || (this.grid.view?.rowCount ?? 0) <= ALL_DRAWN_UP_TO) return;
    this.scrollTop = scroller.scrollTop;
    this.grid.requestUpdate();
  };

  private get scroller(): HTMLElement | null {
    return this.grid.renderRoot.querySelector('.scroller');
  }

  private stick({ classList, scrollLeft, scrollWidth, clientWidth }: HTMLElement): void {
    classList.toggle('past-first', scrollLeft > 0);
    classList.toggle('before-answer', scrollLeft + clientWidth < scrollWidth - 20);
  }

  private measure(): void {
    const { scroller } = this;
    const { renderRoot: root } = this.grid;
    const row = parseFloat(getComputedStyle(this.grid).getPropertyValue('--row'));
    const head = root.querySelector('.head');
    const first = root.querySelector('.head .first');
    if (!scroller || !head || !first) return;
    // Focus must not land under the head that stays or the column that stays (WCAG 2.2, 2.4.11).
    scroller.style.setProperty('--head-height', `${String(head.clientHeight)}px`);
    scroller.style.setProperty('--first-width', `${String(first.clientWidth)}px`);
    const answer = root.querySelector('.head .answer');
    scroller.style.setProperty('--answer-width', `${String(answer?.clientWidth ?? 0)}px`);
    this.stick(scroller);
    // Without a cell to take the focus, what is too wide is reached as a whole.
    const isReached = this.grid.view?.rowCount === 0 && scroller.scrollWidth > scroller.clientWidth;
    if (isReached) scroller.tabIndex = 0;
    else scroller.removeAttribute('tabindex');
    this.viewHeight = scroller.clientHeight;
    this.rowHeight = row > 0 ? row : 34;
    this.grid.requestUpdate();
  }
}
