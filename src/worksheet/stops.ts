import { KNOWN, WRONG } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { sentence, type Problem } from '../units/index.ts';
import { cellView } from './cell.ts';
import type { Engine } from './engine.ts';
import type { BandModel, ColumnModel, SheetModel, StopModel } from './model.ts';
import { places } from './places.ts';
import { reasonsFor } from './reasons.ts';
import { RowMemories, readCells, shownCells } from './row-memory.ts';
import { rowIdAt } from './row-ids.ts';
import { rowNameAt } from './row-names.ts';
import { inUnit, shownUnit } from './shown.ts';
import { SharedCauses } from './shared-cause.ts';
import type { Stop } from './view.ts';

/** Rows looked at between two moments at which somebody else may work. */
const AT_A_TIME = 200;

/** Every stop and caution in force: rules of the sheets, and cells that have no answer. Stops come first. */
export function* stopsIn(
  engine: Engine,
  notebook: Notebook,
): Generator<undefined, readonly Stop[]> {
  const stops: Stop[] = [];
  for (const model of engine.stops) {
    for (const stop of ruleStops(model, engine, notebook)) {
      stops.push(stop);
      if (stops.length % AT_A_TIME === 0) yield;
    }
    yield;
  }
  let looked = 0;
  for (const stop of wrongCells(engine, notebook)) {
    if (stop) stops.push(stop);
    looked += 1;
    if (looked % AT_A_TIME === 0) yield;
  }
  return [
    ...stops.filter(({ level }) => level === 'stop'),
    ...stops.filter(({ level }) => level === 'caution'),
  ];
}

const ruleStopsKnown = new RowMemories<Stop>();

function* ruleStops(model: StopModel, engine: Engine, notebook: Notebook): Generator<Stop> {
  const { definition, sheet, band, when, isOfSheet } = model;
  const rows = places(when.column.values, 1, band.rows.count);
  if (isOfSheet) {
    yield* Array.from(rows, () => stopOf(model, undefined, '', definition.message));
    return;
  }
  const key = band.columns.get(keyOf(sheet));
  const shown = [...columnsIn(definition.message, band), ...(key ? [key] : [])];
  const memory = ruleStopsKnown.of(model).under(unitsOf(shown, notebook));
  for (const row of rows) {
    const id = rowIdAt(sheet, band, row, notebook, engine.models) ?? '';
    const make = (): Stop => {
      const name = rowNameAt(sheet, band, row, notebook, engine);
      const message = filled(definition.message, sheet, band, row, engine, notebook);
      return stopOf(model, id, name, message);
    };
    // Thousands of rows may stand under one rule, and few of them change at an edit. What is not
    // known is shown as it was typed, and a row without a key is called by its place.
    const isKnown = shown.every(({ result }) => result.states[row] === KNOWN);
    yield isKnown ? memory.recall(id, shownCells(shown, row), make) : make();
  }
}

function stopOf(
  { definition, sheet }: StopModel,
  row: string | undefined,
  rowName: string,
  message: string,
): Stop {
  const { rule, level, source } = definition;
  const settle = settledAt(sheet.definition.id, row, definition.settle);
  return { sheet: sheet.definition.id, row, rowName, rule, level, message, source, ...settle };
}

function settledAt(sheet: string, row: string | undefined, settle: string | undefined) {
  if (settle === undefined) return undefined;
  const [, ofJob] = /^job\.(.+)$/.exec(settle) ?? [];
  if (ofJob !== undefined) return { settle: { sheet: 'job', row: 'job', column: ofJob } };
  return row === undefined ? undefined : { settle: { sheet, row, column: settle } };
}

function keyOf({ definition: { rows } }: SheetModel): string {
  return rows.from === 'single' ? '' : rows.key;
}

function columnsIn(message: string, band: BandModel): readonly ColumnModel[] {
  return [...message.matchAll(NAMED)].flatMap(([, id = '']) => band.columns.get(id) ?? []);
}

function unitsOf(models: readonly ColumnModel[], { document }: Notebook): string {
  return models.map(({ definition }) => shownUnit(definition, document)).join();
}

const NAMED = /\{(\w+)\}/g;

/** A message with each `{column}` replaced by what its cell shows. */
export function filled(
  message: string,
  sheet: SheetModel,
  band: BandModel,
  row: number,
  engine: Engine,
  notebook: Notebook,
): string {
  return message.replaceAll(NAMED, (whole, id: string) => {
    const column = band.columns.get(id);
    if (!column) return whole;
    const { text, state } = cellView(sheet, band, column, row, engine, notebook);
    if (state !== 'known') return 'an unknown amount';
    const unit = shownUnit(column.definition, notebook.document);
    return inUnit(text, unit);
  });
}

// A rule that refuses leaves its cell without a number: said once, where it went wrong.
function* wrongCells(engine: Engine, notebook: Notebook): Generator<Stop | undefined> {
  const shared = new SharedCauses(engine);
  for (const sheet of engine.models.values()) {
    for (const band of sheet.bands) {
      for (const model of band.columns.values()) {
        for (const row of places(model.result.states, WRONG, band.rows.count)) {
          if (band.when?.column.values[row] === 0) continue;
          yield wrongCell(sheet, band, model, row, engine, notebook, shared);
        }
      }
    }
  }
  yield* shared.said((sheet) => engine.models.get(sheet)?.definition.title ?? sheet);
}

const ownProblems = new RowMemories<Problem | undefined>();

function wrongCell(
  sheet: SheetModel,
  band: BandModel,
  model: ColumnModel,
  row: number,
  engine: Engine,
  notebook: Notebook,
  shared: SharedCauses,
): Stop | undefined {
  const { definition, program } = model;
  const id = rowIdAt(sheet, band, row, notebook, engine.models);
  const isBad = engine.badFormulas.has(`${model.sheet}.${definition.id}`);
  // What went wrong further up is told there, and is not looked into again at every edit.
  const own =
    program && !isBad
      ? ownProblems
          .of(model)
          .recall(id ?? '', readCells(program, band.rows, row), () =>
            ownProblem(model, row, engine, notebook),
          )
      : ownProblem(model, row, engine, notebook);
  if (!own) return undefined;
  const stop: Stop = {
    sheet: sheet.definition.id,
    row: id,
    rowName: rowNameAt(sheet, band, row, notebook, engine),
    rule: definition.id,
    level: 'stop',
    message: `${definition.label}: ${sentence({ ...own, where: '' })}`,
    source: definition.source ?? '',
  };
  return shared.takes(stop, own, model, row) ? undefined : stop;
}

function ownProblem(
  { result, suggestion }: ColumnModel,
  row: number,
  engine: Engine,
  notebook: Notebook,
): Problem | undefined {
  return reasonsFor(result, row, engine, notebook).problems.find(
    ({ column, row: at }) => at === row && (column === result || column === suggestion),
  )?.problem;
}
