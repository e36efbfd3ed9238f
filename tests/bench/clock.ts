/** The least time each act took, in ms. The acts take turns, so that a busy moment of the machine falls on all alike. */
export function leastTimes<Name extends string>(
  acts: Readonly<Record<Name, () => void>>,
  { rounds = 12, atLeastMs = 4 }: { readonly rounds?: number; readonly atLeastMs?: number } = {},
): Record<Name, number> {
  const names = Object.keys(acts) as Name[];
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
