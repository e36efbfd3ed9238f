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
export function stripsOf(scrolled: Scrolled): readonly Strip[] {
  const { rows, rowHeight, pinned } = scrolled;
  const drawn = drawnRows(scrolled);
  const strips: Strip[] = [];
  let next = 0;
  for (const row of drawn) {
    // A gap's key says which side of the pinned row it is on, so that no drawn row is ever moved
    // in the page: a moved row loses the focus.
    if (row > next)
      strips.push({ key: `gap-${gapName(row, pinned)}`, gap: (row - next) * rowHeight });
    strips.push({ key: `row-${String(row)}`, row });
    next = row + 1;
  }
  if (rows > next) strips.push({ key: 'gap-below', gap: (rows - next) * rowHeight });
  return strips;
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
