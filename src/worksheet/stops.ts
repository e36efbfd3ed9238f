import { WRONG } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { sentence } from '../units/index.ts';
import { cellView } from './cell.ts';
import type { Engine } from './engine.ts';
import type { BandModel, ColumnModel, SheetModel, StopModel } from './model.ts';
import { places } from './places.ts';
import { reasonsFor } from './reasons.ts';
import { rowIdAt } from './row-ids.ts';
import { rowNameAt } from './row-names.ts';
import { inUnit, shownUnit } from './shown.ts';
import type { Stop } from './view.ts';

/** Every stop and caution in force: rules of the sheets, and cells that have no answer. Stops come first. */
export function stopsOf(engine: Engine, notebook: Notebook): readonly Stop[] {
  const stops = [
    ...engine.stops.flatMap((model) => ruleStops(model, engine, notebook)),
    ...wrongCells(engine, notebook),
  ];
  return [
    ...stops.filter(({ level }) => level === 'stop'),
    ...stops.filter(({ level }) => level === 'caution'),
  ];
}

function ruleStops(model: StopModel, engine: Engine, notebook: Notebook): readonly Stop[] {
  const { definition, sheet, band, when, isOfSheet } = model;
  const stops: Stop[] = [];
  for (const row of places(when.column.values, 1, band.rows.count)) {
    stops.push({
      sheet: sheet.definition.id,
      row: isOfSheet ? undefined : rowIdAt(sheet, band, row, notebook, engine.models),
      rowName: isOfSheet ? '' : rowNameAt(sheet, band, row, notebook, engine),
      rule: definition.rule,
      level: definition.level,
      message: isOfSheet
        ? definition.message
        : filled(definition.message, sheet, band, row, engine, notebook),
      source: definition.source,
    });
  }
  return stops;
}

/** A message with each `{column}` replaced by what its cell shows. */
export function filled(
  message: string,
  sheet: SheetModel,
  band: BandModel,
  row: number,
  engine: Engine,
  notebook: Notebook,
): string {
  return message.replaceAll(/\{(\w+)\}/g, (whole, id: string) => {
    const column = band.columns.get(id);
    if (!column) return whole;
    const { text, state } = cellView(sheet, band, column, row, engine, notebook);
    if (state !== 'known') return 'an unknown amount';
    const unit = shownUnit(column.definition, notebook.document);
    return inUnit(text, unit);
  });
}

// A rule that refuses leaves its cell without a number: said once, where it went wrong.
function wrongCells(engine: Engine, notebook: Notebook): readonly Stop[] {
  const stops: Stop[] = [];
  for (const sheet of engine.models.values()) {
    for (const band of sheet.bands) {
      for (const model of band.columns.values()) {
        for (const row of places(model.result.states, WRONG, band.rows.count)) {
          if (band.when?.column.values[row] === 0) continue;
          const stop = wrongCell(sheet, band, model, row, engine, notebook);
          if (stop) stops.push(stop);
        }
      }
    }
  }
  return stops;
}

function wrongCell(
  sheet: SheetModel,
  band: BandModel,
  model: ColumnModel,
  row: number,
  engine: Engine,
  notebook: Notebook,
): Stop | undefined {
  const { problems } = reasonsFor(model.result, row, engine, notebook);
  const own = problems.find(
    ({ column, row: at }) => at === row && (column === model.result || column === model.suggestion),
  );
  if (!own) return undefined;
  return {
    sheet: sheet.definition.id,
    row: rowIdAt(sheet, band, row, notebook, engine.models),
    rowName: rowNameAt(sheet, band, row, notebook, engine),
    rule: model.definition.id,
    level: 'stop',
    message: `${model.definition.label}: ${sentence({ ...own.problem, where: '' })}`,
    source: model.definition.source ?? '',
  };
}
