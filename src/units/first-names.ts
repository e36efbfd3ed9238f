/** So many are named before the rest are counted. */
const MOST_NAMED = 12;

/** The first of some names, and how many more there are: `3, 4, 7 and 20 more`. */
export function firstNames(names: readonly string[]): string {
  const more = names.length - MOST_NAMED;
  return `${names.slice(0, MOST_NAMED).join(', ')}${more > 0 ? ` and ${String(more)} more` : ''}`;
}
