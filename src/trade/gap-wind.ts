import type { Answer } from '../units/index.ts';
import { aboveZero, covered, zeroOrMore, type Limit } from './limits.ts';
import { CASES_A_AND_B, coefficientAt } from './wall-table.ts';

/**
 * What a gap under the boards makes of the wind on a fence, away from its free ends.
 *
 * factor = Cf at s/h / Cf at s/h 1, h = s + gap; s fence height, B length
 *
 * Cases A and B; the same table as `wall_force_coefficient`.
 *
 * @param length - B, length of the run, more than 0. [m]
 * @param height - s, height of the fence itself, more than 0. [m]
 * @param gap - Open height under it, 0 or more. [m]
 * @returns Wind over that on the same fence standing on the ground. [1]
 *
 * @source ASCE 7-16 Fig. 29.3-1, Cases A and B
 * @check hand-worked: 60 ft long, 9 ft high, 1 ft off the ground, s/h 0.9 → 1.40/1.30 = 1.0769
 */
export function gapFactor(length: number, height: number, gap: number): Answer {
  const limits = [aboveZero('length', length, 'ft'), ...gapLimits(height, gap)];
  return covered('gap_factor', limits, () => {
    const at = (ratio: number): number => coefficientAt(CASES_A_AND_B, length / height, ratio);
    return at(height / (height + gap)) / at(1);
  });
}

/**
 * What a gap under the boards makes of the wind near a free end.
 *
 * factor = (1.8 - s/h) / 0.8, and 1.25 for s/h of 0.8 and less, h = s + gap; s fence height
 *
 * Case C; the factor 1.8 - s/h is from memory and goes with s/h over 0.8 alone.
 *
 * @param height - s, height of the fence itself, more than 0. [m]
 * @param gap - Open height under it, 0 or more. [m]
 * @returns Wind over that on the same fence standing on the ground. [1]
 *
 * @source ASCE 7-16 Fig. 29.3-1, Case C; the factor 1.8 - s/h from memory
 * @check hand-worked: 9 ft high, 1 ft off the ground, s/h 0.9 → 0.9/0.8 = 1.125
 */
export function endGapFactor(height: number, gap: number): Answer {
  return covered('end_gap_factor', gapLimits(height, gap), () => {
    return (1.8 - Math.max(0.8, height / (height + gap))) / 0.8;
  });
}

function gapLimits(height: number, gap: number): readonly Limit[] {
  return [aboveZero('height', height, 'ft'), zeroOrMore('gap', gap, 'in')];
}
