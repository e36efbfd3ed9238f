/** Up to this many rows all are drawn, so that the browser's own find and print see them. */
export const ALL_DRAWN_UP_TO = 200;

/** Rows drawn above and below the visible ones, so that quick scrolling shows no gap. */
const SPARE = 8;

/** What the window is worked out from; lengths in px. */
export interface Scrolled {
  readonly rows: number;
  readonly rowHeight: number;
  readonly scrollTop: number;
  readonly viewHeight: number;
  /** The focused row: it stays drawn wherever the page is scrolled, or it would lose the focus. */
  readonly pinned: number;
}

/** A row to draw, or the height of the rows between that are not. */
export type Strip =
  { readonly key: string; readonly row: number } | { readonly key: string; readonly gap: number };

/** The rows to draw and the gaps between them, from top to bottom. */
export function stripsOf(scrolled: Scrolled, keys: RowKeys): readonly Strip[] {
  const { rows, rowHeight, pinned } = scrolled;
  const drawn = drawnRows(scrolled);
  keys.giveTo(drawn, pinned);
  const strips: Strip[] = [];
  let next = 0;
  for (const row of drawn) {
    // A gap's key says which side of the pinned row it is on, so that no drawn row is ever moved
    // in the page: a moved row loses the focus.
    if (row > next)
      strips.push({ key: `gap-${gapName(row, pinned)}`, gap: (row - next) * rowHeight });
    strips.push({ key: keys.of(row), row });
    next = row + 1;
  }
  if (rows > next) strips.push({ key: 'gap-below', gap: (rows - next) * rowHeight });
  return strips;
}

/**
 * Which element draws which row. Rows that stay drawn keep theirs; where most are others, as in a quick
 * scroll, the elements that are there are filled anew, which is sooner done than making them.
 */
export class RowKeys {
  private keys: ReadonlyMap<number, string> = new Map();
  private made = 0;

  of(row: number): string {
    return this.keys.get(row) ?? '';
  }

  /** Gives rows, from top to bottom, their keys. The pinned row has the focus: among its neighbors nothing is filled anew, so that it is not moved. */
  giveTo(rows: readonly number[], pinned: number): void {
    const before = this.keys;
    const staying = rows.filter((row) => before.has(row)).length;
    const isJump =
      staying * 2 < rows.length &&
      [pinned - 1, pinned + 1].every((row) => !before.has(row) && !rows.includes(row));
    const free = (isAbove: boolean) =>
      isJump
        ? [...before].flatMap(([row, key]) =>
            row !== pinned && row < pinned === isAbove ? [key] : [],
          )
        : [];
    const [above, below] = [free(true), free(false)];
    const pick = (row: number) =>
      isJump && row !== pinned ? (row < pinned ? above : below).shift() : before.get(row);
    this.keys = new Map(rows.map((row) => [row, pick(row) ?? `row-${String((this.made += 1))}`]));
  }
}

function gapName(before: number, pinned: number): string {
  if (before === pinned) return 'above-pinned';
  return before < pinned ? 'above' : 'after-pinned';
}

function drawnRows({ rows, rowHeight, scrollTop, viewHeight, pinned }: Scrolled): number[] {
  if (rows <= ALL_DRAWN_UP_TO) return Array.from({ length: rows }, (_, row) => row);
  const first = Math.max(0, Math.floor(scrollTop / rowHeight) - SPARE);
  const end = Math.min(rows, Math.ceil((scrollTop + viewHeight) / rowHeight) + SPARE);
  const drawn = Array.from({ length: Math.max(0, end - first) }, (_, place) => first + place);
  if (pinned >= 0 && pinned < first) return [pinned, ...drawn];
  if (pinned >= end && pinned < rows) return [...drawn, pinned];
  return drawn;
}
