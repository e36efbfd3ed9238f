import type { PassedLine } from '../notebook/index.ts';
import type { Choice, Kind } from '../units/index.ts';
import type { StoredRows } from './row-store.ts';

/** A column of the posts sheet that a file may fill. */
export interface IntakeColumn {
  readonly id: string;
  readonly label: string;
  readonly kind: Kind;
  /** The unit the sheet shows it in; blank where none applies. */
  readonly unit: string;
}

/** What the importer is told beside the file. */
export interface IntakeOptions {
  readonly columns: readonly IntakeColumn[];
  /** Headers somebody settled: the column's id, or null for a header that fits none. */
  readonly settled: ReadonlyMap<string, string | null>;
  /** Headers that our own lists print over what the sheets work out; two of them show a list of ours, and nothing under them is taken for an entry. */
  readonly workedOut?: readonly string[];
  /** Hears how far the reading has come, from 0 to 1. */
  readonly progress?: (share: number) => void;
}

/**
 * What a site file holds. Every line that is not blank is the first line of a row, part of one, or passed over. Where
 * the table lies on its side every row comes from the line of the post numbers, and a line not passed over is a reading
 * of each of them.
 */
export interface Intake {
  readonly rows: readonly IntakeRow[];
  /** The same rows as they go from one thread to another. */
  readonly stored: StoredRows;
  readonly asks: readonly FileAsk[];
  readonly passedOver: readonly PassedLine[];
  readonly mapping: readonly HeaderMapping[];
  /** The file's headers as one text: files of one shape were written by one hand. */
  readonly shape: string;
  /** Its lines are readings and its columns posts. */
  readonly turned: boolean;
  /** Whether the file lists posts with their readings, or holes to dig. */
  readonly layout: 'posts' | 'holes';
  /** Records that are not blank; one over two lines counts once. */
  readonly linesRead: number;
  /** What a person should know of how the file was read. */
  readonly notes: readonly string[];
}

/** One row of the file; every entry carries its own unit, or a question mark where nobody knows it. */
export interface IntakeRow {
  /** Its first line in the file. */
  readonly line: number;
  readonly cells: ReadonlyMap<string, string>;
  /** Cells that fit no column, by header, as they stand in the file. */
  readonly kept: ReadonlyMap<string, string>;
  /** Why an entry says more than its cell did, by column. */
  readonly assumed: ReadonlyMap<string, string>;
}

/** A question about a whole column of the file. */
export interface FileAsk {
  /**
   * `unit`: the column's bare numbers end in ` ?`, and a choice's entry is the unit; `missing`: the file has no such
   * column, and a choice's entry stands for its blanks; `header`: a choice's entry is the header to settle on it.
   */
  readonly about: 'unit' | 'missing' | 'header';
  readonly column: string;
  /** The header in the file; blank where the column is missing. */
  readonly header: string;
  readonly question: string;
  readonly choices: readonly Choice[];
}

/** Which column a header fills, and why. */
export interface HeaderMapping {
  readonly header: string;
  readonly column: string | null;
  readonly why: string;
}
