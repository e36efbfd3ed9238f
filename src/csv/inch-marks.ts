import { closingQuote, type Delimiter } from './delimiter.ts';

/** The cells of one line whose quotes do not pair: a quote that nothing on the line closes is taken as an inch mark. */
export function splitByHand(
  line: string,
  { delimiter, cells: usual }: Delimiter,
): readonly string[] {
  return inchCells(line, { delimiter, cells: usual }) ?? split(line, delimiter, []);
}

/**
 * The cells of one line where quotes round several cells at once are taken as inch marks; undefined where that does not
 * make it as wide as the others.
 */
export function inchCells(
  line: string,
  { delimiter, cells: usual }: Delimiter,
): readonly string[] | undefined {
  const readings = [[opensTwice], [opensTwice, runTogether]];
  return readings
    .map((marks) => split(line, delimiter, marks))
    .find((cells) => cells.length === usual);
}

type IsInches = (inside: string, delimiter: string) => boolean;

function split(line: string, delimiter: string, inches: readonly IsInches[]): string[] {
  const cells: string[] = [];
  let at = 0;
  for (;;) {
    const end = line[at] === '"' ? closingQuote(line, delimiter, at + 1) : undefined;
    const inside = end === undefined ? '' : line.slice(at + 1, end);
    if (end !== undefined && !inches.some((are) => are(inside, delimiter))) {
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

/** Whether a quoted cell is rather a measurement whose quote nothing closed before another cell opened its own. */
function opensTwice(inside: string, delimiter: string): boolean {
  const [first = ''] = inside.split(delimiter);
  return first !== inside && MEASURE.test(first) && inside.includes(`${delimiter}"`);
}

const MEASURE = /^[\d\s.,/'"-]*$/;

/** Without the pair of quotes round the whole cell, as in `"6'-0""`. */
function unwrapped(cell: string): string {
  return cell.length > 2 && cell.startsWith('"') && cell.endsWith('"')
    ? cell.slice(1, -1).replaceAll('""', '"')
    : cell;
}
