import type { Problem } from '../units/index.ts';
import type { Intake, IntakeOptions, IntakeRow } from './intake.ts';
import type { PackedRows } from './packed-rows.ts';

/** What the reading thread is asked. */
export type ReaderAsk =
  | { readonly ask: 'read'; readonly file: Blob; readonly name: string; readonly how: Reading }
  /** Reads the same file again with other headers settled. */
  | { readonly ask: 'again'; readonly how: Reading }
  /** Gives all the rows of what was read last. */
  | { readonly ask: 'rows' };

/** What it answers. */
export type ReaderAnswer =
  | { readonly say: 'progress'; readonly share: number }
  | { readonly say: 'read'; readonly overview: PackedOverview }
  | { readonly say: 'refused'; readonly problem: Problem }
  | { readonly say: 'rows'; readonly rows: PackedRows; readonly share: number }
  | { readonly say: 'all'; readonly bytes: Uint8Array };

/** How a file is to be read. */
export type Reading = Omit<IntakeOptions, 'progress'>;

/** All that is known of a file once it is read, with its first rows alone. */
export interface Overview extends Omit<Intake, 'rows'> {
  readonly rowCount: number;
  readonly first: readonly IntakeRow[];
}

/** The same on its way between threads. */
export interface PackedOverview extends Omit<Overview, 'first'> {
  readonly first: PackedRows;
}
