/** As wide as a small panel may be. [px] */
const WIDEST = 420;

/** Where a small panel stands: under its cell where there is room, else above it; never off the page. */
export function placeBeside(cell: Element, isUnder?: boolean): string {
  const { left, top, bottom } = cell.getBoundingClientRect();
  const fromLeft = Math.max(8, Math.min(left, innerWidth - WIDEST - 8));
  return (isUnder ?? bottom < innerHeight * 0.6)
    ? `left:${px(fromLeft)};top:${px(bottom + 4)};right:auto;bottom:auto`
    : `left:${px(fromLeft)};top:auto;right:auto;bottom:${px(innerHeight - top + 4)}`;
}

function px(length: number): string {
  return `${String(Math.round(length))}px`;
}
