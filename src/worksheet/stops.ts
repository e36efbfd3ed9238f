import { KNOWN, WRONG, type Column } from '../graph/index.ts';
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
import { Blame, sharedCauses, type Blamed } from './shared-cause.ts';
import { FoundOnce, type StopGroup } from './stop-board.ts';
import type { Stop } from './view.ts';

/** Rows looked at between two moments at which somebody else may work. */
const AT_A_TIME = 200;

/** Every stop and caution in force: rules of the sheets, and cells that have no answer. */
export function* stopsIn(
  engine: Engine,
  notebook: Notebook,
): Generator<undefined, readonly StopGroup[]> {
  const groups: StopGroup[] = [];
  for (const model of engine.stops) {
    groups.push(yield* ruleStops(model, engine, notebook));
    yield;
  }
  groups.push(...(yield* wrongCells(engine, notebook)));
  return groups;
}

const ruleStopsFound = new FoundOnce<StopGroup>();
const ruleStopsKnown = new RowMemories<Stop>();

function* ruleStops(
  model: StopModel,
  engine: Engine,
  notebook: Notebook,
): Generator<undefined, StopGroup> {
  const { definition, sheet, band, when, isOfSheet } = model;
  const key = isOfSheet ? undefined : band.columns.get(keyOf(sheet));
  const shown = isOfSheet ? [] : [...columnsIn(definition.message, band), ...(key ? [key] : [])];
  const columns = [when.column, ...shown.flatMap(columnsOf)];
  const units = unitsOf(shown, notebook);
  const found = ruleStopsFound.known(model, columns, units);
  if (found) return found;
  const stops: Stop[] = [];
  const memory = ruleStopsKnown.of(model).under(units);
  for (const row of places(when.column.values, 1, band.rows.count)) {
    if (stops.length % AT_A_TIME === 0) yield;
    if (isOfSheet) {
      stops.push(stopOf(model, undefined, '', definition.message));
      continue;
    }
    const id = rowIdAt(sheet, band, row, notebook, engine.models) ?? '';
    const make = (): Stop => {
      const name = rowNameAt(sheet, band, row, notebook, engine);
      const message = filled(definition.message, sheet, band, row, engine, notebook);
      return stopOf(model, id, name, message);
    };
    // Thousands of rows may stand under one rule, and few of them change at an edit. What is not
    // known is shown as it was typed, and a row without a key is called by its place.
    const isKnown = shown.every(({ result }) => result.states[row] === KNOWN);
    stops.push(isKnown ? memory.recall(id, shownCells(shown, row), make) : make());
  }
  const group = { sheet: sheet.definition.id, level: definition.level, stops };
  return ruleStopsFound.keep(model, columns, units, group);
}

/** The columns that decide what a cell shows. */
function columnsOf({ result, entry }: ColumnModel): readonly Column[] {
  return entry ? [result, entry] : [result];
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
function* wrongCells(
  engine: Engine,
  notebook: Notebook,
): Generator<undefined, readonly StopGroup[]> {
  const groups: StopGroup[] = [];
  const blamed: (readonly Blamed[])[] = [];
  for (const sheet of engine.models.values()) {
    for (const band of sheet.bands) {
      for (const model of band.columns.values()) {
        const found = yield* wrongCellsOf(model, sheet, band, engine, notebook);
        groups.push(found.own);
        if (found.blamed.length > 0) blamed.push(found.blamed);
      }
      yield;
    }
  }
  return [...groups, ...sharedCauses(blamed, engine)];
}

/** The cells of a column that went wrong: those that say it themselves, and those that an input is to blame for. */
interface WrongCells {
  readonly own: StopGroup;
  readonly blamed: readonly Blamed[];
}

const wrongCellsFound = new FoundOnce<WrongCells>();

function* wrongCellsOf(
  model: ColumnModel,
  sheet: SheetModel,
  band: BandModel,
  engine: Engine,
  notebook: Notebook,
): Generator<undefined, WrongCells> {
  const { result } = model;
  const key = band.columns.get(keyOf(sheet));
  const columns = [
    result,
    ...(band.when ? [band.when.column] : []),
    ...(key ? columnsOf(key) : []),
  ];
  const units = unitsOf(key ? [key] : [], notebook);
  const found = wrongCellsFound.known(model, columns, units);
  if (found) return found;
  const own: Stop[] = [];
  const blamed: Blamed[] = [];
  const blame = new Blame(model, engine);
  let looked = 0;
  for (const row of places(result.states, WRONG, band.rows.count)) {
    if (band.when?.column.values[row] === 0) continue;
    const cell = wrongCell(sheet, band, model, row, engine, notebook);
    if (cell) {
      const input = blame.on(cell.problem, row);
      if (input) blamed.push({ ...cell, input });
      else own.push(cell.stop);
    }
    looked += 1;
    if (looked % AT_A_TIME === 0) yield;
  }
  const group: StopGroup = { sheet: sheet.definition.id, level: 'stop', stops: own };
  return wrongCellsFound.keep(model, columns, units, { own: group, blamed });
}

const ownProblems = new RowMemories<Problem | undefined>();

function wrongCell(
  sheet: SheetModel,
  band: BandModel,
  model: ColumnModel,
  row: number,
  engine: Engine,
  notebook: Notebook,
): { readonly stop: Stop; readonly problem: Problem } | undefined {
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
  return { stop, problem: own };
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
