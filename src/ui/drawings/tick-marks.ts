const ABOUT = 5;
const MOST = 50;
const STEPS = [1, 2, 2.5, 5, 10];

/** Where an axis starts and ends, and the steps it may be counted in, where that is settled. */
interface Settled {
  readonly from?: number;
  readonly to?: number;
  readonly steps?: readonly number[];
}

/** Round numbers that span the values, from the step below the least to the step above the greatest. */
export function tickMarks(
  values: readonly number[],
  { from, to, steps = [] }: Settled = {},
): readonly number[] {
  const finite = values.filter((value) => Number.isFinite(value));
  const least = from ?? Math.min(0, ...finite);
  const greatest = to ?? Math.max(...finite, least);
  const span = greatest - least;
  if (!(span > 0) || !Number.isFinite(span)) return [least, least + 1];
  const step = steps.find((each) => span / each <= ABOUT + 1) ?? roundStep(span / ABOUT);
  const first = Math.floor(least / step + 1e-9);
  const count = Math.ceil(greatest / step - 1e-9) - first;
  // A span too small for its numbers to be told apart has no steps.
  if (!(count > 0 && count <= MOST)) return [least, least + 1];
  return Array.from({ length: count + 1 }, (_, tick) =>
    Number(((first + tick) * step).toPrecision(12)),
  );
}

function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  return (STEPS.find((step) => step * power >= rough * (1 - 1e-9)) ?? 10) * power;
}
