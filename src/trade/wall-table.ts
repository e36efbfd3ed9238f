/** Force coefficients over B/s (columns) and s/h (rows), both ascending, linear between and level beyond the ends. */
export interface CoefficientTable {
  readonly lengthRatios: readonly number[];
  readonly heightRatios: readonly number[];
  readonly rows: readonly (readonly number[])[];
}

/** Net force coefficient of a solid freestanding wall, Cases A and B: ASCE 7-16 Fig. 29.3-1. */
export const CASES_A_AND_B: CoefficientTable = {
  lengthRatios: [0.05, 0.1, 0.2, 0.5, 1, 2, 4, 5, 10, 20, 30, 45],
  heightRatios: [0.16, 0.2, 0.3, 0.5, 0.7, 0.9, 1],
  // The printed rows, from the bottom up.
  rows: [
    [1.95, 1.9, 1.85, 1.85, 1.8, 1.8, 1.85, 1.85, 1.85, 1.9, 1.9, 1.95],
    [1.95, 1.9, 1.85, 1.8, 1.8, 1.8, 1.8, 1.8, 1.85, 1.9, 1.9, 1.95],
    [1.95, 1.9, 1.85, 1.8, 1.8, 1.8, 1.8, 1.8, 1.8, 1.85, 1.85, 1.85],
    [1.95, 1.85, 1.8, 1.75, 1.75, 1.7, 1.7, 1.7, 1.7, 1.7, 1.7, 1.75],
    [1.9, 1.85, 1.75, 1.7, 1.65, 1.6, 1.6, 1.55, 1.55, 1.55, 1.55, 1.55],
    [1.85, 1.75, 1.7, 1.6, 1.55, 1.5, 1.45, 1.45, 1.4, 1.4, 1.4, 1.4],
    [1.8, 1.7, 1.65, 1.55, 1.45, 1.4, 1.35, 1.35, 1.3, 1.3, 1.3, 1.3],
  ],
};

/** One stretch of wall of Case C, counted in heights s from the windward end. */
export interface EndRegion {
  readonly from: number;
  readonly to: number;
  /** One value for each of `END_LENGTH_RATIOS`; null, before all others, where so short a wall has no such region. */
  readonly values: readonly (number | null)[];
}

/** The B/s at which Case C is tabulated. */
const END_LENGTH_RATIOS: readonly number[] = [2, 3, 4, 5, 6, 7, 8, 9, 10, 13, 45];

/** Net force coefficient by region, Case C, before the factor for s/h: ASCE 7-16 Fig. 29.3-1. */
export const CASE_C: readonly EndRegion[] = [
  { from: 0, to: 1, values: [2.25, 2.6, 2.9, 3.1, 3.3, 3.4, 3.55, 3.65, 3.75, 4, 4.3] },
  { from: 1, to: 2, values: [1.5, 1.7, 1.9, 2, 2.15, 2.25, 2.3, 2.35, 2.45, 2.6, 2.55] },
  { from: 2, to: 3, values: [null, 1.15, 1.3, 1.45, 1.55, 1.65, 1.7, 1.75, 1.85, 2, 1.95] },
  { from: 3, to: 4, values: [null, null, 1.1, 1.05, 1.05, 1.05, 1.05, 1, 0.95, 1.5, 1.85] },
  { from: 4, to: 5, values: [null, null, 1.1, 1.05, 1.05, 1.05, 1.05, 1, 0.95, 1.35, 1.85] },
  { from: 5, to: 10, values: [null, null, 1.1, 1.05, 1.05, 1.05, 1.05, 1, 0.95, 0.9, 1.1] },
  {
    from: 10,
    to: Infinity,
    values: [null, null, null, null, null, null, null, null, null, 0.55, 0.55],
  },
];

/** The table's value at B/s and s/h, linear both ways. */
export function coefficientAt(
  { lengthRatios, heightRatios, rows }: CoefficientTable,
  lengthRatio: number,
  heightRatio: number,
): number {
  return interpolate(heightRatios, heightRatio, (at) => {
    const row = rows[at];
    return interpolate(lengthRatios, lengthRatio, (column) => row?.[column] ?? NaN);
  });
}

/** A region's coefficient at B/s; next to a column without a value, the other column's value holds. */
export function endCoefficientAt({ values }: EndRegion, lengthRatio: number): number {
  const first = values.findIndex((value) => value !== null);
  return interpolate(END_LENGTH_RATIOS, lengthRatio, (column) => values[column] ?? NaN, first);
}

/** Linear between the points, level beyond the first and last; `xs` ascend, and `first` is the place of the first point. */
function interpolate(
  xs: readonly number[],
  x: number,
  y: (at: number) => number,
  first = 0,
): number {
  let right = first;
  while (right < xs.length && !((xs[right] ?? NaN) >= x)) right += 1;
  if (right === xs.length) return y(right - 1);
  const y1 = y(right);
  if (right === first) return y1;
  const [x0, x1] = [xs[right - 1] ?? NaN, xs[right] ?? NaN];
  const y0 = y(right - 1);
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
