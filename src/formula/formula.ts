import {
  isProblem,
  kindName,
  parseUnit,
  sameDimension,
  type Kind,
  type Unit,
} from '../units/index.ts';
import { check } from './check.ts';
import type { Expression, Scope } from './expression.ts';
import { capital, misfit, withArticle } from './fit.ts';
import { parse } from './parse.ts';
import { Refused, type FormulaProblem } from './problem.ts';

/** A formula that can be worked out: every name is known and every kind fits. */
export interface Formula {
  readonly text: string;
  readonly expression: Expression;
  readonly kind: Kind;
  /** The unit after `to`. */
  readonly shownIn: Unit | undefined;
}

/** Names nothing: for expressions that stand on no sheet. */
export const EMPTY_SCOPE: Scope = {
  sheet: '',
  bare: () => undefined,
  member: () => undefined,
  names: () => [],
  sheets: () => [],
};

/**
 * Reads a formula and checks it whole, before any data is entered.
 * `wanted` is the kind its column must have. A FormulaProblem says what is wrong and under which characters.
 */
export function readFormula(text: string, scope: Scope, wanted?: Kind): Formula | FormulaProblem {
  try {
    const { body, shownIn: named } = parse(text);
    const expression = check(body, { scope, insideAggregate: false });
    const shownIn = named && shownUnit(named.unit, named, expression);
    const found = wanted && misfit(expression.kind, wanted);
    if (found !== undefined)
      throw new Refused(expression, found, 'Change the formula or the kind of its column.');
    return { text, expression, kind: expression.kind, shownIn };
  } catch (error) {
    if (error instanceof Refused) return error.problem;
    throw error;
  }
}

/** Tells a formula from the problem that stands in its place. */
export function isFormula(read: Formula | FormulaProblem): read is Formula {
  return !isProblem(read);
}

function shownUnit(name: string, span: { start: number; end: number }, { kind }: Expression): Unit {
  const unit = parseUnit(name);
  if (!unit)
    throw new Refused(
      span,
      `“${name}” is not a unit.`,
      'Write a unit after “to”, such as ft or psf/ft.',
    );
  if (kind.type !== 'quantity' || !sameDimension(kind.dimension, unit.dimension)) {
    throw new Refused(
      span,
      `${capital(withArticle(kindName(kind)))} can't be shown in ${name}.`,
      'Choose a unit of the same kind.',
    );
  }
  return kind.scale === 'difference' ? { ...unit, offset: 0 } : unit;
}
