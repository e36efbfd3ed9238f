/** How acts are timed. */
export interface Timing {
  readonly rounds?: number;
  /** An act is repeated for so long before its time is taken, as a clock tick is too coarse for a short one. */
  readonly atLeastMs?: number;
  /** So long each act runs before anything is timed, so that the engine has compiled what it will. */
  readonly warmMs?: number;
}

/** The least time each act took, in ms. The acts take turns, so that a busy moment of the machine falls on all alike. */
export function leastTimes<Name extends string>(
  acts: Readonly<Record<Name, () => void>>,
  { rounds = 12, atLeastMs = 4, warmMs = 0 }: Timing = {},
): Record<Name, number> {
  const names = Object.keys(acts) as Name[];
  for (const name of names) {
    const until = performance.now() + warmMs;
    while (performance.now() < until) acts[name]();
  }
  const repeats = new Map(names.map((name) => [name, repeatsFor(acts[name], atLeastMs)]));
  const least = Object.fromEntries(names.map((name) => [name, Infinity])) as Record<Name, number>;
  for (let round = 0; round < rounds; round++) {
    for (const name of names) {
      const times = repeats.get(name) ?? 1;
      const began = performance.now();
      for (let each = 0; each < times; each++) acts[name]();
      least[name] = Math.min(least[name], (performance.now() - began) / times);
    }
  }
  return least;
}

/** The value that this share of the values do not exceed. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}

// A clock tick is too coarse for one short act; this also warms it up.
function repeatsFor(act: () => void, atLeastMs: number): number {
  for (let times = 1; ; times *= 2) {
    const began = performance.now();
    for (let each = 0; each < times; each++) act();
    if (performance.now() - began >= atLeastMs || times >= 4096) return times;
  }
}
