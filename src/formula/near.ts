/** Two values this close, in proportion, count as equal: on the line is within it. */
export const NEAR = 1e-9;

/** What is left of terms that cancel to this share of the greater is rounding, and counts as zero. */
export const CANCELLED = 1e-12;

/** Whether two values count as equal; `scale` is the largest of the terms they were added from. */
export function near(a: number, b: number, scale: number): boolean {
  const gap = Math.abs(a - b);
  return gap <= NEAR * Math.abs(a) || gap <= NEAR * Math.abs(b) || gap <= NEAR * scale;
}

/** The whole number that x counts as, or x itself. */
export function settled(x: number, scale: number): number {
  const whole = Math.round(x);
  return near(x, whole, scale) ? whole : x;
}
