import type { Answer } from '../units/index.ts';
import { FOOT, PSF_PER_FOOT } from './factors.ts';
import { aboveZero, covered, oneOf, zeroOrMore } from './limits.ts';

/** Depth beyond which the ground is credited with no more pressure: IBC 1807.3.2.1. [m] */
const PRESSURE_DEPTH = 12 * FOOT;

/**
 * Depth of embedment for a post that is free to turn at grade.
 *
 * d = 0.5 A (1 + sqrt(1 + 4.36 h / A)), A = 2.34 P / (S1 b), S1 = s d / 3, d in S1 not
 * over 12 ft; P force, h arm, b width, s bearing
 *
 * S1 holds d itself, so for d up to 12 ft this is d^3 = k (d + 1.09 h) with
 * k = 7.02 P / (s b), solved exactly; deeper, S1 stays at 4 ft of s and Eq. 18-1
 * is explicit. Ground that is loose or frozen is not discounted.
 *
 * @param force - Horizontal force, 0 or more. [N]
 * @param arm - Height of the force above grade, 0 or more. [m]
 * @param width - Diameter of a round post or footing; the diagonal of a square one. [m]
 * @param bearing - Allowable lateral bearing per depth (`soil_bearing`). [Pa/m]
 * @returns Depth below grade. [m]
 *
 * @source IBC 2012 1807.3.2.1, Eq. 18-1
 * @check 680 lbf at 7.79 ft, 1 ft, 150 psf/ft → 8.08 ft (public hand-worked note on Eq. 18-1)
 */
export function lateralEmbedment(
  force: number,
  arm: number,
  width: number,
  bearing: number,
): Answer {
  return covered('lateral_embedment', groundLimits(force, arm, width, bearing), () => {
    if (force === 0) return 0;
    const depth = depthOfCubic((7.02 * force) / bearing / width, 1.09 * arm);
    if (depth <= PRESSURE_DEPTH) return depth;
    const a = (2.34 * force) / (bearing * (PRESSURE_DEPTH / 3)) / width;
    return 0.5 * a * (1 + Math.sqrt(1 + (4.36 * arm) / a));
  });
}

/**
 * Depth of embedment for a post held at grade by a slab or rigid paving.
 *
 * d^2 = 4.25 P h / (S3 b), S3 = s d, d in S3 not over 12 ft; P force, h arm, b width,
 * s bearing
 *
 * Earth packed round the top is not a restraint; a slab is.
 *
 * @param force - Horizontal force, 0 or more. [N]
 * @param arm - Height of the force above grade, 0 or more. [m]
 * @param width - Diameter of a round post or footing; the diagonal of a square one. [m]
 * @param bearing - Allowable lateral bearing per depth (`soil_bearing`). [Pa/m]
 * @returns Depth below grade. [m]
 *
 * @source IBC 2012 1807.3.2.2, Eq. 18-2 and 18-3
 * @check 510 lbf at 4 ft, 1 ft, 266 psf/ft → 3.19 ft (Christy, Engineering with the Spreadsheet, ASCE Press 2006, Fig. 16-1)
 */
export function lateralEmbedmentRestrained(
  force: number,
  arm: number,
  width: number,
  bearing: number,
): Answer {
  return covered('lateral_embedment_restrained', groundLimits(force, arm, width, bearing), () => {
    const cube = ((4.25 * force * arm) / bearing) * (1 / width);
    const depth = Math.cbrt(cube);
    return depth <= PRESSURE_DEPTH ? depth : Math.sqrt(cube / PRESSURE_DEPTH);
  });
}

/**
 * The horizontal force that a post free to turn at grade may take.
 *
 * P = A S1 b / 2.34, A = d^2 / (d + 1.09 h), S1 = s d / 3, d in S1 not over 12 ft; d depth,
 * h arm, b width, s bearing
 *
 * `lateral_embedment` turned round.
 *
 * @param depth - Depth below grade, more than 0. [m]
 * @param arm - Height of the force above grade, 0 or more. [m]
 * @param width - Diameter of a round post or footing; the diagonal of a square one. [m]
 * @param bearing - Allowable lateral bearing per depth (`soil_bearing`). [Pa/m]
 * @returns Allowable horizontal force. [N]
 *
 * @source IBC 2012 1807.3.2.1, Eq. 18-1
 * @check hand-worked: 3 ft, 3 ft, 1 ft, 150 psf/ft → 150 x 27 / (7.02 x 6.27) = 92.01 lbf
 */
