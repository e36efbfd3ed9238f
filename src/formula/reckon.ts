import { EnteredRows, Words, type Column } from '../graph/index.ts';
import {
  ANGLE,
  fromSI,
  isQuantity,
  LENGTH,
  numberText,
  parseUnit,
  problem,
  sameDimension,
  usualUnit,
  writeDate,
  type Kind,
  type Problem,
  type Unit,
  type Value,
} from '../units/index.ts';
import { decode } from './code.ts';
import type { Expression } from './expression.ts';
import { EMPTY_SCOPE, isFormula, readFormula } from './formula.ts';
import { Program } from './program.ts';

/** How a value is to be written out. */
export interface ReckonOptions {
  /** Significant digits. */
  readonly digits: number;
}

/** The value of an expression that stands on no sheet, as text in the unit after `to` or the usual one; or why there is none. */
export function reckon(text: string, { digits }: ReckonOptions): string | Problem {
  const formula = readFormula(text, EMPTY_SCOPE);
  if (!isFormula(formula)) return formula;
  const words = new Words();
  const program = new Program(formula.expression, new EnteredRows('expression', 1), words);
  const values = new Float64Array(1);
  const states = new Uint8Array(1);
  program.run(values, states, 0, 1);
  if (states[0] !== 0) return whyNot(program);
  const value = decode(values[0] ?? NaN, formula.kind, words);
  return valueText(value, formula.kind, formula.shownIn ?? unitFor(formula.expression), digits);
}

function whyNot(program: Program): Problem {
  let found: Problem | undefined;
  program.explain(0, {
    lacks: (column: Column) => {
      found ??= problem(column.name, 'It is blank.', 'Give it a value.');
    },
    wrong: (why) => {
      found ??= why;
    },
  });
  return (
    found ?? problem('', 'It has no value: a condition in it is not met.', 'Change the condition.')
  );
}

/** A value as text in a unit, with so many significant digits. */
export function valueText(value: Value, kind: Kind, unit: Unit, digits: number): string {
  if (typeof value === 'number') {
    if (kind.type === 'date') return writeDate(value);
    return `${numberText(fromSI(value, unit), digits)} ${unit.symbol}`.trim();
  }
  if (typeof value === 'boolean' || typeof value === 'string') return String(value);
  const of = kind.type === 'list' ? kind.of : kind;
  const each = of.type === 'quantity' ? usualUnit(of.dimension) : unit;
  return value.map((item) => valueText(item, of, each, digits)).join(', ');
}

/** The unit an expression is read in where none is asked for: that of its rule, or the usual one. */
export function unitFor({ kind, ...expression }: Expression): Unit {
  const named = expression.form === 'rule' ? parseUnit(expression.rule.unit) : undefined;
  if (named) return named;
  if (kind.type !== 'quantity') return usualUnit(isQuantity(kind, LENGTH) ? LENGTH : ANGLE);
  const kelvin = parseUnit('K');
  // What nobody wrote in degF or degC is a difference, or a temperature in K: an offset would change its number.
  return kelvin && kind.scale !== 'point' && sameDimension(kind.dimension, kelvin.dimension)
    ? kelvin
    : usualUnit(kind.dimension);
}
