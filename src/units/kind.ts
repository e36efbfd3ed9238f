import { RATIO, TEMPERATURE, dimensionName, sameDimension, type Dimension } from './dimension.ts';

/** What a cell, an input or a formula holds; checked when a formula is typed, before any data. */
export type Kind = QuantityKind | TextKind | ChoiceKind | FlagKind | DateKind | ListKind;

/** A number with a dimension, held in SI. */
export interface QuantityKind {
  readonly type: 'quantity';
  readonly dimension: Dimension;
  /** For temperatures only: one temperature, or a difference of two; absent where both readings agree (kelvin). */
  readonly scale?: 'point' | 'difference';
}
export interface TextKind {
  readonly type: 'text';
}
/** Text that must be one of a list. */
export interface ChoiceKind {
  readonly type: 'choice';
  readonly choices: readonly string[];
}
export interface FlagKind {
  readonly type: 'flag';
}
/** A calendar date and time of day, held as seconds since 1970-01-01 without a zone. */
export interface DateKind {
  readonly type: 'date';
}
export interface ListKind {
  readonly type: 'list';
  readonly of: Kind;
}

export const TEXT: TextKind = { type: 'text' };
export const FLAG: FlagKind = { type: 'flag' };
export const DATE: DateKind = { type: 'date' };

/** A quantity of the given dimension. */
export function quantity(dimension: Dimension): QuantityKind {
  return { type: 'quantity', dimension };
}
export const TEMPERATURE_POINT: QuantityKind = {
  type: 'quantity',
  dimension: TEMPERATURE,
  scale: 'point',
};
export const PLAIN = quantity(RATIO);

/** A list of one kind. */
export function listOf(of: Kind): ListKind {
  return { type: 'list', of };
}

/** A text that must be one of `choices`. */
export function choiceOf(choices: readonly string[]): ChoiceKind {
  return { type: 'choice', choices };
}

/** The kind in words, for messages: “length”, “one of firm, loose”, “list of lengths”. */
export function kindName(kind: Kind): string {
  switch (kind.type) {
    case 'quantity':
      if (kind.scale === 'difference') return 'temperature difference';
      return dimensionName(kind.dimension);
    case 'text':
      return 'text';
    case 'choice':
      return `one of ${kind.choices.join(', ')}`;
    case 'flag':
      return 'yes or no';
    case 'date':
      return 'date';
    case 'list':
      return `list, each a ${kindName(kind.of)}`;
  }
}

/** Whether the kind is a quantity of this dimension. */
export function isQuantity(kind: Kind, dimension: Dimension): kind is QuantityKind {
  return kind.type === 'quantity' && sameDimension(kind.dimension, dimension);
}
