import {
  ANGLE,
  AREA,
  DURATION,
  FORCE,
  FORCE_PER_LENGTH,
  LENGTH,
  MATURITY,
  MOMENT,
  MONEY,
  PRESSURE,
  PRESSURE_PER_DEPTH,
  SPEED,
  TEMPERATURE,
  VOLUME,
  quantity,
  type Kind,
} from '../units/index.ts';
import type { Parameter } from './rule.ts';

export const length = quantity(LENGTH);
export const area = quantity(AREA);
export const volume = quantity(VOLUME);
export const angle = quantity(ANGLE);
export const force = quantity(FORCE);
export const forcePerLength = quantity(FORCE_PER_LENGTH);
export const moment = quantity(MOMENT);
export const pressure = quantity(PRESSURE);
/** Also a force per volume, such as the weight of a soil. */
export const pressurePerDepth = quantity(PRESSURE_PER_DEPTH);
export const speed = quantity(SPEED);
export const duration = quantity(DURATION);
export const maturityKind = quantity(MATURITY);
export const money = quantity(MONEY);
/** An activation energy over the gas constant, in kelvin: neither one temperature nor a difference. */
export const activation = quantity(TEMPERATURE);

/** The parameters of a rule, in order, from their names and kinds. */
export function takes(kinds: Readonly<Record<string, Kind>>): readonly Parameter[] {
  return Object.entries(kinds).map(([name, kind]) => ({ name, kind }));
}
