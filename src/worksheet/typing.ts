import type { Change, Notebook, Row } from '../notebook/index.ts';
import type { Engine } from './engine.ts';
import { isReading, readCell } from './entries.ts';
import type { ColumnModel } from './model.ts';
import { shownUnit } from './shown.ts';
import type { Entry } from './view.ts';

/** Texts as they are kept: a long paste has them worked out before it is done. */
export class KeptTexts {
  private readonly known = new Map<ColumnModel, Map<string, string>>();

  /** The text to keep: as typed, and with the unit of its column where a bare number took it, so that it never changes meaning. */
  of(text: string, model: ColumnModel, { document }: Notebook): string {
    const unit = shownUnit(model.definition, document);
    const typed = text.trim();
    if (unit === '' || typed === '') return typed;
    const known = this.known.get(model) ?? new Map<string, string>();
    this.known.set(model, known);
    const key = `${unit} ${typed}`;
    const kept = known.get(key) ?? withUnit(typed, unit, model);
    known.set(key, kept);
    return kept;
  }
}

/** The changes that type some entries, as a person would. Entries that change nothing make no change. */
export function typingChanges(
  entries: readonly Entry[],
  engine: Engine,
  notebook: Notebook,
  texts = new KeptTexts(),
): readonly Change[] {
  const changes: Change[] = [];
  const addedRows = new Map<string, Row>();
  const addedTo = new Map<string, number>();
  for (const { sheet, row, column, text } of entries) {
    const model = engine.models.get(sheet)?.bands[0]?.columns.get(column);
    if (!model?.entry) continue;
    const after = texts.of(text, model, notebook);
    if (sheet === 'job') {
      // A job input that is cleared is blank; one never touched has its starting value.
      const before = notebook.document.inputs.get(column);
      if (before !== after) changes.push({ edit: 'input', name: column, before, after });
      continue;
    }
    const key = `${sheet}/${row}`;
    const existing = notebook.row(sheet, row) ?? addedRows.get(key);
    if (!existing) {
      if (after === '') continue;
      const added: Row = { id: row, cells: new Map() };
      addedRows.set(key, added);
      const before = addedTo.get(sheet) ?? 0;
      addedTo.set(sheet, before + 1);
      const at = notebook.rows(sheet).length + before;
      changes.push({ edit: 'add rows', sheet, at, rows: [added] });
    }
    const before = existing?.cells.get(column);
    const cleared = after === '' ? undefined : after;
    if (before !== cleared)
      changes.push({ edit: 'cell', sheet, row, column, before, after: cleared });
  }
  return changes;
}

/** Entries for a new row as they are kept; what has no place on the sheet, and blanks, are left out. */
export function typedCells(
  sheet: string,
  cells: ReadonlyMap<string, string>,
  engine: Engine,
  notebook: Notebook,
  texts: KeptTexts,
): Map<string, string> {
  const columns = engine.models.get(sheet)?.bands[0]?.columns;
  const typed = new Map<string, string>();
  for (const [column, text] of cells) {
    const model = columns?.get(column);
    const kept = model?.entry ? texts.of(text, model, notebook) : '';
    if (kept !== '') typed.set(column, kept);
  }
  return typed;
}

function withUnit(typed: string, unit: string, { kind }: ColumnModel): string {
  const read = readCell(typed, kind, unit);
  if (!isReading(read) || read.unitAssumed !== true) return typed;
  const written = `${typed} ${unit}`;
  const again = readCell(written, kind, unit);
  return isReading(again) && String(again.value) === String(read.value) ? written : typed;
}
