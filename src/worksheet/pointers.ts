import { Program, isFormula, readFormula } from '../formula/index.ts';
import { FLAG } from '../units/index.ts';
import type { ReasonDefinition } from './definition.ts';
import type { Engine } from './engine.ts';
import type { BandModel, SheetModel } from './model.ts';
import { scopeOf } from './scope.ts';
import { filled } from './stops.ts';
import type { Spot } from './working-steps.ts';

/** A reason at work. */
interface Pointer {
  readonly definition: ReasonDefinition;
  readonly program: Program;
}

// Worked out only where somebody looks: a long run has hundreds of thousands of them. Kept as long as the engine's rows are.
const known = new WeakMap<BandModel, readonly Pointer[]>();

/** The readings that speak for what a cell shows, in words and never as a verdict. */
export function pointersOf(column: string, spot: Spot): readonly string[] {
  const { sheet, band, row, engine, notebook } = spot;
  return pointersIn(sheet, band, engine)
    .filter(({ definition, program }) => definition.column === column && program.isTrue(row))
    .map(({ definition }) => filled(definition.message, sheet, band, row, engine, notebook));
}

function pointersIn(sheet: SheetModel, band: BandModel, engine: Engine): readonly Pointer[] {
  const before = known.get(band);
  if (before) return before;
  const scope = scopeOf(sheet, band, engine.models);
  const made = (sheet.definition.reasons ?? []).map((definition): Pointer => {
    const read = readFormula(definition.when, scope, FLAG);
    if (!isFormula(read))
      throw new Error(`${sheet.definition.id}: ${definition.when}: ${read.found} ${read.fix}`);
    return { definition, program: new Program(read.expression, band.rows, engine.words) };
  });
  known.set(band, made);
  return made;
}
