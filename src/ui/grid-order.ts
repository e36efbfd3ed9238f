import type { GridHost } from './grid-host.ts';
import { likeThis, stillOpen } from './row-order.ts';
import type { Sieve } from './row-sorting.ts';

/** Sorts the rows of a grid and sifts them, by the cell that is current. */
export class GridOrder {
  private readonly grid: GridHost;

  constructor(grid: GridHost) {
    this.grid = grid;
  }

  sortBy(way: 'ascending' | 'descending' | undefined): void {
    const { whole, hand, order } = this.grid;
    if (whole && hand.column) order.sort(whole, way && { column: hand.column.id, way });
    this.grid.drawAndFocus();
  }

  /** Goes on to the next way of sorting by the current column. */
  readonly sortOn = (): void => {
    const { whole, hand, order } = this.grid;
    if (whole && hand.column) order.sortBy(whole, hand.column.id);
    this.grid.requestUpdate();
  };

  onlyLikeThis(): void {
    const { view, hand } = this.grid;
    if (view && hand.column) this.sift(likeThis(view, hand.at.row, hand.column.id));
  }

  onlyOpen(): void {
    this.sift(stillOpen(this.grid.columns.map(({ id }) => id)));
  }

  allRows(): void {
    this.sift(undefined);
  }

  sift(sieve: Sieve | undefined): void {
    const { whole, order } = this.grid;
    if (whole) order.sift(whole, sieve);
    this.grid.requestUpdate();
  }
}
