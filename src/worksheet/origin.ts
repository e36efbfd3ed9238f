import { KNOWN, UNREAD } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { typedText } from './cell.ts';
import type { BandModel, ColumnModel, SheetModel } from './model.ts';
import { startingText } from './shown.ts';
import type { WorkingStep } from './working-view.ts';

/** How a value came into its cell, and who answers for it. */
export interface Origin {
  readonly origin: Exclude<WorkingStep['origin'], 'whole column'>;
  /** As a person wrote it; blank where nobody did. */
  readonly typed: string;
  readonly standing: string;
  readonly source: string;
}

/** How the value of a cell came there: typed, as a job starts, agreed for a whole column, or worked out. */
export function originOf(
  sheet: SheetModel,
  band: BandModel,
  model: ColumnModel,
  row: number,
  rowId: string,
  notebook: Notebook,
): Origin {
  const { definition, entry } = model;
  const { document } = notebook;
  const state = entry?.states[row];
  if (entry && (state === KNOWN || state === UNREAD)) {
    const typed = typedText(model, rowId, notebook);
    if (typed !== undefined && typed.trim() !== '') {
      const from = notebook.row(sheet.definition.id, rowId)?.from;
      const source = from ? `row from ${from.file}, line ${String(from.line)}` : '';
      return { origin: 'typed', typed, standing: 'yours', source };
    }
    const { standing, source } = authorityOf(band, model, notebook);
    if (sheet.definition.id === 'job') {
      const start = startingText(definition, document) ?? '';
      return { origin: 'starting value', typed: start, standing, source };
    }
    const agreed = document.assumed.get(`${sheet.definition.id}.${definition.id}`) ?? '';
    return { origin: 'agreed', typed: agreed, standing: 'yours', source: 'as agreed for blanks' };
  }
  const isWorked = model.formula !== undefined || entry === undefined;
  return {
    origin: isWorked ? 'worked out' : 'blank',
    typed: '',
    ...authorityOf(band, model, notebook),
  };
}

/** Where the rule of a column comes from, and how far it can be trusted. */
export function authorityOf(
  { line }: BandModel,
  { sheet, definition }: ColumnModel,
  notebook: Notebook,
): { readonly standing: string; readonly source: string } {
  if (notebook.document.formulas.has(`${sheet}.${definition.id}`)) {
    return { standing: 'yours', source: 'your own formula' };
  }
  const { standing = '', source = '' } = line ?? definition;
  return { standing, source };
}
