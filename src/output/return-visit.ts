import type { BookView } from '../worksheet/index.ts';
import { PLAIN_DIALECT, type Dialect } from './export-dialect.ts';
import { measuresIn } from './measure-in.ts';
import type { Table } from './table.ts';

/** One post read again, beside its first reading. Blank where it was not read. */
export interface ReturnLine {
  readonly post: string;
  /** What was done at it. */
  readonly work: string;
  readonly first: string;
  readonly again: string;
  /** Plus where it leans more than the first time. */
  readonly change: string;
  /** `plumb`, `out` or `not read`. */
  readonly proof: string;
  readonly readOn: string;
  readonly snag: string;
  readonly isPutRight: boolean;
  /** Whether it is still on the snag list. */
  readonly isOpen: boolean;
}

/** Every post, in the order of the run. */
export function returnLines(
  book: BookView,
  dialect: Dialect = PLAIN_DIALECT,
): readonly ReturnLine[] {
  const visit = book.sheet('return_visit');
  if (!visit) return [];
  const measures = measuresIn(book, dialect);
  return Array.from({ length: visit.rowCount }, (_, at) => {
    const row = visit.rowId(at);
    const of = (column: string): string => measures('return_visit', row, column);
    const over = (gap: string, level: string): string =>
      gap === '' || level === '' ? gap : `${gap} over ${level}`;
    return {
      post: visit.rowKey(at),
      work: measures('posts', row, 'work'),
      first: over(of('first_gap'), measures('posts', row, 'level_length')),
      again: over(of('total_again'), of('level_again')),
      change: of('change'),
      proof: of('proof'),
      readOn: of('read_on'),
      snag: of('snag'),
      isPutRight: of('put_right') === 'yes',
      isOpen: of('open_snag') === 'yes',
    };
  });
}

/** How many posts stand plumb, are out, or were not read, in words. */
export function proofWords(lines: readonly ReturnLine[]): string {
  const of = (proof: string): number => lines.filter((line) => line.proof === proof).length;
  const read = of('plumb') + of('out');
  return `${String(read)} of ${String(lines.length)} posts read again: ${String(of('plumb'))} plumb, ${String(of('out'))} out.`;
}

/** The return visit as a table. */
export function returnTable(book: BookView, dialect?: Dialect): Table {
  return [
    ['Post', 'Work', 'Gap first', 'Gap again', 'Change', 'Proof of plumb', 'Read on', 'Snag', 'Put right'],
    ...returnLines(book, dialect).map((line) => [
      line.post, line.work, line.first, line.again, line.change, line.proof, line.readOn, line.snag,
      line.isPutRight ? 'yes' : '',
    ]),
  ]; // prettier-ignore
}
