import { describe, expect, it } from 'vitest';
import { RowOrder } from '../../src/ui/row-order.ts';
import type { SheetView } from '../../src/worksheet/index.ts';

describe('rows in another order', () => {
  it('are sorted by what the cells come to, without their words, and known blanks come last', () => {
    const { view, counts } = sheetOf([2, undefined, 3, 1]);
    const order = new RowOrder();
    order.sort(view, { column: 'gap', way: 'descending' });
    const seen = order.seen(view, 1);
    expect([0, 1, 2, 3].map((place) => seen.rowId(place))).toEqual(['r2', 'r0', 'r3', 'r1']);
    expect(['r0', 'r1', 'r2', 'r3', 'r9'].map((id) => seen.placeOf?.(id))).toEqual([1, 3, 0, 2, -1]); // prettier-ignore
    expect(seen.isFilled?.('gap', 500)).toBe(true);
    expect(counts.cell).toBe(0);
  });

  it('are not looked for again at a change that moves no row', () => {
    const { view, counts } = sheetOf([2, 5, 3, 1]);
    const order = new RowOrder();
    order.sort(view, { column: 'gap', way: 'ascending' });
    order.seen(view, 1);
    counts.rowId = 0;
    order.seen(view, 2);
    expect(counts.rowId).toBe(0);
    counts.version += 1;
    order.seen(view, 3);
    expect(counts.rowId).toBeGreaterThan(0);
  });
});

function sheetOf(values: readonly (number | undefined)[]) {
  const counts = { cell: 0, rowId: 0, version: 0 };
  const view = {
    id: 'posts',
    rowCount: values.length,
    get rowsVersion() {
      return counts.version;
    },
    rowId(row: number) {
      counts.rowId += 1;
      return `r${String(row)}`;
    },
    placeOf: (id: string) => values.findIndex((_, row) => `r${String(row)}` === id),
    value: (row: number) => values[row],
    isFilled: () => values.some((value) => value !== undefined),
    cell() {
      counts.cell += 1;
      return { state: 'blank', text: '' };
    },
  };
  return { view: view as unknown as SheetView, counts };
}
