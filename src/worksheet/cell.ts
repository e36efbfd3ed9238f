import { decode } from '../formula/index.ts';
import { BLANK, KNOWN, UNREAD, WRONG } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { isDoubt, isProblem, sentence, type Choice } from '../units/index.ts';
import type { Engine } from './engine.ts';
import { isReading, readCell } from './entries.ts';
import type { BandModel, ColumnModel, SheetModel } from './model.ts';
import { reasonText, reasonsFor } from './reasons.ts';
import { rowIdAt } from './row-ids.ts';
import { shownText, shownUnit, shownWithUnit } from './shown.ts';
import type { CellView } from './view.ts';

/** Builds what is shown of one cell. */
export function cellView(
  sheet: SheetModel,
  band: BandModel,
  model: ColumnModel,
  row: number,
  engine: Engine,
  notebook: Notebook,
): CellView {
  const { definition, kind, result, entry, suggestion } = model;
  const unit = shownUnit(definition, notebook.document);
  const rowId = rowIdAt(sheet, band, row, notebook, engine.models) ?? '';
  const typed = entry && typedText(model, rowId, notebook);
  const state = result.states[row] ?? BLANK;
  const isTyped = typed !== undefined && typed.trim() !== '';
  if (state === KNOWN) {
    const value = decode(result.values[row] ?? NaN, kind, engine.words);
    const overruled =
      suggestion && entry?.states[row] === KNOWN && suggestion.states[row] === KNOWN;
    const suggested = overruled
      ? shownText(
          decode(suggestion.values[row] ?? NaN, kind, engine.words),
          kind,
          unit,
          definition.percent,
          2,
        )
      : undefined;
    // A share that was worked out is an estimate; one that was typed keeps its digits.
    const digits = entry?.states[row] === KNOWN ? 4 : 2;
    const text = shownText(value, kind, unit, definition.percent, digits);
    return {
      ...NOTHING,
      state: 'known',
      text,
      value,
      typed,
      suggested: suggested === text ? undefined : suggested,
      note: knownNote(model, row, rowId, typed, unit, notebook),
    };
  }
  if (isTyped && entry?.states[row] === UNREAD) {
    const { note, choices } = askOf(typed, model, unit);
    return { ...NOTHING, state: 'ask', text: typed, typed, note, choices };
  }
  if (entry && !suggestion) return { ...NOTHING, state: 'blank', typed };
  const reasons = reasonsFor(result, row, engine, notebook);
  const note = reasonText(reasons, `${model.sheet}/${rowId}`);
  if (state === WRONG) return { ...NOTHING, state: 'wrong', typed, note };
  const waitsOnlyForItself =
    reasons.waits.size === 1 && reasons.waits.has(`${model.sheet}/${rowId}/${definition.id}`);
  return waitsOnlyForItself
    ? { ...NOTHING, state: 'blank', typed }
    : { ...NOTHING, state: reasons.waits.size === 0 ? 'blank' : 'waiting', typed, note };
}

/** What a person typed in a cell, exactly. */
export function typedText(
  { sheet, definition }: ColumnModel,
  rowId: string,
  notebook: Notebook,
): string | undefined {
  if (sheet === 'job') return notebook.document.inputs.get(definition.id);
  return notebook.row(sheet, rowId)?.cells.get(definition.id);
}

/** The question an entry raises, and the readings to choose from. */
export function askOf(
  typed: string,
  { kind }: ColumnModel,
  unit: string,
): { note: string; choices: readonly Choice[] } {
  const read = readCell(typed, kind, unit);
  if (isProblem(read)) return { note: sentence({ ...read, where: '' }), choices: [] };
  return isDoubt(read) ? { note: read.question, choices: read.choices } : { note: '', choices: [] };
}

const NOTHING = {
  text: '',
  value: undefined,
  typed: undefined,
  suggested: undefined,
  note: '',
  choices: [],
} as const;

function knownNote(
  model: ColumnModel,
  row: number,
  rowId: string,
  typed: string | undefined,
  unit: string,
  notebook: Notebook,
): string {
  const { sheet, definition, kind } = model;
  if (typed === undefined) {
    const taken =
      sheet === 'job' ? undefined : notebook.document.assumed.get(`${sheet}.${definition.id}`);
    return taken === undefined || model.entry?.states[row] !== KNOWN
      ? ''
      : `taken as ${taken}, as agreed`;
  }
  const why = notebook.row(sheet, rowId)?.assumed?.get(definition.id);
  const read = readCell(typed, kind, unit);
  const about = isReading(read) && read.approximate ? 'written as approximate' : '';
  const size = definition.id === 'post_size' ? '' : echo(read, kind, unit);
  return [why ?? '', about, size].filter((part) => part !== '').join('; ');
}

// A reading in another unit than the column's is said in both.
function echo(read: ReturnType<typeof readCell>, kind: ColumnModel['kind'], unit: string): string {
  if (!isReading(read) || read.unit === '' || read.unit === unit || typeof read.value !== 'number')
    return '';
  return kind.type === 'quantity' &&
    unit !== '' &&
    (read.unit === 'mm' || unit === 'mm' || read.unit === 'm' || unit === 'm')
    ? `typed in ${read.unit}: ${shownWithUnit(read.value, kind, read.unit)}`
    : '';
}
