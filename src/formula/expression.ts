import type { Column, Reach } from '../graph/index.ts';
import type { Rule } from '../trade/index.ts';
import type { Kind, Value } from '../units/index.ts';
import type { AggregateName, GeneralName } from './general.ts';
import type { Span } from './problem.ts';
import type { Comparison } from './syntax.ts';

/** A formula whose kinds fit, ready to be worked out. */
export type Expression = Span & { readonly kind: Kind } & Form;

type Form =
  | { readonly form: 'constant'; readonly value: Value }
  | { readonly form: 'column'; readonly reference: Reference }
  | { readonly form: 'row number' }
  /** The same column one row above (-1) or below (1). */
  | { readonly form: 'neighbor'; readonly reference: Reference; readonly step: -1 | 1 }
  | { readonly form: 'negative' | 'not'; readonly of: Expression }
  | {
      readonly form: 'sum' | 'difference' | 'product' | 'quotient' | 'power' | 'both' | 'either';
      readonly left: Expression;
      readonly right: Expression;
    }
  | {
      readonly form: 'comparison';
      readonly sign: Comparison;
      readonly left: Expression;
      readonly right: Expression;
    }
  | {
      readonly form: 'choice';
      readonly when: Expression;
      readonly then: Expression;
      readonly otherwise: Expression;
    }
  | { readonly form: 'list'; readonly items: readonly Expression[] }
  | { readonly form: 'rule'; readonly rule: Rule; readonly arguments: readonly Expression[] }
  | {
      readonly form: 'general';
      readonly name: GeneralName;
      readonly arguments: readonly Expression[];
    }
  /** An aggregate over the rows of a sheet; columns of that sheet inside it go row by row. */
  | {
      readonly form: 'aggregate';
      readonly name: AggregateName;
      readonly sheet: string;
      readonly arguments: readonly Expression[];
    };

/** What a name in a formula stands for. */
export interface Reference {
  readonly sheet: string;
  readonly name: string;
  /** What people call it. */
  readonly label: string;
  readonly kind: Kind;
  readonly reach: Reach;
  /** One column; several where the sheet's rows come in bands. */
  readonly columns: readonly Column[];
}

/** Which names a formula may use. */
export interface Scope {
  /** The sheet the formula stands on; blank outside any sheet. */
  readonly sheet: string;
  /** A column of the same row, else a job input. */
  bare(name: string): Reference | undefined;
  /** A column of a sheet; inside an aggregate the sheet's own columns are whole. */
  member(sheet: string, column: string, insideAggregate: boolean): Reference | undefined;
  /** Every name that could have been meant, for “did you mean”. */
  names(): readonly string[];
  /** Names of sheets. */
  sheets(): readonly string[];
}

/** The expressions directly inside one. */
export function parts(expression: Expression): readonly Expression[] {
  switch (expression.form) {
    case 'constant':
    case 'column':
    case 'row number':
    case 'neighbor':
      return [];
    case 'negative':
    case 'not':
      return [expression.of];
    case 'choice':
      return [expression.when, expression.then, expression.otherwise];
    case 'list':
      return expression.items;
    case 'rule':
    case 'general':
    case 'aggregate':
      return expression.arguments;
    default:
      return [expression.left, expression.right];
  }
}

/** Every column an expression reads, at any depth. */
export function references(expression: Expression): readonly Reference[] {
  if (expression.form === 'column') return [expression.reference];
  if (expression.form === 'neighbor') return [{ ...expression.reference, reach: 'near' }];
  return parts(expression).flatMap(references);
}

/** Whether the value depends on where the row stands on its sheet. */
export function countsRows(expression: Expression): boolean {
  return expression.form === 'row number' || parts(expression).some(countsRows);
}

/** Whether the value can differ from row to row. */
export function varies(expression: Expression): boolean {
  switch (expression.form) {
    case 'row number':
    case 'neighbor':
      return true;
    case 'column':
      return expression.reference.reach !== 'whole';
    default:
      return parts(expression).some(varies);
  }
}
