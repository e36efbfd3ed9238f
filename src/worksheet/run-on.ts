import { KNOWN } from '../graph/index.ts';
import {
  parseUnit,
  usualUnit,
  writeDate,
  writeExact,
  writeWithUnit,
  type Unit,
} from '../units/index.ts';
import type { Engine } from './engine.ts';
import type { Notebook } from '../notebook/index.ts';
import type { ColumnModel } from './model.ts';
import { rowAt } from './row-ids.ts';
import { shownUnit } from './shown.ts';

const DAY = 86_400;

/**
 * How a run of entries goes on: by the step between the last two of them, from one alone by one
 * (a day for dates; a bay of the job for a station). Where there is no run it repeats.
 */
export function runOn(
  sheetId: string,
  column: string,
  rows: readonly string[],
  count: number,
  engine: Engine,
  notebook: Notebook,
): readonly string[] {
  const sheet = engine.models.get(sheetId);
  const [band] = sheet?.bands ?? [];
  const model = band?.columns.get(column);
  if (!sheet || !band || !model) return [];
  const places = rows.map((row) => rowAt(sheet, band, row, notebook, engine.models));
  const typed = rows.map((row) => notebook.row(sheetId, row)?.cells.get(column) ?? '');
  const steps = Array.from({ length: count }, (_, at) => at);
  const values = places.map((row) => numberAt(model, row));
  const { kind } = model;
  const last = values.at(-1);
  if ((kind.type === 'quantity' || kind.type === 'date') && last !== undefined) {
    const before = values.at(-2);
    const step = before === undefined ? stepOf(model, engine) : last - before;
    const write = writer(model, notebook);
    return steps.map((at) => write(last + step * (at + 1)));
  }
  const counted = countedOn(typed.at(-2), typed.at(-1) ?? '');
  return steps.map((at) => counted?.(at + 1) ?? typed[at % typed.length] ?? '');
}

function numberAt({ result }: ColumnModel, row: number): number | undefined {
  return row >= 0 && result.states[row] === KNOWN ? result.values[row] : undefined;
}

function stepOf({ kind, definition }: ColumnModel, engine: Engine): number {
  if (kind.type === 'date') return DAY;
  if (definition.id === 'station') {
    const bay = engine.models.get('job')?.bands[0]?.columns.get('post_spacing')?.result;
    if (bay?.states[0] === KNOWN) return bay.values[0] ?? 0;
  }
  // One number alone is no run of measurements; a count goes on.
  return definition.kind === 'count' ? 1 : 0;
}

function writer({ kind, definition }: ColumnModel, notebook: Notebook): (value: number) => string {
  if (kind.type !== 'quantity') return writeDate;
  const unit: Unit =
    parseUnit(shownUnit(definition, notebook.document)) ?? usualUnit(kind.dimension);
  // Adding steps leaves crumbs of a rounding; what a person would write has none.
  return (value) => {
    const exact = writeExact(value, unit);
    return exact.length <= 9 ? exact : writeWithUnit(value, unit);
  };
}

/** Post names: `7` goes on with 8, `B-09` with `B-10`, `3a` with `4a`. */
function countedOn(
  before: string | undefined,
  last: string,
): ((steps: number) => string) | undefined {
  const parted = /^(.*?)(\d+)(\D*)$/.exec(last);
  if (!parted) return undefined;
  const [, head = '', digits = '', tail = ''] = parted;
  const earlier = before === undefined ? undefined : /^(.*?)(\d+)(\D*)$/.exec(before);
  const isRun = earlier?.[1] === head && earlier[3] === tail;
  if (before !== undefined && !isRun) return undefined;
  const step = isRun ? Number(digits) - Number(earlier[2]) : 1;
  return (steps) => {
    const number = Number(digits) + step * steps;
    return number < 0 ? last : `${head}${String(number).padStart(digits.length, '0')}${tail}`;
  };
}
