import type { Answer } from '../units/index.ts';
import { FOOT, MPH, PSF } from './factors.ts';
import { aboveZero, atMost, between, covered, oneOf, shown, zeroOrMore } from './limits.ts';
import type { Limit } from './limits.ts';
import { CASES_A_AND_B, coefficientAt } from './wall-table.ts';

/** Gust factor of a stiff structure: ASCE 7-16 26.11. */
const GUST = 0.85;
/** Share of an ultimate wind that goes with allowable stresses: ASCE 7-16 2.4. */
const ALLOWABLE_STRESS = 0.6;
/** Wind directionality, solid freestanding walls: ASCE 7-16 Table 26.6-1. */
const DIRECTIONALITY = 0.85;

/** Terrain constants, ASCE 7-05 to 7-16: the power and the gradient height. [1], [m] */
const TERRAIN = new Map([
  ['B', { alpha: 7, gradient: 1200 * FOOT }],
  ['C', { alpha: 9.5, gradient: 900 * FOOT }],
  ['D', { alpha: 11.5, gradient: 700 * FOOT }],
]);

/** The exposures of ASCE 7, most sheltered first. */
export const EXPOSURES: readonly string[] = [...TERRAIN.keys()];

/**
 * Velocity pressure of the wind at a height.
 *
 * q = 0.00256 Kz Kzt Kd Ke V^2 (psf, mph), Kz = 2.01 (max(z, 15 ft) / zg)^(2/alpha), Kd 0.85,
 * Kzt 1, Ke 1; V speed, z height
 *
 * Kzt 1 (flat ground), Ke 1 (sea level, the safe side). Speeds of ASCE
 * 7-10 and later are ultimate: this is not yet an allowable-stress pressure. Holds up to the gradient height.
 *
 * @param speed - Basic wind speed, 0 or more. [m/s]
 * @param exposure - B, C or D. [text]
 * @param height - Height of the top of the fence, more than 0. [m]
 * @returns Velocity pressure. [Pa]
 *
 * @source ASCE 7-16 26.10, as carried in public worksheets
 * @check 155 mph, D, 20 ft → 56.62 psf (public worksheet, ASCE 7-10)
 */
export function velocityPressure(speed: number, exposure: string, height: number): Answer {
  return covered('velocity_pressure', windLimits(speed, exposure, height), () =>
    pressureAt(speed, exposure, height),
  );
}

/**
 * Net force coefficient of a solid wall or fence, wind square on.
 *
 * Cf = the table at B/s and s/h, linear between its values; B length, s height, h top height
 *
 * Cases A and B only: near a free end of a wall twice as long as high, Case C
 * asks for more (`end_wind`).
 *
 * @param length - B, length of the run, more than 0. [m]
 * @param height - s, height of the fence itself, more than 0. [m]
 * @param topHeight - h, its top above the ground, at least s. [m]
 * @returns Net force coefficient. [1]
 *
 * @source ASCE 7-16 Fig. 29.3-1, Cases A and B
 * @check 6 ft long, 6 ft high, on the ground → 1.45 (ASCE 7-16 Fig. 29.3-1)
 */
export function wallForceCoefficient(length: number, height: number, topHeight: number): Answer {
  const order: Limit = atMost(height, topHeight)
    ? undefined
    : [
        `The top is “${shown(topHeight, 'ft')}” above the ground and the fence “${shown(height, 'ft')}” high.`,
        'Enter the top as the fence height plus the gap below it.',
      ];
  const limits = [aboveZero('length', length, 'ft'), aboveZero('height', height, 'ft'), order];
  return covered('wall_force_coefficient', limits, () =>
    coefficientAt(CASES_A_AND_B, length / height, height / topHeight),
  );
}

