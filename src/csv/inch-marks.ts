import { closingQuote, type Delimiter } from './delimiter.ts';

/** The cells of one line whose quotes do not pair: a quote that nothing on the line closes is taken as an inch mark. */
export function splitByHand(
  line: string,
  { delimiter, cells: usual }: Delimiter,
): readonly string[] {
  const inches = inchCells(line, delimiter);
  return inches.length === usual ? inches : split(line, delimiter, false);
}

/** The cells of one line where quotes round several measurements at once are taken as inch marks. */
export function inchCells(line: string, delimiter: string): readonly string[] {
  return split(line, delimiter, true);
}

function split(line: string, delimiter: string, measuresAreInches: boolean): string[] {
  const cells: string[] = [];
  let at = 0;
  for (;;) {
    const end = line[at] === '"' ? closingQuote(line, delimiter, at + 1) : undefined;
    const inside = end === undefined ? '' : line.slice(at + 1, end);
    if (end !== undefined && !(measuresAreInches && runTogether(inside, delimiter))) {
      cells.push(inside.replaceAll('""', '"'));
      at = end + 1;
      const next = line.indexOf(delimiter, at);
      if (next === -1) return cells;
      at = next + 1;
      continue;
    }
    const next = line.indexOf(delimiter, at);
    cells.push(unwrapped(next === -1 ? line.slice(at) : line.slice(at, next)));
    if (next === -1) return cells;
    at = next + 1;
  }
}

/** Whether a quoted cell is rather several measurements, or ditto marks, with a delimiter between them. */
function runTogether(inside: string, delimiter: string): boolean {
  const parts = inside.split(delimiter);
  return parts.length > 1 && MEASURE.test(parts[0] ?? '') && MEASURE.test(parts.at(-1) ?? '');
}

const MEASURE = /^[\d\s.,/'"-]*$/;

/** Without the pair of quotes round the whole cell, as in `"6'-0""`. */
function unwrapped(cell: string): string {
  return cell.length > 2 && cell.startsWith('"') && cell.endsWith('"')
    ? cell.slice(1, -1).replaceAll('""', '"')
    : cell;
}
