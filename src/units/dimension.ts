/** Powers of the base quantities; money and angle count as bases of their own. */
export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly temperature: number;
  readonly angle: number;
  readonly money: number;
}

const BASES = ['length', 'mass', 'time', 'temperature', 'angle', 'money'] as const;

/** A plain number: a count, a ratio. */
export const RATIO = dimension({});
export const LENGTH = dimension({ length: 1 });
export const AREA = dimension({ length: 2 });
export const VOLUME = dimension({ length: 3 });
export const MASS = dimension({ mass: 1 });
export const DURATION = dimension({ time: 1 });
export const TEMPERATURE = dimension({ temperature: 1 });
export const ANGLE = dimension({ angle: 1 });
export const MONEY = dimension({ money: 1 });
export const SPEED = dimension({ length: 1, time: -1 });
export const FORCE = dimension({ length: 1, mass: 1, time: -2 });
export const PRESSURE = dimension({ length: -1, mass: 1, time: -2 });
/** Pressure per depth, such as psf per ft; the same dimension as a force per volume. */
export const PRESSURE_PER_DEPTH = dimension({ length: -2, mass: 1, time: -2 });
export const FORCE_PER_LENGTH = dimension({ mass: 1, time: -2 });
export const DENSITY = dimension({ length: -3, mass: 1 });
export const MOMENT = dimension({ length: 2, mass: 1, time: -2 });
export const MATURITY = dimension({ temperature: 1, time: 1 });

/** A dimension from the powers that are not zero. */
export function dimension(powers: Partial<Dimension>): Dimension {
  return { length: 0, mass: 0, time: 0, temperature: 0, angle: 0, money: 0, ...powers };
}

/** The dimension of a product. */
export function times(a: Dimension, b: Dimension): Dimension {
  return combine(a, b, 1);
}

/** The dimension of a quotient. */
export function per(a: Dimension, b: Dimension): Dimension {
  return combine(a, b, -1);
}

/** The dimension of a power; the exponent may be a fraction. */
export function power(a: Dimension, exponent: number): Dimension {
  return fromBases((base) => a[base] * exponent);
}

/** Whether two quantities may be added and compared. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a === b || BASES.every((base) => Math.abs(a[base] - b[base]) < 1e-9);
}

const NAMED: readonly (readonly [string, Dimension])[] = [
  ['plain number', RATIO],
  ['length', LENGTH],
  ['area', AREA],
  ['volume', VOLUME],
  ['mass', MASS],
  ['duration', DURATION],
  ['temperature', TEMPERATURE],
  ['angle', ANGLE],
  ['money', MONEY],
  ['speed', SPEED],
  ['force', FORCE],
  ['pressure', PRESSURE],
  ['pressure per depth', PRESSURE_PER_DEPTH],
  ['force per length', FORCE_PER_LENGTH],
  ['density', DENSITY],
  ['moment', MOMENT],
  ['temperature x duration', MATURITY],
];

/** What the trade calls the dimension, or its powers spelt out. */
export function dimensionName(dimension: Dimension): string {
  const named = NAMED.find(([, known]) => sameDimension(known, dimension));
  if (named) return named[0];
  return BASES.filter((base) => dimension[base] !== 0)
    .map((base) => (dimension[base] === 1 ? base : `${base}^${String(dimension[base])}`))
    .join(' x ');
}

function combine(a: Dimension, b: Dimension, sign: 1 | -1): Dimension {
  return fromBases((base) => a[base] + sign * b[base]);
}

function fromBases(exponent: (base: (typeof BASES)[number]) => number): Dimension {
  return {
    length: exponent('length'),
    mass: exponent('mass'),
    time: exponent('time'),
    temperature: exponent('temperature'),
    angle: exponent('angle'),
    money: exponent('money'),
  };
}