export function lateralCapacity(
  depth: number,
  arm: number,
  width: number,
  bearing: number,
): Answer {
  const limits = [aboveZero('depth', depth, 'in'), ...groundLimits(0, arm, width, bearing)];
  return covered('lateral_capacity', limits, () => bearing * width * capacityShare(depth, arm));
}

/**
 * The width of footing with which a given depth takes a given force.
 *
 * b = 2.34 P / (A S1), A = d^2 / (d + 1.09 h), S1 = s d / 3, d in S1 not over 12 ft; P force,
 * h arm, d depth, s bearing
 *
 * Widening pays far less than deepening: the answer soon stops being a hole
 * anyone would dig.
 *
 * @param force - Horizontal force, 0 or more. [N]
 * @param arm - Height of the force above grade, 0 or more. [m]
 * @param depth - Depth below grade, more than 0. [m]
 * @param bearing - Allowable lateral bearing per depth (`soil_bearing`). [Pa/m]
 * @returns Diameter of a round footing, or diagonal of a square one. [m]
 *
 * @source IBC 2012 1807.3.2.1, Eq. 18-1
 * @check hand-worked: the equal of 12 in x 30 in at 18 in deep, force at 3 ft, 150 psf/ft → 45.93 in
 */
export function widthForCapacity(
  force: number,
  arm: number,
  depth: number,
  bearing: number,
): Answer {
  const limits = [
    zeroOrMore('force', force, 'lbf'),
    zeroOrMore('arm', arm, 'ft'),
    aboveZero('depth', depth, 'in'),
    aboveZero('bearing', bearing, 'psf/ft'),
  ];
  return covered('width_for_capacity', limits, () => force / bearing / capacityShare(depth, arm));
}

/**
 * The width of a square post or footing as the lateral rule counts it: its diagonal.
 *
 * width = side x sqrt(2)
 *
 * @param side - Side of the square, more than 0. [m]
 * @returns Diagonal. [m]
 *
 * @source IBC 2012 1807.3.2.1, definition of b
 * @check hand-worked: 12 in → 12 x 1.41421 = 16.9706 in
 */
export function squareWidth(side: number): Answer {
  return covered('square_width', [aboveZero('side', side, 'in')], () => side * Math.SQRT2);
}

/** IBC 2012 Table 1806.2, lateral bearing below natural grade. [psf/ft] */
const LATERAL_BEARING = new Map([
  ['bedrock', 1200],
  ['sedimentary rock', 400],
  ['gravel', 200],
  ['sand', 150],
  ['clay', 100],
]);

/** The soils that have a presumptive lateral bearing, strongest first. */
export const SOILS: readonly string[] = [...LATERAL_BEARING.keys()];

/**
 * Presumptive allowable lateral bearing of a soil, per depth below natural grade.
 *
 * bearing = the value of the table for the soil
 *
 * Mud, organic silt or clay, peat and unprepared fill have no presumptive value. Not doubled here: twice the value is only for isolated poles that 1/2 in
 * of movement at grade does not harm (1806.3.4).
 *
 * @param soil - bedrock, sedimentary rock, gravel, sand or clay. [text]
 * @returns Lateral bearing per depth. [Pa/m]
 *
 * @source IBC 2012 Table 1806.2
 * @check sand → 150 psf/ft (IBC 2012 Table 1806.2)
 */
export function soilBearing(soil: string): Answer {
  return covered('soil_bearing', [oneOf('soil', soil, SOILS)], () => {
    return (LATERAL_BEARING.get(soil) ?? NaN) * PSF_PER_FOOT;
  });
}

function groundLimits(force: number, arm: number, width: number, bearing: number) {
  return [
    zeroOrMore('force', force, 'lbf'),
    zeroOrMore('arm', arm, 'ft'),
    aboveZero('width', width, 'in'),
    aboveZero('bearing', bearing, 'psf/ft'),
  ];
}

/** Capacity over bearing and width. [m^2] */
function capacityShare(depth: number, arm: number): number {
  const lever = depth / (depth + 1.09 * arm);
  return depth <= PRESSURE_DEPTH
    ? (depth * depth * lever) / 7.02
    : ((PRESSURE_DEPTH / 3) * depth * lever) / 2.34;
}

/** The one positive root of d^3 = k (d + offset), by the trigonometric form of the cubic. */
function depthOfCubic(k: number, offset: number): number {
  const scale = Math.sqrt(k / 3);
  const x = (1.5 * offset) / scale;
  const u = x <= 1 ? 2 * Math.cos(Math.acos(x) / 3) : 2 * Math.cosh(Math.acosh(x) / 3);
  return scale * u;
}
