import { KNOWN } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { sentence } from '../units/index.ts';
import { cellView } from './cell.ts';
import type { Engine } from './engine.ts';
import type { ColumnModel } from './model.ts';
import { authorityOf, originOf } from './origin.ts';
import { pointersOf } from './pointers.ts';
import { reasonsFor } from './reasons.ts';
import { rowAt } from './row-ids.ts';
import { columnCalled, rowNameAt } from './row-names.ts';
import { inUnit, shownUnit } from './shown.ts';
import { usesOf } from './used-by.ts';
import { siText, WorkedText } from './worked-text.ts';
import { gatheredIn, rulesOf, stepsOf, type Spot } from './working-steps.ts';
import type { CellPlace, Named, Working } from './working-view.ts';

/** How a cell came by what it shows; undefined where there is no such cell. */
export function workingOf(
  place: CellPlace,
  engine: Engine,
  notebook: Notebook,
): Working | undefined {
  const spot = spotOf(place, engine, notebook);
  const model = spot?.band.columns.get(place.column);
  if (!spot || !model) return undefined;
  const { sheet, band, row } = spot;
  const { definition, result, suggestion, entry, kind } = model;
  const cell = cellView(sheet, band, model, row, engine, notebook);
  const unit = shownUnit(definition, notebook.document);
  const isTyped = entry?.states[row] === KNOWN;
  const isEntry = isTyped || model.formula === undefined;
  const origin = originOf(sheet, band, model, row, place.row, notebook);
  const called = columnCalled(definition, sheet);
  const rowName = rowNameAt(sheet, band, row, notebook, engine);
  return {
    place,
    title: rowName === '' ? called : `${called}, ${rowName}`,
    state: cell.state,
    value: cell.state === 'known' ? inUnit(cell.text, unit) : cell.text,
    si: siText(cell.value, kind, unit),
    typed: isTyped && origin.typed !== '' ? origin.typed : cell.typed,
    note: cell.note,
    help: definition.help ?? '',
    ...(isEntry && entry ? origin : authorityOf(band, model, notebook)),
    formula: formulaText(model, notebook),
    isOverruled: suggestion !== undefined && isTyped,
    ...formulaWorking(model, spot),
    ...reasons(result.states[row] === KNOWN && suggestion ? suggestion : result, spot),
    pointers: pointersOf(place.column, spot),
    usedBy: usesOf(result, spot),
  };
}

function formulaWorking(
  model: ColumnModel,
  spot: Spot,
): Pick<
  Working,
  'inNumbers' | 'taken' | 'takenInNumbers' | 'worked' | 'steps' | 'rules' | 'gathered'
> {
  const { formula, program } = model;
  if (!formula || !program)
    return {
      inNumbers: '',
      taken: '',
      takenInNumbers: '',
      worked: '',
      steps: [],
      rules: [],
      gathered: [],
    };
  const whole = program.parts(spot.row);
  const write = new WorkedText(formula, model, spot.engine, spot.notebook);
  return {
    inNumbers: write.inNumbers(whole),
    taken: write.asTaken(whole, false),
    takenInNumbers: write.asTaken(whole, true),
    worked: write.value(whole),
    steps: stepsOf(whole, write, spot),
    rules: rulesOf(whole, write),
    gathered: gatheredIn(whole, write, spot.engine),
  };
}

// A formula of the user's own that can't be used is still the one to put right.
function formulaText(
  { formula, sheet, definition }: ColumnModel,
  notebook: Notebook,
): string | undefined {
  return notebook.document.formulas.get(`${sheet}.${definition.id}`) ?? formula?.text;
}

function reasons(
  column: ColumnModel['result'],
  { row, engine, notebook }: Spot,
): Pick<Working, 'waits' | 'problems'> {
  const { waits, problems } = reasonsFor(column, row, engine, notebook);
  return {
    waits: [...waits].map(([key, label]): Named => ({ label, place: placeNamed(key) })),
    problems: problems.map(({ problem }) => sentence({ ...problem, where: '' })),
  };
}

// `sheet/row/column`; the ids of sheets and columns hold no stroke.
function placeNamed(key: string): CellPlace {
  const first = key.indexOf('/');
  const last = key.lastIndexOf('/');
  return {
    sheet: key.slice(0, first),
    row: key.slice(first + 1, last),
    column: key.slice(last + 1),
  };
}

/** The row of a sheet by its ids; undefined where there is no such row. */
export function spotOf(
  place: Pick<CellPlace, 'sheet' | 'row'>,
  engine: Engine,
  notebook: Notebook,
): Spot | undefined {
  const sheet = engine.models.get(place.sheet);
  for (const band of sheet?.bands ?? []) {
    if (!sheet) continue;
    const row = rowAt(sheet, band, place.row, notebook, engine.models);
    if (row >= 0) return { sheet, band, row, engine, notebook };
  }
  return undefined;
}
