import type { Answer } from '../units/index.ts';
import { aboveZero, atMost, covered, shown, zeroOrMore, type Limit } from './limits.ts';
import { CASE_C, endCoefficientAt } from './wall-table.ts';
import { allowablePressure, solidLimit, windLimits } from './wind.ts';

/** The least B/s for which Case C is asked. */
const LEAST_LENGTH_RATIO = 2;

/**
 * Allowable-stress wind pressure on a strip of fence near a free end, wind at an angle.
 *
 * p = 0.6 q G (1 - (1 - e)^1.5) (1.8 - s/h) x the mean of Cf over the strip, G 0.85, s/h 1;
 * e solid ratio
 *
 * Cf steps down by region from the windward end: 0 to s, s to 2s, 2s to 3s and
 * on; the strip's mean is exact over the regions it crosses. The fence stands on
 * the ground, s/h = 1, so the factor is 0.8 (from memory). For runs at least twice
 * as long as high. Beyond ten heights the table has values only from B/s = 13;
 * shorter runs take that one. No credit for a return corner.
 *
 * @param speed - Basic wind speed, 0 or more. [m/s]
 * @param exposure - B, C or D. [text]
 * @param height - Height of the fence, its top above the ground. [m]
 * @param solidRatio - Solid area over gross area, 0.7 to 1. [1]
 * @param length - Length of the run, at least two heights. [m]
 * @param start - Near edge of the strip, from the nearest free end. [m]
 * @param end - Far edge of the strip, from the same end. [m]
 * @returns Mean pressure on the gross area of the strip. [Pa]
 *
 * @source ASCE 7-16 Fig. 29.3-1, Case C; the factor 1.8 - s/h from memory
 * @check hand-worked: 6 ft high, 78 ft long, strip 4 to 12 ft → Cf 0.8 (2 x 4.00 + 6 x 2.60)/8 = 2.36
 */
export function endWind(
  speed: number,
  exposure: string,
  height: number,
  solidRatio: number,
  length: number,
  start: number,
  end: number,
): Answer {
  const limits = [
    ...windLimits(speed, exposure, height),
    solidLimit(solidRatio),
    aboveZero('length', length, 'ft'),
    longEnough(length, height),
    zeroOrMore('start of the strip', start, 'ft'),
    stripLimit(start, end, length),
  ];
  return covered('end_wind', limits, () => {
    const factor = 1.8 - 1;
    const coefficient = stripCoefficient(length / height, start / height, end / height);
    return allowablePressure(speed, exposure, height, solidRatio) * factor * coefficient;
  });
}

/** Mean of the Case C coefficient between two distances from the end, both in heights. */
export function stripCoefficient(lengthRatio: number, start: number, end: number): number {
  const total = CASE_C.reduce((sum, region) => {
    const overlap = Math.min(end, region.to) - Math.max(start, region.from);
    return overlap > 0 ? sum + overlap * endCoefficientAt(region, lengthRatio) : sum;
  }, 0);
  return total / (end - start);
}

function longEnough(length: number, height: number): Limit {
  if (atMost(LEAST_LENGTH_RATIO * height, length)) return undefined;
  return [
    `The run is “${shown(length, 'ft')}” long and “${shown(height, 'ft')}” high, less than twice as long as high.`,
    'Use fence_wind: so short a run has no separate end pressure.',
  ];
}

function stripLimit(start: number, end: number, length: number): Limit {
  if (end > start && atMost(end, length)) return undefined;
  // Written out only where it is told: that takes longer than the answer.
  const strip = `The strip runs from “${shown(start, 'ft')}” to “${shown(end, 'ft')}”`;
  if (!(end > start)) return [`${strip}.`, 'Give the edge nearer the free end first.'];
  return [
    `${strip} on a run of “${shown(length, 'ft')}”.`,
    'Measure both edges from one free end, within the run.',
  ];
}
