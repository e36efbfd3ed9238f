import type { CsvRecord } from '../csv/index.ts';

/** A line of a list that nothing is taken from, with its place in the file. */
export interface PassedListLine {
  readonly line: number;
  readonly why: string;
}

/** The lines of a list down to its head, which hold no rows. */
export function linesToHead(all: readonly CsvRecord[], head: number): PassedListLine[] {
  return all
    .slice(0, head + 1)
    .map(({ line }, at) => ({ line, why: at < head ? 'a line above the header' : 'the header' }));
}
