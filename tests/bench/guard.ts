import type { Figure } from './figure.ts';

/**
 * Ratios that are stable enough to catch a slip on any machine. They are looked at with wide margins:
 * a busy machine may double a ratio; what is caught is a loop that became another kind of loop.
 */
const GUARDED: readonly { readonly what: RegExp; readonly atMost: number }[] = [
  { what: /columns of arithmetic$/, atMost: 24 },
  { what: /columns with trade functions$/, atMost: 6 },
  { what: /^one reading, the cells of its row$/, atMost: 12 },
  { what: /^memory a cell, (computed|entered)$/, atMost: 12.5 },
];

/** What slipped, in words; nothing where all is well. A guard that finds no figure has slipped too. */
export function slips(figures: readonly Figure[]): readonly string[] {
  return GUARDED.flatMap(({ what, atMost }) => {
    const found = figures.filter((figure) => what.test(figure.what));
    if (found.length === 0) return [`No figure is called ${String(what)}.`];
    return found
      .filter(({ ratio }) => ratio === undefined || !(ratio <= atMost))
      .map(
        (figure) =>
          `${figure.what}, ${figure.size}: ${String(figure.ratio)} and not ${String(atMost)} or less.`,
      );
  });
}
