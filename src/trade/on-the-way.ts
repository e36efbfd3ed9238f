import { stripCoefficient } from './end-wind.ts';
import { screwJoint, nailJoint, type CountedJoint } from './fasteners.ts';
import { FOOT, INCH, POUND_FORCE, PSI } from './factors.ts';
import { shown } from './limits.ts';
import type { OnTheWay } from './rule.ts';
import { yieldModes } from './yield-limit.ts';
import { exposureFactor, openFactor, pressureAt } from './wind.ts';
import { CASES_A_AND_B, coefficientAt } from './wall-table.ts';

/**
 * The values on the way of the rules that take more than one step, so that the answer can be
 * followed by hand. Each takes what its rule takes, and is asked only where the rule has an answer.
 */

/** S1 and A of IBC 1807.3.2.1 at the depth a post needs. */
export function embedmentOnTheWay(
  [force, , width, bearing]: readonly [number, number, number, number],
  depth: number,
): readonly OnTheWay[] {
  const s1 = (bearing * countedDepth(depth)) / 3;
  return [lateralBearing(s1), lateralA((2.34 * force) / s1 / width)];
}

/** S3 of IBC 1807.3.2.2 at the depth a restrained post needs. */
export function restrainedOnTheWay(
  [, , , bearing]: readonly [number, number, number, number],
  depth: number,
): readonly OnTheWay[] {
  const s3 = bearing * countedDepth(depth);
  return [{ symbol: 'S3', meaning: 'bearing at the full depth', value: shown(s3, 'psf') }];
}

/** S1 and A of IBC 1807.3.2.1 at the depth that is there. */
export function capacityOnTheWay([depth, arm, , bearing]: readonly [
  number,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  return [
    lateralBearing((bearing * countedDepth(depth)) / 3),
    lateralA((depth * depth) / (depth + 1.09 * arm)),
  ];
}

/** The same for the width that a force needs. */
export function widthOnTheWay([, arm, depth, bearing]: readonly [
  number,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  return capacityOnTheWay([depth, arm, 0, bearing]);
}

/** Kz of the velocity pressure. */
export function pressureOnTheWay([, exposure, height]: readonly [
  number,
  string,
  number,
]): readonly OnTheWay[] {
  return [exposureStep(exposure, height)];
}

/** The two ratios with which the table of coefficients is read. */
export function coefficientOnTheWay([length, height, top]: readonly [
  number,
  number,
  number,
]): readonly OnTheWay[] {
  return [
    { symbol: 'B/s', meaning: 'length over height', value: shown(length / height, '') },
    { symbol: 's/h', meaning: 'height over top height', value: shown(height / top, '') },
  ];
}

/** Kz, q, Cf and the share of openings, away from the ends. */
export function fenceWindOnTheWay([speed, exposure, height, solid, length]: readonly [
  number,
  string,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  const cf = coefficientAt(CASES_A_AND_B, length / height, 1);
  return [
    ...windSteps(speed, exposure, height, solid),
    { symbol: 'Cf', meaning: 'cases A and B', value: shown(cf, '') },
  ];
}

/** Kz, q, the mean Cf over the strip and the two shares, near an end. */
export function endWindOnTheWay([speed, exposure, height, solid, length, start, end]: readonly [
  number,
  string,
  number,
  number,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  const cf = stripCoefficient(length / height, start / height, end / height);
  return [
    ...windSteps(speed, exposure, height, solid),
    { symbol: 'Cf', meaning: 'case C, mean over the strip', value: shown(cf, '') },
    { symbol: '1.8 - s/h', meaning: 'for a fence on the ground', value: '0.8' },
  ];
}

/** Kp of sand. */
export function sandOnTheWay([, , , , friction]: readonly [
  number,
  number,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  const kp = Math.tan(Math.PI / 4 + friction / 2) ** 2;
  return [{ symbol: 'Kp', meaning: 'passive pressure coefficient', value: shown(kp, '') }];
}

/** f and g of clay. */
export function clayOnTheWay(
  [depth, , width, cohesion, deadZone]: readonly [number, number, number, number, number],
  force: number,
): readonly OnTheWay[] {
  const f = force / (9 * cohesion * width);
  return [
    { symbol: 'f', meaning: 'depth to zero shear, below the dead zone', value: shown(f, 'ft') },
    {
      symbol: 'g',
      meaning: 'the rest of the depth',
      value: shown(Math.max(0, depth - deadZone - f), 'ft'),
    },
  ];
}

/** Penetration, bearing and the yield mode that governs a screw. */
export function screwOnTheWay([gauge, sideThickness, length, gravity]: readonly [
  number,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  return jointSteps(screwJoint(gauge, sideThickness, length, gravity));
}

/** Penetration, bearing and the yield mode that governs a nail. */
export function nailOnTheWay([diameter, length, sideThickness, gravity]: readonly [
  number,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  return jointSteps(nailJoint(diameter, length, sideThickness, gravity));
}

/** What the prop has to hold at its head. */
export function propOnTheWay([force, heightOfForce, propHeight]: readonly [
  number,
  number,
  number,
  number,
]): readonly OnTheWay[] {
  const reaction = force * (heightOfForce / propHeight);
  return [{ symbol: 'reaction', meaning: 'level, at the prop', value: shown(reaction, 'lbf') }];
}

function countedDepth(depth: number): number {
  return Math.min(depth, 12 * FOOT);
}

function lateralBearing(s1: number): OnTheWay {
  return { symbol: 'S1', meaning: 'bearing at a third of the depth', value: shown(s1, 'psf') };
}

function lateralA(a: number): OnTheWay {
  return { symbol: 'A', meaning: 'of Eq. 18-1', value: shown(a, 'ft') };
}

function exposureStep(exposure: string, height: number): OnTheWay {
  const kz = exposureFactor(exposure, height);
  return { symbol: 'Kz', meaning: 'exposure at the top', value: shown(kz, '') };
}

function windSteps(
  speed: number,
  exposure: string,
  height: number,
  solid: number,
): readonly OnTheWay[] {
  const q = pressureAt(speed, exposure, height);
  return [
    exposureStep(exposure, height),
    { symbol: 'q', meaning: 'velocity pressure', value: shown(q, 'psf') },
    { symbol: '1 - (1 - e)^1.5', meaning: 'for openings', value: shown(openFactor(solid), '') },
  ];
}

function jointSteps({ joint, penetration, nominal, share }: CountedJoint): readonly OnTheWay[] {
  const [mode, full] = yieldModes(joint).reduce((least, each) =>
    each[1] < least[1] ? each : least,
  );
  return [
    { symbol: 'p', meaning: 'in the main piece', value: shown(penetration * INCH, 'in') },
    { symbol: '6D', meaning: 'least penetration', value: shown(6 * nominal * INCH, 'in') },
    { symbol: '10D', meaning: 'full penetration', value: shown(10 * nominal * INCH, 'in') },
    { symbol: 'Fe', meaning: 'dowel bearing', value: shown(joint.mainBearing * PSI, 'psi') },
    { symbol: 'Fyb', meaning: 'bending yield', value: shown(joint.bendingYield * PSI, 'psi') },
    { symbol: mode, meaning: 'the least yield mode', value: shown(full * POUND_FORCE, 'lbf') },
    { symbol: 'p / 10D', meaning: 'share, at most 1', value: shown(share, '') },
  ];
}
