/** Headers that somebody settled: the column's id, or null for none. */
export type Settled = ReadonlyMap<string, string | null>;

const KEPT_UNDER = 'backplumb-headers';
/** As many shapes of files as are remembered; the oldest goes first. */
const MOST_SHAPES = 60;

/** What was settled for the last file with these headers; empty where nothing was. */
export function settledBefore(shape: string): Settled {
  const found = shapes().find(([known]) => known === shape);
  return new Map(found?.[1] ?? []);
}

/** Remembers on this device what was settled for files with these headers. */
export function rememberSettled(shape: string, settled: Settled): void {
  const others = shapes().filter(([known]) => known !== shape);
  const kept = settled.size === 0 ? others : [...others, [shape, [...settled]] as const];
  try {
    localStorage.setItem(KEPT_UNDER, JSON.stringify(kept.slice(-MOST_SHAPES)));
  } catch {
    // A browser that keeps nothing asks again with the next file.
  }
}

type Shape = readonly [shape: string, settled: readonly (readonly [string, string | null])[]];

function shapes(): readonly Shape[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT_UNDER) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isShape) : [];
  } catch {
    return [];
  }
}

function isShape(value: unknown): value is Shape {
  if (!Array.isArray(value) || typeof value[0] !== 'string' || !Array.isArray(value[1]))
    return false;
  return value[1].every(
    (pair: unknown) =>
      Array.isArray(pair) &&
      typeof pair[0] === 'string' &&
      (pair[1] === null || typeof pair[1] === 'string'),
  );
}
