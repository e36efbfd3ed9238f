import { nearest, problem, type Problem } from '../units/index.ts';
import type { IntakeColumn } from './intake.ts';
import type { Table } from './tables.ts';
import { foldedText } from './words.ts';

/** What is wrong with the headers somebody settled; undefined where every one of them is in the file and fills a column. */
export function settledProblem(
  settled: ReadonlyMap<string, string | null>,
  tables: readonly Table[],
  sheet: readonly IntakeColumn[],
): Problem | undefined {
  const headers = tables.flatMap(({ head }) => head.headers);
  const folded = new Set(headers.map(foldedText));
  const ids = sheet.map(({ id }) => id);
  // A width and a depth in one cell.
  if (ids.includes('footing_width')) ids.push('footing');
  for (const [header, column] of settled) {
    if (!headers.includes(header) && !folded.has(foldedText(header))) {
      return problem(
        '',
        `The file has no column headed “${header}”.`,
        offer(nearestHeader(header, headers)),
      );
    }
    if (column !== null && !ids.includes(column)) {
      return problem(
        '',
        `“${column}”, settled for the header “${header}”, is no column of the posts sheet.`,
        offer(nearest(column, ids)),
      );
    }
  }
  return undefined;
}

function nearestHeader(header: string, headers: readonly string[]): string | undefined {
  const close = nearest(header, headers);
  const words = foldedText(header).split(' ');
  return (
    close ??
    headers.find((known) =>
      foldedText(known)
        .split(' ')
        .some((word) => words.includes(word)),
    ) ??
    headers[0]
  );
}

function offer(name: string | undefined): string {
  return name === undefined ? 'Check its spelling.' : `Did you mean “${name}”?`;
}
