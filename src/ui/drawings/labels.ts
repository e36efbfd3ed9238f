/** A label that may have to give way to its neighbors. */
export interface Label {
  readonly x: number;
  readonly text: string;
  /** The higher stays where two would overlap. */
  readonly rank: number;
}

/** Which labels of a row can stand beside each other, by their place in the list. */
export function labelsThatFit(labels: readonly Label[]): ReadonlySet<number> {
  const kept: { readonly from: number; readonly to: number }[] = [];
  const fit = new Set<number>();
  const order = labels.map((_, index) => index).sort((a, b) => rank(b) - rank(a) || a - b);
  for (const index of order) {
    const label = labels[index];
    if (!label || label.text === '') continue;
    const half = textWidth(label.text) / 2;
    const span = { from: label.x - half, to: label.x + half };
    if (kept.some(({ from, to }) => span.from < to && from < span.to)) continue;
    kept.push(span);
    fit.add(index);
  }
  return fit;

  function rank(index: number): number {
    return labels[index]?.rank ?? 0;
  }
}

/** Heights for labels that would like to stand at `wanted`, moved apart to at least `gap`, order kept. */
export function spreadApart(wanted: readonly number[], gap: number): readonly number[] {
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y);
  const placed = [...wanted];
  let last = -Infinity;
  for (const { y, index } of order) {
    last = Math.max(y, last + gap);
    placed[index] = last;
  }
  return placed;
}

/** About how wide a text stands in the drawings' condensed face, with air to its neighbor. [px] */
export function textWidth(text: string): number {
  return text.length * 7.2 + 12;
}
