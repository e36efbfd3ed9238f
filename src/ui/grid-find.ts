import { html, nothing, type TemplateResult } from 'lit';
import './find-bar.ts';
import type { FindBar, Found } from './find-bar.ts';
import type { GridHost } from './grid-host.ts';
import type { GridOrder } from './grid-order.ts';
import { oneOfRows } from './row-order.ts';

/** The bar over a grid that looks for words in all its cells. */
export class GridFind {
  private readonly grid: GridHost;
  private readonly ordering: GridOrder;
  private isOpen = false;

  constructor(grid: GridHost, ordering: GridOrder) {
    this.grid = grid;
    this.ordering = ordering;
  }

  open(): void {
    this.isOpen = true;
    this.grid.draw();
    this.bar?.focus();
  }

  /** Goes on to the next find or back to the one before; opens the bar where it is not there. */
  step(by: 1 | -1): void {
    if (this.isOpen) this.bar?.step(by);
    else this.open();
  }

  render(): TemplateResult | typeof nothing {
    const { view, columns } = this.grid;
    if (!this.isOpen || !view) return nothing;
    return html`<bp-find-bar
      .view=${view}
      .columns=${columns}
      @found=${({ detail }: CustomEvent<Found>) => {
        this.show(detail);
      }}
      @only-found=${({ detail }: CustomEvent<readonly string[]>) => {
        this.ordering.sift(oneOfRows('the rows found', detail));
      }}
      @put-away=${() => {
        this.isOpen = false;
        this.grid.drawAndFocus();
      }}
    ></bp-find-bar>`;
  }

  private get bar(): FindBar | null {
    return this.grid.renderRoot.querySelector('bp-find-bar');
  }

  /** Shows a cell as the current one and leaves the focus where it is. */
  private show({ row, column }: Found): void {
    const { grid } = this;
    const place = grid.placeOfRow(row);
    const across = grid.columns.findIndex(({ id }) => id === column);
    if (place < 0 || across < 0) return;
    grid.hand.anchor = undefined;
    grid.hand.at = { row: place, column: across };
    grid.draw();
    grid.bringIntoView();
  }
}
