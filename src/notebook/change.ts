import type { ImportedFile, OwnPart, Row } from './document.ts';

/** One reversible edit of the document; each carries what is needed to take it back. */
export type Change =
  | { readonly edit: 'name'; readonly before: string; readonly after: string }
  | EntryChange<'input'>
  | EntryChange<'formula'>
  | EntryChange<'assumed'>
  | OwnChange
  | {
      readonly edit: 'cell';
      readonly sheet: string;
      readonly row: string;
      readonly column: string;
      readonly before: string | undefined;
      readonly after: string | undefined;
    }
  | {
      readonly edit: 'add rows';
      readonly sheet: string;
      readonly at: number;
      readonly rows: readonly Row[];
    }
  | {
      readonly edit: 'remove rows';
      readonly sheet: string;
      readonly at: number;
      readonly rows: readonly Row[];
    }
  | { readonly edit: 'add file'; readonly file: ImportedFile }
  | { readonly edit: 'remove file'; readonly file: ImportedFile };

/** Columns and sheets of the user's own, whole before and after, so that their order comes back too. */
interface OwnChange {
  readonly edit: 'own';
  readonly before: readonly (readonly [string, OwnPart])[];
  readonly after: readonly (readonly [string, OwnPart])[];
}

interface EntryChange<Edit extends string> {
  readonly edit: Edit;
  /** The input's name, or `sheet.column`. */
  readonly name: string;
  readonly before: string | undefined;
  readonly after: string | undefined;
}

/** What one act of a person changed; undone and redone as one. */
export interface Step {
  /** What was done, for “Undo …”. */
  readonly label: string;
  readonly changes: readonly Change[];
}

/** Whether a change leaves the entry it names as it is: by that somebody keeps what stands there. */
export function isNothing(change: Change): boolean {
  return change.edit !== 'own' && 'after' in change && change.before === change.after;
}
