import type { Answer } from '../units/index.ts';
import { INCH, POUND_FORCE } from './factors.ts';
import { aboveZero, atMost, between, covered, shown, type Limit } from './limits.ts';
import { bendingYield, dowelBearing, singleShear, type Joint } from './yield-limit.ts';

/** Wood screws by number, NDS 2018 Table L3: nominal and root diameter. [in] */
const SCREWS = new Map([
  [6, { nominal: 0.138, root: 0.113 }],
  [7, { nominal: 0.151, root: 0.122 }],
  [8, { nominal: 0.164, root: 0.131 }],
  [9, { nominal: 0.177, root: 0.142 }],
  [10, { nominal: 0.19, root: 0.152 }],
  [12, { nominal: 0.216, root: 0.171 }],
  [14, { nominal: 0.242, root: 0.196 }],
]);

/** Specific gravities of the species groups in NDS 2018 Table 12.3.3A: western white cedar to white oak. */
const GRAVITY_RANGE = [0.31, 0.73] as const;

/** Nail diameters: NDS 2018 Table I1 starts at 0.099 in (from memory); from 1/4 in up bearing depends on the grain. */
const NAIL_RANGE = [0.099 * INCH, 0.249 * INCH] as const;

/** Penetration, in diameters, below which there is no value, and from which it is full: NDS 2018 Tables 12L and 12N, notes. */
const LEAST_PENETRATION = 6;
const FULL_PENETRATION = 10;

/**
 * Reference lateral value of one wood screw in the side grain.
 *
 * Z = the least of the six yield modes of Table 12.3.1A; from 6 to 10 diameters of
 * penetration the value at 10 times p / 10D
 *
 * One shear plane, the same wood in both pieces. The root diameter counts in the
 * yield equations and in Rd, the nominal one elsewhere. Not adjusted for load
 * duration, wet service or end grain. Under 6 diameters there is no value.
 *
 * @param gauge - Screw number: 6, 7, 8, 9, 10, 12 or 14. [1]
 * @param sideThickness - Thickness of the piece under the head. [m]
 * @param length - Length of the screw. [m]
 * @param gravity - Specific gravity of the wood, 0.31 to 0.73. [1]
 * @returns Lateral value of one screw. [N]
 *
 * @source NDS 2018 12.3.1, Tables 12.3.1A, 12.3.3, 12L, L3 and I1
 * @check No. 10, 1 1/2 in side, G 0.50 → 117 lbf (NDS 2018 Table 12L)
 */
export function screwLateral(
  gauge: number,
  sideThickness: number,
  length: number,
  gravity: number,
): Answer {
  const screw = SCREWS.get(gauge);
  const nominal = screw?.nominal ?? NaN;
  const order = 'Give gauge, side thickness, length, gravity in that order.';
  const limits = [
    gaugeLimit(gauge),
    gravityLimit(gravity),
    aboveZero('side thickness', sideThickness, 'in'),
    aboveZero('length', length, 'in'),
    ...penetrationLimits(nominal, sideThickness, length, order),
  ];
  return covered('screw_lateral', limits, () =>
    lateral(screwJoint(gauge, sideThickness, length, gravity)),
  );
}

/** The joint that a wood screw of a number makes, for arguments that `screw_lateral` takes. */
export function screwJoint(
  gauge: number,
  sideThickness: number,
  length: number,
  gravity: number,
): CountedJoint {
  const { nominal, root } = SCREWS.get(gauge) ?? { nominal: NaN, root: NaN };
  return countedJoint(nominal, root, sideThickness, length, gravity);
}

/**
 * Reference lateral value of one nail in the side grain.
 *
 * Z = the least of the six yield modes of Table 12.3.1A; from 6 to 10 diameters of
 * penetration the value at 10 times p / 10D
 *
 * One shear plane, the same wood in both pieces, driven square. Not adjusted for
 * load duration, wet service, toe-nailing or end grain. Under 6 diameters there is no value.
 *
 * @param diameter - Diameter of the nail, 0.099 in to less than 1/4 in. [m]
 * @param length - Length of the nail. [m]
 * @param sideThickness - Thickness of the piece under the head. [m]
 * @param gravity - Specific gravity of the wood, 0.31 to 0.73. [1]
 * @returns Lateral value of one nail. [N]
 *
 * @source NDS 2018 12.3.1, Tables 12.3.1A, 12.3.3, 12N and I1
 * @check 0.148 in x 3 in, 3/4 in side, G 0.50 → 105 lbf (NDS 2018 Table 12N, 10d common)
 */
export function nailLateral(
  diameter: number,
  length: number,
  sideThickness: number,
  gravity: number,
): Answer {
  const inches = diameter / INCH;
  const order = 'Give diameter, length, side thickness, gravity in that order.';
  const limits = [
    nailLimit(diameter),
    gravityLimit(gravity),
    aboveZero('length', length, 'in'),
    aboveZero('side thickness', sideThickness, 'in'),
    ...penetrationLimits(inches, sideThickness, length, order),
  ];
  return covered('nail_lateral', limits, () =>
    lateral(nailJoint(diameter, length, sideThickness, gravity)),
  );
}

/** The joint that a nail makes, for arguments that `nail_lateral` takes. */
export function nailJoint(
  diameter: number,
  length: number,
  sideThickness: number,
  gravity: number,
): CountedJoint {
  const inches = diameter / INCH;
  return countedJoint(inches, inches, sideThickness, length, gravity);
}

