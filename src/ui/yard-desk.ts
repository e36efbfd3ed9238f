import type { Dialect, FileReport } from '../output/index.ts';
import type { Handout, OpenJob } from './desk.ts';

/** Lists for a yard, each written as it wants them. */
export interface YardDesk {
  readonly lists: readonly Handout[];
  /** The list as it would be saved. */
  text(job: OpenJob, list: string, dialect: Dialect): string;
  save(job: OpenJob, list: string, dialect: Dialect): void;
  /** The supplier's list as plain text, to paste in a message. */
  message(job: OpenJob): string;
}

/** The files that were brought into a job. */
export interface FilesDesk {
  /** What became of the lines of each. */
  reports(job: OpenJob): readonly FileReport[];
  /** The line that a row of the posts came from, as it stood in its file. */
  lineOf(job: OpenJob, row: string): Promise<string | undefined>;
  /** Gives a file out again, byte for byte. */
  giveBack(job: OpenJob, place: number): void;
}
