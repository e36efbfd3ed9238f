import {
  ANGLE,
  AREA,
  DENSITY,
  DURATION,
  FORCE,
  FORCE_PER_LENGTH,
  LENGTH,
  MASS,
  MATURITY,
  MOMENT,
  MONEY,
  PRESSURE,
  PRESSURE_PER_DEPTH,
  RATIO,
  SPEED,
  TEMPERATURE,
  VOLUME,
  per,
  power,
  sameDimension,
  times,
  type Dimension,
} from './dimension.ts';

/** A unit of measurement: a value in SI is `number x factor + offset`. */
export interface Unit {
  readonly symbol: string;
  readonly dimension: Dimension;
  /** SI per unit, exact where the definition is exact. */
  readonly factor: number;
  /** SI at zero on the unit's own scale; only degC and degF have one. */
  readonly offset: number;
}

// Exact definitions: NIST SP 811 (2008) App. B.8 and NIST Handbook 44 App. C.
const INCH = 0.0254;
const FOOT = 0.3048;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;

const TABLE = new Map<string, Unit>(
  [
    unit('in', LENGTH, INCH),
    unit('ft', LENGTH, FOOT),
    unit('yd', LENGTH, 0.9144),
    unit('mm', LENGTH, 0.001),
    unit('cm', LENGTH, 0.01),
    unit('m', LENGTH, 1),
    unit('gal', VOLUME, 231 * INCH ** 3),
    unit('L', VOLUME, 0.001),
    unit('lb', MASS, POUND),
    unit('kg', MASS, 1),
    unit('lbf', FORCE, POUND_FORCE),
    unit('N', FORCE, 1),
    unit('kN', FORCE, 1000),
    unit('psi', PRESSURE, POUND_FORCE / INCH ** 2),
    unit('psf', PRESSURE, POUND_FORCE / FOOT ** 2),
    unit('MPa', PRESSURE, 1e6),
    unit('kPa', PRESSURE, 1000),
    unit('Pa', PRESSURE, 1),
    unit('pcf', DENSITY, POUND / FOOT ** 3),
    unit('mph', SPEED, 0.44704),
    unit('deg', ANGLE, Math.PI / 180),
    unit('rad', ANGLE, 1),
    { ...unit('degF', TEMPERATURE, 5 / 9), offset: 459.67 * (5 / 9) },
    { ...unit('degC', TEMPERATURE, 1), offset: 273.15 },
    unit('K', TEMPERATURE, 1),
    unit('s', DURATION, 1),
    unit('min', DURATION, 60),
    unit('h', DURATION, 3600),
    unit('day', DURATION, 86400),
    unit('USD', MONEY, 1),
  ].map((known) => [known.symbol, known]),
);

/** Every simple unit, in the order they are taught. */
export const UNITS: readonly Unit[] = [...TABLE.values()];

/** The simple unit of this name, if there is one. */
export function unitNamed(name: string): Unit | undefined {
  return TABLE.get(name);
}

/** A unit text such as `psf/ft`, `yd^3`, `degC*h`; undefined where it is not one. In a product a temperature is a difference. */
export function parseUnit(text: string): Unit | undefined {
  const simple = TABLE.get(text);
  if (simple) return simple;
  if (text === '') return unit('', RATIO, 1);
  let product: Unit | undefined;
  for (const [whole, operator, name, exponent] of text.matchAll(TERM)) {
    const known = name === '1' ? unit('', RATIO, 1) : TABLE.get(name ?? '');
    // The first part stands alone, every other one behind its sign.
    const placed = (operator === '') === (product === undefined);
    if (!known || !placed || whole === '') return undefined;
    const exact = Number(exponent ?? 1) * (operator === '/' ? -1 : 1);
    product = {
      symbol: text,
      dimension: times(product?.dimension ?? RATIO, power(known.dimension, exact)),
      factor: (product?.factor ?? 1) * known.factor ** exact,
      offset: 0,
    };
  }
  return text.replace(TERM, '') === '' ? product : undefined;
}

const TERM = /([*/]?)\s*([A-Za-z]+|1)(?:\^(-?\d+(?:\.\d+)?))?\s*/g;

/** The SI value of a number read in a unit. */
export function toSI(number: number, { factor, offset }: Unit): number {
  return number * factor + offset;
}

/** The number that shows an SI value in a unit. */
export function fromSI(value: number, { factor, offset }: Unit): number {
  const above = value - offset;
  // A temperature that was read in one scale lies a rounding beside the zero of another.
  return Math.abs(above) <= 4 * Number.EPSILON * Math.abs(offset) ? 0 : above / factor;
}

/** The unit a quantity is shown in when nobody chose one. */
export function usualUnit(quantity: Dimension): Unit {
  const symbol = USUAL.find(([known]) => sameDimension(known, quantity))?.[1];
  return (symbol === undefined ? undefined : parseUnit(symbol)) ?? baseUnit(quantity);
}

const USUAL: readonly (readonly [Dimension, string])[] = [
  [RATIO, ''],
  [LENGTH, 'ft'],
  [AREA, 'ft^2'],
  [VOLUME, 'ft^3'],
  [MASS, 'lb'],
  [FORCE, 'lbf'],
  [PRESSURE, 'psf'],
  [PRESSURE_PER_DEPTH, 'psf/ft'],
  [FORCE_PER_LENGTH, 'lbf/ft'],
  [DENSITY, 'lb/ft^3'],
  [MOMENT, 'lbf*ft'],
  [SPEED, 'mph'],
  [ANGLE, 'deg'],
  [TEMPERATURE, 'degF'],
  [DURATION, 'h'],
  [MATURITY, 'degC*h'],
  [MONEY, 'USD'],
  [per(MONEY, LENGTH), 'USD/ft'],
  [per(MONEY, DURATION), 'USD/h'],
];

/** The unit of a dimension in which the number is the SI value: `m`, `N`, `m^3`, `N/m`, and products of the base units. */
export function siUnit(quantity: Dimension): Unit {
  const compound = COMPOUND_SI.find(([known]) => sameDimension(known, quantity))?.[1];
  if (compound !== undefined) return { ...baseUnit(quantity), symbol: compound };
  const named = UNITS.find(
    ({ dimension, factor, offset }) =>
      factor === 1 && offset === 0 && sameDimension(dimension, quantity),
  );
  return sameDimension(quantity, RATIO) ? unit('', RATIO, 1) : (named ?? baseUnit(quantity));
}

const COMPOUND_SI: readonly (readonly [Dimension, string])[] = [
  [PRESSURE_PER_DEPTH, 'N/m^3'],
  [FORCE_PER_LENGTH, 'N/m'],
  [MOMENT, 'N*m'],
  [DENSITY, 'kg/m^3'],
  [SPEED, 'm/s'],
  [MATURITY, 'K*s'],
];

function baseUnit(quantity: Dimension): Unit {
  const parts: readonly (readonly [string, number])[] = [
    ['m', quantity.length],
    ['kg', quantity.mass],
    ['s', quantity.time],
    ['K', quantity.temperature],
    ['rad', quantity.angle],
    ['USD', quantity.money],
  ];
  const symbol = parts
    .filter(([, exponent]) => exponent !== 0)
    .map(([name, exponent]) => (exponent === 1 ? name : `${name}^${String(exponent)}`))
    .join('*');
  return { symbol, dimension: quantity, factor: 1, offset: 0 };
}

function unit(symbol: string, of: Dimension, factor: number): Unit {
  return { symbol, dimension: of, factor, offset: 0 };
}
