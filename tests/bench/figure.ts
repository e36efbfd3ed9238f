/** One line of the bench's table. */
export interface Figure {
  /** Which part of the work it belongs to, such as `graph`. */
  readonly part: string;
  /** What was measured. */
  readonly what: string;
  /** Of how much: `10,000 posts`. */
  readonly size: string;
  /** What it came to, in words with its unit. */
  readonly found: string;
  /** What it is held against, and what that came to in the same run. */
  readonly against: string;
  /** Found over floor, or the other way round where more is better; undefined where nothing is compared. */
  readonly ratio: number | undefined;
  /** What was wanted, such as `at most 8`; blank where nothing was. */
  readonly goal: string;
  readonly met: boolean | undefined;
  /** How it was measured, in one line. */
  readonly how: string;
}

/** Cost against the amount of work, for the chart. */
export interface Curve {
  readonly name: string;
  /** [posts, milliseconds] */
  readonly points: readonly (readonly [number, number])[];
}

/** What one part of the bench found. */
export interface Findings {
  readonly figures: readonly Figure[];
  readonly curves: readonly Curve[];
}

/** A figure whose ratio must not be more than this. */
export function atMost(
  most: number,
  ratio: number,
  figure: Omit<Figure, 'ratio' | 'goal' | 'met'>,
): Figure {
  return { ...figure, ratio, goal: `at most ${String(most)}`, met: ratio <= most };
}

/** A figure whose ratio must not be less than this. */
export function atLeast(
  least: number,
  ratio: number,
  figure: Omit<Figure, 'ratio' | 'goal' | 'met'>,
): Figure {
  return { ...figure, ratio, goal: `at least ${String(least)}`, met: ratio >= least };
}

/** A figure that is told and not judged. */
export function told(figure: Omit<Figure, 'ratio' | 'goal' | 'met'>, ratio?: number): Figure {
  return { ...figure, ratio, goal: '', met: undefined };
}

/** How cost grows with the work: the exponent over the ends of a curve, 1 where it grows in step. */
export function slope({ points }: Curve): number {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || first === last) return NaN;
  return Math.log(last[1] / first[1]) / Math.log(last[0] / first[0]);
}

/** Milliseconds as people read them. */
export function inTime(ms: number): string {
  if (ms >= 1000) return `${(ms / 1000).toFixed(1)} s`;
  if (ms >= 10) return `${ms.toFixed(0)} ms`;
  return ms >= 0.1 ? `${ms.toFixed(2)} ms` : `${(ms * 1000).toFixed(1)} µs`;
}

/** A count with its thousands apart. */
export function inCount(count: number): string {
  return Math.round(count).toLocaleString('en-US');
}