/**
 * The share of the full wind force that a fence with small openings takes.
 *
 * factor = 1 - (1 - e)^1.5, e the solid ratio
 *
 * For openings under 30% of the gross area; a more open fence is worked as a
 * lattice on its solid area, which is not done here.
 *
 * @param solidRatio - Solid area over gross area, 0.7 to 1. [1]
 * @returns Factor on the force on the gross area. [1]
 *
 * @source ASCE 7-16 Fig. 29.3-1, note on openings
 * @check hand-worked: 0.8 → 1 - 0.2^1.5 = 0.9106
 */
export function openAreaFactor(solidRatio: number): Answer {
  return covered('open_area_factor', [solidLimit(solidRatio)], () => openFactor(solidRatio));
}

/**
 * Allowable-stress wind pressure on the gross area of a fence, away from its free ends.
 *
 * p = 0.6 q G Cf (1 - (1 - e)^1.5), G 0.85, Cf of Cases A and B at s/h = 1; e solid ratio
 *
 * Cases A and B only: within a few fence heights of a free end use `end_wind`.
 * Speeds must be ultimate ones (ASCE 7-10 and later); 7-05 speeds are already at service level.
 *
 * @param speed - Basic wind speed, 0 or more. [m/s]
 * @param exposure - B, C or D. [text]
 * @param height - Height of the fence, its top above the ground. [m]
 * @param solidRatio - Solid area over gross area, 0.7 to 1. [1]
 * @param length - Length of the run, more than 0. [m]
 * @returns Pressure on the gross area. [Pa]
 *
 * @source ASCE 7-16 29.3 and Fig. 29.3-1, Cases A and B, with 0.6 W of 2.4
 * @check hand-worked: 115 mph, B, 6 ft, solid, 96 ft → 526.3 lbf on 48 ft^2
 */
export function fenceWind(
  speed: number,
  exposure: string,
  height: number,
  solidRatio: number,
  length: number,
): Answer {
  const limits = [
    ...windLimits(speed, exposure, height),
    solidLimit(solidRatio),
    aboveZero('length', length, 'ft'),
  ];
  return covered('fence_wind', limits, () => {
    const coefficient = coefficientAt(CASES_A_AND_B, length / height, 1);
    return allowablePressure(speed, exposure, height, solidRatio) * coefficient;
  });
}

/** 0.6 q G and the factor for openings: what a force coefficient multiplies. [Pa] */
export function allowablePressure(
  speed: number,
  exposure: string,
  height: number,
  solidRatio: number,
): number {
  return ALLOWABLE_STRESS * GUST * pressureAt(speed, exposure, height) * openFactor(solidRatio);
}

/** What every wind rule asks of speed, exposure and height. */
export function windLimits(speed: number, exposure: string, height: number): readonly Limit[] {
  const gradient = TERRAIN.get(exposure)?.gradient ?? Infinity;
  return [
    zeroOrMore('wind speed', speed, 'mph'),
    oneOf('exposure', exposure, EXPOSURES),
    aboveZero('height', height, 'ft'),
    between('height', height, [0, gradient], 'ft', 'Check the unit.'),
  ];
}

/** Refuses a fence too open to count as a solid wall. */
export function solidLimit(solidRatio: number): Limit {
  const advice =
    'A more open fence is worked as a lattice on its solid area: ask an engineer, or take it as solid.';
  return between('solid ratio', solidRatio, [0.7, 1], '', advice);
}

/** Kz, the velocity pressure exposure coefficient. [1] */
export function exposureFactor(exposure: string, height: number): number {
  const { alpha, gradient } = TERRAIN.get(exposure) ?? { alpha: NaN, gradient: NaN };
  return 2.01 * (Math.max(height, 15 * FOOT) / gradient) ** (2 / alpha);
}

/** q, the velocity pressure at a height. [Pa] */
export function pressureAt(speed: number, exposure: string, height: number): number {
  const kz = exposureFactor(exposure, height);
  return 0.00256 * PSF * kz * DIRECTIONALITY * (speed / MPH) ** 2;
}

/** Share of the force that a fence with small openings takes. [1] */
export function openFactor(solidRatio: number): number {
  return 1 - Math.max(0, 1 - solidRatio) ** 1.5;
}
