import type { Answer } from '../units/index.ts';
import { DEGREE } from './factors.ts';
import { aboveZero, between, covered, zeroOrMore } from './limits.ts';

/** Angles of internal friction that a clean sand has: common practice, no source. [rad] */
const FRICTION_RANGE = [20 * DEGREE, 50 * DEGREE] as const;

/**
 * Ultimate horizontal force on a short post free to turn in sand.
 *
 * H = 0.5 gamma b Kp L^3 / (e + L), Kp = tan^2(45 deg + phi / 2); L depth, e arm,
 * b width, gamma unit weight, phi friction angle
 *
 * Ultimate: divide by a safety factor before use. For a post stiff against the
 * ground. Friction angles from 20 to 50 deg (common practice, no source).
 *
 * @param depth - Depth below grade, more than 0. [m]
 * @param arm - Height of the force above grade, 0 or more. [m]
 * @param width - Width of post or footing, more than 0. [m]
 * @param unitWeight - Weight of the sand, a force per volume. [N/m^3]
 * @param frictionAngle - Angle of internal friction. [rad]
 * @returns Ultimate horizontal force. [N]
 *
 * @source Broms, short free head in sand; UFC 3-220-20 (Jan 2025) Eq. 6-63
 * @check hand-worked: 3 ft, 3 ft, 1 ft, 110 lbf/ft^3, 30 deg → 0.5 x 110 x 3 x 27/6 = 742.5 lbf
 */
export function sandCapacity(
  depth: number,
  arm: number,
  width: number,
  unitWeight: number,
  frictionAngle: number,
): Answer {
  const limits = [
    aboveZero('depth', depth, 'ft'),
    zeroOrMore('arm', arm, 'ft'),
    aboveZero('width', width, 'ft'),
    aboveZero('unit weight', unitWeight, 'lbf/ft^3'),
    between('friction angle', frictionAngle, FRICTION_RANGE, 'deg'),
  ];
  return covered('sand_capacity', limits, () => {
    const kp = Math.tan(Math.PI / 4 + frictionAngle / 2) ** 2;
    return 0.5 * unitWeight * width * kp * depth * depth * (depth / (arm + depth));
  });
}

/**
 * Ultimate horizontal force on a short post free to turn in clay.
 *
 * f = H / (9 c b), g = sqrt(H (e + z0 + f/2) / (2.25 c b)), L = z0 + f + g; L depth, e arm,
 * b width, c cohesion, z0 dead zone
 *
 * Put together, f^2 + (4 (e + z0) + 2 D) f - D^2 = 0 with D = L - z0, solved
 * exactly. Ultimate: divide by a safety factor before use. No force is credited
 * within the dead zone, so a footing no deeper than it answers 0, and widening
 * a short footing can lower the answer: do not use where depth is under about
 * four widths.
 *
 * @param depth - Depth below grade, more than 0. [m]
 * @param arm - Height of the force above grade, 0 or more. [m]
 * @param width - Width of post or footing, more than 0. [m]
 * @param cohesion - Undrained shear strength of the clay. [Pa]
 * @param deadZone - Depth from grade that counts for nothing, usually 1.5 widths. [m]
 * @returns Ultimate horizontal force. [N]
 *
 * @source Broms, short free head in clay; UFC 3-220-20 (Jan 2025) Eq. 6-59 to 6-61
 * @check 14.75 ft, 1.85185 ft, 1 ft, 1,500 psf, 1.5 ft → 54,000 lbf (public file that transcribes UFC 3-220-20)
 */
export function clayCapacity(
  depth: number,
  arm: number,
  width: number,
  cohesion: number,
  deadZone: number,
): Answer {
  const limits = [
    aboveZero('depth', depth, 'ft'),
    zeroOrMore('arm', arm, 'ft'),
    aboveZero('width', width, 'ft'),
    aboveZero('cohesion', cohesion, 'psf'),
    zeroOrMore('dead zone', deadZone, 'ft'),
  ];
  return covered('clay_capacity', limits, () => {
    const d = Math.max(0, depth - deadZone);
    if (d === 0) return 0;
    const half = 2 * (arm + deadZone) + d;
    // Written so that no two near-equal terms are subtracted.
    const f = d * (d / (half + Math.hypot(half, d)));
    return 9 * cohesion * width * f;
  });
}
