import {
  ANGLE,
  AREA,
  DATE,
  DENSITY,
  DURATION,
  FLAG,
  FORCE,
  LENGTH,
  MASS,
  MATURITY,
  MOMENT,
  MONEY,
  PLAIN,
  PRESSURE,
  PRESSURE_PER_DEPTH,
  SPEED,
  TEMPERATURE,
  TEMPERATURE_POINT,
  TEXT,
  VOLUME,
  choiceOf,
  listOf,
  quantity,
  type Kind,
} from '../units/index.ts';

const NAMED = new Map<string, Kind>([
  ['text', TEXT],
  ['flag', FLAG],
  ['date', DATE],
  ['count', PLAIN],
  ['ratio', PLAIN],
  ['slope', PLAIN],
  ['length', quantity(LENGTH)],
  ['area', quantity(AREA)],
  ['density', quantity(DENSITY)],
  ['volume', quantity(VOLUME)],
  ['mass', quantity(MASS)],
  ['force', quantity(FORCE)],
  ['pressure', quantity(PRESSURE)],
  ['pressure per depth', quantity(PRESSURE_PER_DEPTH)],
  ['speed', quantity(SPEED)],
  ['angle', quantity(ANGLE)],
  ['duration', quantity(DURATION)],
  ['temperature', TEMPERATURE_POINT],
  ['temperature difference', quantity(TEMPERATURE)],
  ['maturity', quantity(MATURITY)],
  ['moment', quantity(MOMENT)],
  ['money', quantity(MONEY)],
  ['lengths', listOf(quantity(LENGTH))],
]);

/** The kind that a sheet's JSON names; undefined where there is none of that name. */
export function kindNamed(name: string, choices: readonly string[] = []): Kind | undefined {
  return name === 'choice' ? choiceOf(choices) : NAMED.get(name);
}

/** Every kind a column may have, by name, in the order they are offered. */
export function kindNames(): readonly string[] {
  return [...NAMED.keys(), 'choice'];
}
