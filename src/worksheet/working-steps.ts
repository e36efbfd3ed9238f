import {
  AGGREGATES,
  allParts,
  onTheWay,
  partsInOrder,
  references,
  type Part,
  type Reference,
} from '../formula/index.ts';
import { placeIn, type Column } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { sentence } from '../units/index.ts';
import { cellView } from './cell.ts';
import type { Engine } from './engine.ts';
import type { BandModel, SheetModel } from './model.ts';
import { authorityOf, originOf } from './origin.ts';
import { rowIdAt } from './row-ids.ts';
import { rowNameAt } from './row-names.ts';
import { columnCalled } from './row-names.ts';
import { inUnit, shownUnit } from './shown.ts';
import { siText, type WorkedText } from './worked-text.ts';
import type { Gathering, RuleCall, WorkingStep } from './working-view.ts';

/** One row of one band, in a book at work. */
export interface Spot {
  readonly sheet: SheetModel;
  readonly band: BandModel;
  readonly row: number;
  readonly engine: Engine;
  readonly notebook: Notebook;
}

/** Every name that a worked formula reads, once each. */
export function stepsOf(whole: Part, write: WorkedText, spot: Spot): readonly WorkingStep[] {
  const steps = new Map<string, WorkingStep>();
  for (const part of allParts(whole)) {
    for (const step of stepsIn(part, write, spot)) {
      const before = steps.get(step.name);
      steps.set(step.name, { ...step, isUsed: step.isUsed || before?.isUsed === true });
    }
  }
  return [...steps.values()];
}

/** Every trade rule that a worked formula calls, innermost first. */
export function rulesOf(whole: Part, write: WorkedText): readonly RuleCall[] {
  const calls = new Map<string, RuleCall>();
  for (const call of partsInOrder(whole).flatMap((part) => callsIn(part, write))) {
    const isUsed = call.isUsed || calls.get(call.text)?.isUsed === true;
    calls.set(call.text, { ...call, isUsed });
  }
  return [...calls.values()];
}

/** Every aggregate of a worked formula that goes through the rows of a sheet. */
export function gatheredIn(whole: Part, write: WorkedText, engine: Engine): readonly Gathering[] {
  return allParts(whole).flatMap((part): Gathering[] => {
    const { expression, rows, used } = part;
    if (expression.form !== 'aggregate' || rows === undefined) return [];
    return [
      {
        text: write.written(part),
        meaning: AGGREGATES.get(expression.name)?.meaning ?? '',
        sheet: titleOf(expression.sheet, engine),
        rows,
        result: write.value(part),
        isUsed: used,
      },
    ];
  });
}

function callsIn(part: Part, write: WorkedText): readonly RuleCall[] {
  const { expression, parts, problem, used } = part;
  if (expression.form !== 'rule') return [];
  const { rule } = expression;
  const given = parts.map((argument, at) => ({
    name: rule.parameters[at]?.name ?? '',
    text: write.written(argument),
    value: write.value(argument),
  }));
  return [
    {
      name: rule.name,
      text: write.written(part),
      given,
      result: write.value(part),
      meaning: rule.meaning,
      equation: rule.equation,
      onTheWay: onTheWay(part),
      source: rule.source,
      standing: rule.standing,
      caution: rule.caution ?? '',
      problem: problem ? sentence({ ...problem, where: '' }) : '',
      isUsed: used,
    },
  ];
}

function stepsIn(part: Part, write: WorkedText, spot: Spot): readonly WorkingStep[] {
  const { expression, rows, used } = part;
  if (expression.form === 'aggregate' && rows !== undefined) {
    return references(expression).flatMap((reference) =>
      isGoneThrough(reference) ? [columnStep(reference, used, spot)] : [],
    );
  }
  if (expression.form === 'column' && rows !== undefined) {
    return [columnStep(expression.reference, used, spot)];
  }
  if (expression.form !== 'column' && expression.form !== 'neighbor') return [];
  const [column] = expression.reference.columns;
  if (!column) return [];
  const row = expression.form === 'neighbor' ? spot.row + expression.step : rowOf(column, spot);
  return [cellStep(write.written(part), expression.reference, column, row, used, spot)];
}

function isGoneThrough({ reach, sheet }: Reference): boolean {
  return reach === 'whole' && sheet !== 'job';
}

// The row of a name: its own, that of the row it follows, or the only one.
function rowOf(column: Column, { band, row }: Spot): number {
  const place = placeIn(column.rows, band.rows, row);
  return place < 0 ? 0 : place;
}

function cellStep(
  name: string,
  { label }: Reference,
  column: Column,
  row: number,
  isUsed: boolean,
  spot: Spot,
): WorkingStep {
  const { engine, notebook } = spot;
  const owner = engine.owners.get(column);
  const model = owner?.model;
  if (!owner || !model || row < 0 || row >= column.rows.count)
    return pastTheEnd(name, label, isUsed);
  const { sheet, band } = owner;
  const cell = cellView(sheet, band, model, row, engine, notebook);
  const rowId = rowIdAt(sheet, band, row, notebook, engine.models) ?? '';
  const unit = shownUnit(model.definition, notebook.document);
  const isElsewhere = band === spot.band && row !== spot.row;
  const called = columnCalled(model.definition, sheet);
  return {
    name,
    label: isElsewhere ? `${called}, ${rowNameAt(sheet, band, row, notebook, engine)}` : called,
    sheet: sheet.definition.title,
    place: { sheet: model.sheet, row: rowId, column: model.definition.id },
    ...originOf(sheet, band, model, row, rowId, notebook),
    taken: cell.state === 'known' ? inUnit(cell.text, unit) : '',
    si: siText(cell.value, model.kind, unit),
    note: cell.note,
    isUsed,
  };
}

function columnStep(
  { sheet, name, label, columns }: Reference,
  isUsed: boolean,
  spot: Spot,
): WorkingStep {
  const { engine, notebook } = spot;
  const [column] = columns;
  const owner = column && engine.owners.get(column);
  const rows = columns.reduce((count, each) => count + each.rows.count, 0);
  const authority = owner?.model
    ? authorityOf(owner.band, owner.model, notebook)
    : { standing: '', source: '' };
  return {
    name: `${sheet}.${name}`,
    label: owner?.model ? columnCalled(owner.model.definition, owner.sheet) : label,
    sheet: titleOf(sheet, engine),
    place: undefined,
    origin: 'whole column',
    typed: '',
    taken: `${String(rows)} ${rows === 1 ? 'row' : 'rows'}`,
    si: '',
    ...authority,
    note: '',
    isUsed,
  };
}

function pastTheEnd(name: string, label: string, isUsed: boolean): WorkingStep {
  return {
    name,
    label,
    sheet: '',
    place: undefined,
    origin: 'blank',
    typed: '',
    taken: '',
    si: '',
    standing: '',
    source: '',
    note: 'there is no such row',
    isUsed,
  };
}

function titleOf(sheet: string, engine: Engine): string {
  return engine.models.get(sheet)?.definition.title ?? sheet;
}
