import type { PassedLine } from '../notebook/index.ts';
import type { Ask } from '../worksheet/index.ts';

/** What became of every line of a file: read = imported + asked + passed over. */
export interface Account {
  readonly read: number;
  readonly imported: number;
  /** Lines with at least one ask; their posts still stand on the sheet. */
  readonly asked: number;
  readonly passedOver: number;
}

/** Accounts for the lines of a file. Asks about the whole file have no line, and take none from the imported. */
export function accountFor(
  linesRead: number,
  passed: readonly PassedLine[],
  asks: readonly Ask[],
): Account {
  const asked = new Set(asks.flatMap(({ line }) => (line === undefined ? [] : [line]))).size;
  return {
    read: linesRead,
    imported: linesRead - passed.length - asked,
    asked,
    passedOver: passed.length,
  };
}

/** The account as it is told everywhere: on the screen, in the job's report and by the command line. */
export function accountWords({ read, imported, asked, passedOver }: Account): string {
  return `${String(read)} lines read = ${String(imported)} imported + ${String(asked)} asked about + ${String(passedOver)} passed over.`;
}
