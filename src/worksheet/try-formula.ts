import {
  Program,
  decode,
  isFormula,
  readFormula,
  type Formula,
  type FormulaProblem,
  type Trace,
} from '../formula/index.ts';
import { KNOWN, LoopError, inOrder, type Column } from '../graph/index.ts';
import type { Notebook } from '../notebook/index.ts';
import { kindName, sameDimension, sentence, usualUnit, type Kind } from '../units/index.ts';
import type { Engine } from './engine.ts';
import { kindNamed, kindNames } from './kinds.ts';
import { loopNames, loopWords } from './loop.ts';
import type { BandModel, SheetModel } from './model.ts';
import type { FormulaCheck } from './own-view.ts';
import { reasonText, reasonsFor } from './reasons.ts';
import { rowAt } from './row-ids.ts';
import { scopeOf } from './scope.ts';
import { shownUnit, shownWithUnit } from './shown.ts';

/** Where a formula is tried. */
export interface TriedPlace {
  readonly sheet: SheetModel;
  readonly band: BandModel;
  /** The column it is to stand in; blank where that is not there yet. */
  readonly column: string;
  readonly row: string;
}

/** What a formula would be and come to, without putting it anywhere. */
export function tryFormula(
  text: string,
  place: TriedPlace,
  engine: Engine,
  notebook: Notebook,
): FormulaCheck {
  const { sheet, band, column } = place;
  const model = band.columns.get(column);
  const read = readFormula(text, scopeOf(sheet, band, engine.models), model?.kind);
  if (!isFormula(read)) return { ...NOTHING, problem: read };
  const program = new Program(read.expression, band.rows, engine.words);
  const loop = model && loopThrough(program, model.suggestion ?? model.result, text, engine);
  if (loop) return { ...NOTHING, problem: loop };
  const kind = model?.kind ?? read.kind;
  const unit = model ? shownUnit(model.definition, notebook.document) : unitOf(read);
  return {
    problem: undefined,
    kind: kindName(read.kind),
    kindId: kindIdOf(read.kind),
    unit,
    ...valueIn(place, program, kind, unit, engine, notebook),
  };
}

const NOTHING = { kind: '', kindId: '', unit: '', value: '', isKnown: false } as const;

/** The name that a kind has on sheets; blank where it has none. */
function kindIdOf(kind: Kind): string {
  if (kind.type === 'choice') return 'choice';
  return kindNames().find((name) => isSame(kindNamed(name), kind)) ?? '';
}

function isSame(a: Kind | undefined, b: Kind): boolean {
  if (a?.type !== b.type) return false;
  if (a.type === 'quantity' && b.type === 'quantity')
    return sameDimension(a.dimension, b.dimension) && (a.scale ?? '') === (b.scale ?? '');
  return a.type !== 'list' || (b.type === 'list' && isSame(a.of, b.of));
}

function unitOf({ kind, shownIn }: Formula): string {
  if (shownIn) return shownIn.symbol;
  return kind.type === 'quantity' ? usualUnit(kind.dimension).symbol : '';
}

function valueIn(
  { sheet, band, row: rowId }: TriedPlace,
  program: Program,
  kind: Kind,
  unit: string,
  engine: Engine,
  notebook: Notebook,
): Pick<FormulaCheck, 'value' | 'isKnown'> {
  const row = rowAt(sheet, band, rowId, notebook, engine.models);
  if (row < 0) return { value: '', isKnown: false };
  const values = new Float64Array(row + 1);
  const states = new Uint8Array(row + 1);
  program.run(values, states, row, row + 1);
  if (states[row] === KNOWN) {
    const value = decode(values[row] ?? NaN, kind, engine.words);
    return { value: shownWithUnit(value, kind, unit), isKnown: true };
  }
  return {
    value: whyNot(program, row, `${sheet.definition.id}/${rowId}`, engine, notebook),
    isKnown: false,
  };
}

function whyNot(
  program: Program,
  row: number,
  sheetAndRow: string,
  engine: Engine,
  notebook: Notebook,
): string {
  const waits = new Map<string, string>();
  const said: string[] = [];
  const trace: Trace = {
    lacks: (column, at) => {
      const reasons = reasonsFor(column, at, engine, notebook);
      for (const [key, name] of reasons.waits) waits.set(key, name);
      for (const { problem } of reasons.problems) said.push(sentence({ ...problem, where: '' }));
    },
    wrong: (problem) => said.push(sentence({ ...problem, where: '' })),
  };
  program.explain(row, trace);
  return said[0] ?? reasonText({ waits, problems: [] }, sheetAndRow);
}

/** The loop that a formula would close, told by the names round it. */
function loopThrough(
  program: Program,
  target: Column,
  text: string,
  engine: Engine,
): FormulaProblem | undefined {
  const before = target.computation;
  try {
    target.computation = program;
    inOrder(engine.owners.keys());
    return undefined;
  } catch (error) {
    if (!(error instanceof LoopError)) throw error;
    const names = loopNames(error.loop);
    return {
      where: '',
      found: loopWords(names),
      fix: 'Change it so that none leads back to itself.',
      span: spanOf(names, text),
    };
  } finally {
    target.computation = before;
  }
}

// The first name of the loop that the text holds.
function spanOf(names: readonly string[], text: string): FormulaProblem['span'] {
  for (const name of names) {
    const id = /\w+$/.exec(name)?.[0] ?? '';
    const at = text.search(new RegExp(`\\b${id}\\b`));
    if (id !== '' && at >= 0) return { start: at, end: at + id.length };
  }
  return { start: 0, end: text.length };
}
