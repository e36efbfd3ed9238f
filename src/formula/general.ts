import {
  ANGLE,
  FLAG,
  PLAIN,
  power,
  quantity,
  RATIO,
  sameDimension,
  type Kind,
  type QuantityKind,
} from '../units/index.ts';

/** Functions that belong to no trade. */
export type GeneralName =
  | 'given'
  | 'only_if'
  | 'abs'
  | 'sqrt'
  | 'ceil'
  | 'floor'
  | 'round'
  | 'up_to_step'
  | 'sin'
  | 'cos'
  | 'tan'
  | 'atan'
  | 'atan2';

/** Functions that make one value of many. */
export type AggregateName =
  | 'sum'
  | 'min'
  | 'max'
  | 'mean'
  | 'count'
  | 'count_where'
  | 'first'
  | 'any'
  | 'all'
  | 'pick'
  | 'value_for';

export interface General {
  readonly name: GeneralName;
  readonly parameters: readonly string[];
  readonly meaning: string;
  /** The kind of the result, or what the arguments should have been. */
  readonly result: (given: readonly Kind[]) => Kind | string;
}

export interface Aggregate {
  readonly name: AggregateName;
  readonly parameters: readonly string[];
  readonly meaning: string;
}

const angle = quantity(ANGLE);

/** The general functions, by name. */
export const GENERAL: ReadonlyMap<string, General> = new Map(
  [
    general('given', ['x', 'otherwise'], 'x, or otherwise where x is blank', ([x, otherwise]) =>
      x && otherwise ? (unified(x, otherwise) ?? 'two of one kind') : 'two of one kind',
    ),
    general(
      'only_if',
      ['x', 'condition'],
      'x where the condition is true, else blank',
      ([x, flag]) => (x && flag?.type === 'flag' ? x : 'a value and a condition'),
    ),
    general('abs', ['x'], 'x without its sign', ([x]) => sized(x) ?? 'a quantity'),
    general('sqrt', ['x'], 'the square root', ([x]) => {
      const of = sized(x);
      return of ? quantity(power(of.dimension, 0.5)) : 'a quantity';
    }),
    general('ceil', ['x'], 'the next whole number up', ([x]) => plain(x, 'up_to_step')),
    general('floor', ['x'], 'the next whole number down', ([x]) => plain(x, 'up_to_step')),
    general('round', ['x'], 'the nearest whole number, half away from zero', ([x]) =>
      plain(x, 'up_to_step'),
    ),
    general('up_to_step', ['x', 'step'], 'x, raised to a whole number of steps', ([x, step]) => {
      const [of, by] = [sized(x), sized(step)];
      return of && by && sameDimension(of.dimension, by.dimension) ? of : 'two of one kind';
    }),
    general('sin', ['angle'], 'the sine', ([x]) => ofAngle(x)),
    general('cos', ['angle'], 'the cosine', ([x]) => ofAngle(x)),
    general('tan', ['angle'], 'the tangent', ([x]) => ofAngle(x)),
    general('atan', ['slope'], 'the angle of a slope', ([x]) =>
      x?.type === 'quantity' && sameDimension(x.dimension, RATIO) ? angle : 'a plain number',
    ),
    general('atan2', ['y', 'x'], 'the angle from x toward y', ([y, x]) => {
      const [up, along] = [sized(y), sized(x)];
      return up && along && sameDimension(up.dimension, along.dimension)
        ? angle
        : 'two of one kind';
    }),
  ].map((each) => [each.name, each]),
);

/** The aggregates, by name. */
export const AGGREGATES: ReadonlyMap<string, Aggregate> = new Map(
  [
    aggregate('sum', ['values'], 'all together'),
    aggregate('min', ['values'], 'the least'),
    aggregate('max', ['values'], 'the greatest'),
    aggregate('mean', ['values'], 'the arithmetic mean'),
    aggregate('count', ['values'], 'how many are given'),
    aggregate('count_where', ['flags'], 'how many are true'),
    aggregate('first', ['values'], 'the first'),
    aggregate('any', ['flags'], 'whether one or more is true'),
    aggregate('all', ['flags'], 'whether none is false'),
    aggregate('pick', ['values', 'flags'], 'the one value where the flag is true'),
    aggregate('value_for', ['key', 'keys', 'values'], 'the value in the row whose key is this one'),
  ].map((each) => [each.name, each]),
);

/** The kind that both may have; undefined where they don't fit. Choices are put together. */
export function unified(a: Kind, b: Kind): Kind | undefined {
  if (a.type === 'choice' && b.type === 'choice') {
    return { type: 'choice', choices: [...new Set([...a.choices, ...b.choices])] };
  }
  if (isWord(a) && isWord(b)) return { type: 'text' };
  if (a.type === 'quantity' && b.type === 'quantity') {
    if (!sameDimension(a.dimension, b.dimension)) return undefined;
    if (a.scale && b.scale && a.scale !== b.scale) return undefined;
    return a.scale ? a : b;
  }
  if (a.type === 'list' && b.type === 'list') {
    const of = unified(a.of, b.of);
    return of && { type: 'list', of };
  }
  return a.type === b.type ? a : undefined;
}

/** Text, or a choice, which is text from a list. */
export function isWord(kind: Kind): boolean {
  return kind.type === 'text' || kind.type === 'choice';
}

/** The kind an aggregate gives for the kinds of its arguments, or what they should have been. */
export function aggregateResult(name: AggregateName, given: readonly Kind[]): Kind | string {
  const [first, second, third] = given;
  if (!first) return 'something to work on';
  switch (name) {
    case 'count':
      return PLAIN;
    case 'count_where':
      return first.type === 'flag' ? PLAIN : 'a condition';
    case 'any':
    case 'all':
      return first.type === 'flag' ? FLAG : 'a condition';
    case 'sum':
      return sized(first) ?? 'quantities; temperatures are not added';
    case 'min':
    case 'max':
    case 'mean':
      return first.type === 'quantity' || first.type === 'date' ? first : 'quantities';
    case 'first':
      return first;
    case 'pick':
      return second?.type === 'flag' ? first : 'values and a condition';
    case 'value_for':
      return third && second && unified(first, second) ? third : 'a key of the kind of the keys';
  }
}

function sized(kind: Kind | undefined): QuantityKind | undefined {
  return kind?.type === 'quantity' && kind.scale !== 'point' ? kind : undefined;
}

function plain(kind: Kind | undefined, instead: string): Kind | string {
  return kind?.type === 'quantity' && sameDimension(kind.dimension, RATIO)
    ? PLAIN
    : `a plain number; with a unit, use ${instead}(x, step)`;
}

function ofAngle(kind: Kind | undefined): Kind | string {
  return kind?.type === 'quantity' && sameDimension(kind.dimension, ANGLE)
    ? PLAIN
    : 'an angle, such as 30 deg';
}

function general(
  name: GeneralName,
  parameters: readonly string[],
  meaning: string,
  result: General['result'],
): General {
  return { name, parameters, meaning, result };
}

function aggregate(name: AggregateName, parameters: readonly string[], meaning: string): Aggregate {
  return { name, parameters, meaning };
}
