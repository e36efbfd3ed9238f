import type { Problem } from '../units/index.ts';
import type { Intake, IntakeOptions, IntakeRow } from './intake.ts';
import type { StoredRows } from './row-store.ts';

/** What the reading thread is asked. */
export type ReaderAsk =
  | { readonly ask: 'read'; readonly file: Blob; readonly name: string; readonly how: Reading }
  /** Reads the same file again with other headers settled. */
  | { readonly ask: 'again'; readonly how: Reading }
  /** Gives all the rows of what was read last, and the bytes of the file. */
  | { readonly ask: 'rows' };

/** What it answers. */
export type ReaderAnswer =
  /** It listens: what it was asked before that was not heard. */
  | { readonly say: 'ready' }
  | { readonly say: 'progress'; readonly share: number }
  | { readonly say: 'read'; readonly overview: Overview }
  | { readonly say: 'refused'; readonly problem: Problem }
  | { readonly say: 'all'; readonly stored: StoredRows; readonly bytes: Uint8Array };

/** How a file is to be read. */
export type Reading = Omit<IntakeOptions, 'progress'>;

/** All that is known of a file once it is read, with its first rows alone. */
export interface Overview extends Omit<Intake, 'rows' | 'stored'> {
  readonly rowCount: number;
  readonly first: readonly IntakeRow[];
}
