import type { Kind } from '../units/index.ts';
import type { IntakeOptions } from './intake.ts';

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

// A remedy is the estimator's; a list of ours carries what the notebook suggested, which is no entry unless somebody says so.
const NOT_FROM_FILES = ['remedy', 'cause', 'method'];

/** The columns a file may fill, and the heads of those that are worked out, so that our own lists read back. A header that somebody settled on the remedy fills it. */
export function intakeColumns(
  columns: readonly SheetColumn[],
  settled: IntakeOptions['settled'] = new Map(),
): Pick<IntakeOptions, 'columns' | 'settled'> & { readonly workedOut: readonly string[] } {
  const told = new Set(settled.values());
  const isEntered = ({ entered, id }: SheetColumn): boolean =>
    entered && (told.has(id) || !NOT_FROM_FILES.includes(id));
  return {
    settled,
    columns: columns
      .filter(isEntered)
      .map(({ id, called, kind, unit }) => ({ id, label: called, kind, unit })),
    workedOut: columns.filter((column) => !isEntered(column)).map(({ called }) => called),
  };
}
