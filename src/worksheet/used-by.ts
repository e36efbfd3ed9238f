import { GroupedRows, placeBelow, type Column, type Reach } from '../graph/index.ts';
import type { Engine, Owner } from './engine.ts';
import { rowIdAt } from './row-ids.ts';
import { columnCalled } from './row-names.ts';
import type { Spot } from './working-steps.ts';
import type { Use } from './working-view.ts';

/** What reads a column of a spot: cells of its own row and of rows that follow it, whole columns, rules and totals. */
export function usesOf(column: Column, spot: Spot): readonly Use[] {
  const { engine } = spot;
  const own = engine.owners.get(column)?.model;
  const uses = new Map<string, Use>();
  for (const { reader, owner, reach } of readersOf(engine).get(column) ?? []) {
    if (own && owner.model === own) continue;
    const label = labelOf(reader, owner, spot);
    const key = `${label}/${owner.band.rows.name}`;
    // A formula may read the row above and its own: the cell of the same row is the one to go to.
    const place = uses.get(key)?.place ?? placeOf(owner, reach, column, spot);
    uses.set(key, { label, place });
  }
  for (const { definition, bands } of engine.models.values()) {
    if (bands.some(({ rows }) => rows instanceof GroupedRows && rows.deciders.includes(column))) {
      const label = `${definition.title}: which lines there are`;
      uses.set(definition.id, { label, place: undefined });
    }
  }
  return [...uses.values()];
}

interface Reader {
  readonly reader: Column;
  readonly owner: Owner;
  readonly reach: Reach;
}

// Formulas never change within one engine, so who reads what is found out once.
const known = new WeakMap<Engine, ReadonlyMap<Column, readonly Reader[]>>();

function readersOf(engine: Engine): ReadonlyMap<Column, readonly Reader[]> {
  const found = known.get(engine);
  if (found) return found;
  const readers = new Map<Column, Reader[]>();
  for (const [reader, owner] of engine.owners) {
    for (const { column, reach } of reader.computation.inputs) {
      const before = readers.get(column);
      if (before) before.push({ reader, owner, reach });
      else readers.set(column, [{ reader, owner, reach }]);
    }
  }
  known.set(engine, readers);
  return readers;
}

function labelOf(reader: Column, { sheet, model }: Owner, { engine }: Spot): string {
  if (model) return `${sheet.definition.title}: ${columnCalled(model.definition, sheet)}`;
  const stop = engine.stops.find(({ when }) => when.column === reader);
  if (stop) {
    const { level, rule } = stop.definition;
    return `${stop.sheet.definition.title}: ${level}, ${rule.replaceAll('_', ' ')}`;
  }
  const ask = engine.asks.find(({ when }) => when.column === reader);
  if (ask) {
    const label = ask.sheet.bands[0]?.columns.get(ask.definition.column)?.definition.label ?? '';
    return `${ask.sheet.definition.title}: question about ${label.toLowerCase()}`;
  }
  for (const { definition, bands } of engine.models.values()) {
    for (const { id, label } of definition.columns) {
      if (engine.totals.get(`${definition.id}.${id}`)?.column !== reader) continue;
      return `${definition.title}: total of ${label.toLowerCase()}`;
    }
    if (bands.some(({ rows }) => rows.deciders.includes(reader))) {
      return `${definition.title}: which rows there are`;
    }
  }
  return `${sheet.definition.title}: which lines there are`;
}

function placeOf(
  { sheet, band, model }: Owner,
  reach: Reach,
  column: Column,
  { row, engine, notebook }: Spot,
): Use['place'] {
  if (!model) return undefined;
  const at =
    reach === 'whole' ? singleRow(band.rows.count) : belowRow(reach, column, band.rows, row);
  const rowId = at < 0 ? undefined : rowIdAt(sheet, band, at, notebook, engine.models);
  if (rowId === undefined) return undefined;
  return { sheet: model.sheet, row: rowId, column: model.definition.id };
}

function singleRow(count: number): number {
  return count === 1 ? 0 : -1;
}

// A neighbor's reader stands on the row above or below: no one row is meant.
function belowRow(reach: Reach, column: Column, rows: Owner['band']['rows'], row: number): number {
  if (reach === 'near') return -1;
  return reach === 'row' ? row : placeBelow(column.rows, rows, row);
}
