import type { BroughtIn } from './desk.ts';

/** Hears how far something has come, from 0 to 1. */
export type Progress = (share: number) => void;

/** Follows the reading of a file. */
export interface ReadingWatch {
  readonly progress: Progress;
}

/** A file that is being read or was read, before any of it is in the job. */
export interface Reading {
  /** The file as it was understood; rejects once it is cancelled. */
  readonly preview: Promise<Preview>;
  /** Stops whatever is being done; the notebook stays as it was. */
  cancel(): void;
}

/** How a file was understood, to be put right before it comes in. */
export interface Preview {
  readonly name: string;
  /** How many lines were read, and what they are. */
  readonly summary: string;
  readonly notes: readonly string[];
  readonly headers: readonly PreviewHeader[];
  /** What a header may be settled on. */
  readonly columns: readonly { readonly id: string; readonly label: string }[];
  /** The first rows as they were read, heads first. */
  readonly rows: readonly (readonly string[])[];
  /** Whether headers stand as they were settled for an earlier file of this shape. */
  readonly remembered: boolean;
  /** Settles one header, on a column or on none, and reads the file again. */
  settle(header: string, column: string | null): Promise<Preview>;
  /** Brings the file into the job. */
  bringIn(): Promise<BroughtIn>;
}

/** One header of the file, and what it was taken for. */
export interface PreviewHeader {
  readonly header: string;
  readonly column: string | null;
  readonly why: string;
}
