import type { Kind } from '../units/index.ts';
import type { IntakeColumn } from './intake.ts';

/** What the importer needs to know of a column of the posts sheet. */
export interface SheetColumn {
  readonly id: string;
  readonly label: string;
  readonly called: string;
  readonly hint: string;
  readonly kind: Kind;
  readonly unit: string;
  readonly entered: boolean;
  readonly formula: string | undefined;
}

// A remedy is the estimator's; a list of ours carries what the notebook suggested, which is no entry.
const NOT_FROM_FILES = ['remedy'];

/** The columns a file may fill, and the heads of those that are worked out, so that our own lists read back. */
export function intakeColumns(columns: readonly SheetColumn[]): {
  readonly columns: readonly IntakeColumn[];
  readonly workedOut: readonly string[];
} {
  const isEntered = ({ entered, id }: SheetColumn): boolean =>
    entered && !NOT_FROM_FILES.includes(id);
  return {
    columns: columns
      .filter(isEntered)
      .map(({ id, called, kind, unit }) => ({ id, label: called, kind, unit })),
    workedOut: columns.filter((column) => !isEntered(column)).map(({ called }) => called),
  };
}
