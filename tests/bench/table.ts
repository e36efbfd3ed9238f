import type { Figure } from './figure.ts';

const HEADS = ['part', 'what', 'size', 'found', 'against', 'ratio', 'goal', ''];

/** The figures as one table for a terminal. */
export function table(figures: readonly Figure[]): string {
  const rows = [HEADS, ...figures.map(cells)];
  const widths = HEADS.map((_, at) => Math.max(...rows.map((row) => (row[at] ?? '').length)));
  const lines = rows.map((row) =>
    row
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );
  lines.splice(1, 0, widths.map((width) => '-'.repeat(width)).join('  '));
  return lines.join('\n');
}

/** A line on how each figure was measured, those of several sizes once. */
export function methods(figures: readonly Figure[]): string {
  const lines = figures.map(({ part, what, how }) => `${part}, ${what}: ${how}.`);
  return [...new Set(lines)].join('\n');
}

function cells({ part, what, size, found, against, ratio, goal, met }: Figure): string[] {
  const verdict = met === undefined ? '' : met ? 'met' : 'MISSED';
  const shown = ratio === undefined ? '' : ratio >= 10 ? ratio.toFixed(0) : ratio.toFixed(2);
  return [part, what, size, found, against, shown, goal, verdict];
}
