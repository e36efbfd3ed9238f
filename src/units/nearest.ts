/** The known name closest to a misspelt one, where one is close enough to be meant. */
export function nearest(name: string, known: readonly string[]): string | undefined {
  const wanted = name.toLowerCase();
  const allowed = Math.max(1, Math.floor(name.length / 3));
  let best: string | undefined;
  let least = allowed + 1;
  for (const candidate of known) {
    const distance = edits(wanted, candidate.toLowerCase(), least);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

// Levenshtein's distance, given up once it can't fall under `limit`.
function edits(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      next.push(Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + same));
    }
    if (Math.min(...next) >= limit) return limit;
    row = next;
  }
  return row[b.length] ?? limit;
}