/**
 * Reference withdrawal value of one wood screw, for each length of thread in the main piece.
 *
 * W = 2850 G^2 D (lbf/in, in)
 *
 * Side grain only; end grain has no value. Nominal diameter. Not adjusted for load duration or wet service.
 *
 * @param gauge - Screw number: 6, 7, 8, 9, 10, 12 or 14. [1]
 * @param gravity - Specific gravity of the wood, 0.31 to 0.73. [1]
 * @returns Withdrawal value per length of thread. [N/m]
 *
 * @source NDS 2018 12.2, Table 12.2B
 * @check No. 10, G 0.50 → 135 lbf/in (NDS 2018 Table 12.2B)
 */
export function screwWithdrawal(gauge: number, gravity: number): Answer {
  const limits = [gaugeLimit(gauge), gravityLimit(gravity)];
  return covered('screw_withdrawal', limits, () => {
    const nominal = SCREWS.get(gauge)?.nominal ?? NaN;
    return (2850 * gravity ** 2 * nominal * POUND_FORCE) / INCH;
  });
}

/**
 * Reference withdrawal value of one nail, for each length in the main piece.
 *
 * W = 1380 G^2.5 D (lbf/in, in)
 *
 * Smooth shank, side grain only; end grain has no value. Not adjusted: wood that
 * dries or wets after nailing keeps a quarter of it.
 *
 * @param diameter - Diameter of the nail, 0.099 in to less than 1/4 in. [m]
 * @param gravity - Specific gravity of the wood, 0.31 to 0.73. [1]
 * @returns Withdrawal value per length of penetration. [N/m]
 *
 * @source NDS 2018 12.2, Table 12.2C
 * @check 0.131 in, G 0.42 → 20.667 lbf/in (AWC example E2.1a)
 */
export function nailWithdrawal(diameter: number, gravity: number): Answer {
  const limits = [nailLimit(diameter), gravityLimit(gravity)];
  return covered('nail_withdrawal', limits, () => {
    return (1380 * gravity ** 2.5 * (diameter / INCH) * POUND_FORCE) / INCH;
  });
}

/** A joint with its penetration counted, in inches. */
export interface CountedJoint {
  readonly joint: Joint;
  readonly nominal: number;
  readonly penetration: number;
  /** Share of the value at full penetration, at most 1. */
  readonly share: number;
}

/** Lateral value with penetration counted. [N] */
function lateral({ joint, share }: CountedJoint): number {
  return singleShear(joint) * share * POUND_FORCE;
}

/** Nominal and bending diameters in inches. */
function countedJoint(
  nominal: number,
  bending: number,
  sideThickness: number,
  length: number,
  gravity: number,
): CountedJoint {
  const penetration = (length - sideThickness) / INCH;
  const full = FULL_PENETRATION * nominal;
  const bearing = dowelBearing(gravity);
  const joint = {
    diameter: bending,
    // The tapered tip is two diameters long, and half of it counts.
    mainLength: Math.max(penetration, full) - nominal,
    sideLength: sideThickness / INCH,
    mainBearing: bearing,
    sideBearing: bearing,
    bendingYield: bendingYield(nominal),
  };
  return { joint, nominal, penetration, share: Math.min(1, penetration / full) };
}

function penetrationLimits(
  nominal: number,
  sideThickness: number,
  length: number,
  order: string,
): readonly Limit[] {
  const penetration = length - sideThickness;
  const least = LEAST_PENETRATION * nominal * INCH;
  const through: Limit = atMost(length, sideThickness)
    ? [
        `A fastener of “${shown(length, 'in')}” is no longer than its side piece of “${shown(sideThickness, 'in')}”.`,
        `${order} Else choose a longer fastener.`,
      ]
    : undefined;
  const short: Limit = atMost(least, penetration)
    ? undefined
    : [
        `“${shown(length, 'in')}” through “${shown(sideThickness, 'in')}” leaves ${shown(penetration, 'in')} in the main piece; the least is 6 diameters, ${shown(least, 'in')}.`,
        'Choose a longer fastener.',
      ];
  return [through, short];
}

/**
 * Nominal diameter of a wood screw, by its number.
 *
 * D = the value of the table for the number
 *
 * A number that the table does not hold is refused.
 *
 * @param gauge - Screw number: 6, 7, 8, 9, 10, 12 or 14. [1]
 * @returns Nominal diameter. [m]
 *
 * @source NDS 2018 Table L3
 * @check No. 10 → 0.190 in (NDS 2018 Table L3)
 */
export function screwDiameter(gauge: number): Answer {
  return covered('screw_diameter', [gaugeLimit(gauge)], () => {
    return (SCREWS.get(gauge)?.nominal ?? NaN) * INCH;
  });
}

function gaugeLimit(gauge: number): Limit {
  if (SCREWS.has(gauge)) return undefined;
  return [
    `“${String(gauge)}” is no wood screw number known here.`,
    `Choose one of ${[...SCREWS.keys()].join(', ')}.`,
  ];
}

function gravityLimit(gravity: number): Limit {
  return between('specific gravity', gravity, GRAVITY_RANGE, '', 'Take it from the species table.');
}

function nailLimit(diameter: number): Limit {
  const advice = 'Enter the diameter of the nail, such as 0.131 in for an 8d common.';
  return between('nail diameter', diameter, NAIL_RANGE, 'in', advice);
}
