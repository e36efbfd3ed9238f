import { quoted } from './characters.ts';
import {
  ANGLE,
  AREA,
  DENSITY,
  DURATION,
  FORCE,
  LENGTH,
  MASS,
  MONEY,
  PRESSURE,
  PRESSURE_PER_DEPTH,
  RATIO,
  SPEED,
  TEMPERATURE,
  VOLUME,
  dimensionName,
  sameDimension,
  type Dimension,
} from './dimension.ts';
import { kindName, type QuantityKind } from './kind.ts';
import { problem, type Problem } from './problem.ts';
import { usualUnit, type Unit } from './unit.ts';

/** The Problem of an entry that is no quantity of this kind, with examples of what would be. */
export function notQuantity(text: string, kind: QuantityKind): Problem {
  return problem('', `${quoted(text)} is not ${named(kind)} I can read.`, advice(kind));
}

/** The Problem of an entry whose unit measures something else; names both. */
export function wrongUnit(text: string, unit: Unit, kind: QuantityKind): Problem {
  const found = `${quoted(text)} is ${withArticle(dimensionName(unit.dimension))}; ${named(kind)} is needed here.`;
  return problem('', found, `${massForForce(unit, kind)}${advice(kind)}`);
}

/** A name with `a` or `an`: “a length”, “an area”, “money” as it is. */
function withArticle(name: string): string {
  if (name === 'money') return 'an amount of money';
  return `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}

function named(kind: QuantityKind): string {
  return withArticle(kindName(kind));
}

function massForForce(unit: Unit, { dimension }: QuantityKind): string {
  const mass = sameDimension(unit.dimension, MASS) && sameDimension(dimension, FORCE);
  const force = sameDimension(unit.dimension, FORCE) && sameDimension(dimension, MASS);
  if (mass) return 'lb and kg are masses; for a force write lbf, N or kN. ';
  return force ? 'lbf, N and kN are forces; for a mass write lb or kg. ' : '';
}

function advice({ dimension }: QuantityKind): string {
  const examples = EXAMPLES.find(([known]) => sameDimension(known, dimension))?.[1];
  return `Write it like ${examples ?? `12 ${usualUnit(dimension).symbol}`}.`;
}

const EXAMPLES: readonly (readonly [Dimension, string])[] = [
  [LENGTH, `36 in, 3 ft or 3' 0"`],
  [AREA, '12 ft^2 or 1.2 m^2'],
  [VOLUME, '0.6 ft^3, 2 yd^3 or 0.05 m^3'],
  [MASS, '80 lb or 20 kg'],
  [FORCE, '720 lbf or 3.2 kN'],
  [PRESSURE, '15 psf or 0.7 kPa'],
  [PRESSURE_PER_DEPTH, '150 psf/ft'],
  [DENSITY, '150 lb/ft^3 or 2400 kg/m^3'],
  [SPEED, '115 mph'],
  [ANGLE, '2 deg or 2%'],
  [TEMPERATURE, '68 degF or 20 degC'],
  [DURATION, '48 h or 2 day'],
  [MONEY, '4.50 or $4.50'],
  [RATIO, '0.1, 10% or 1/16 in per ft'],
];
