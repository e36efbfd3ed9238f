import { isProblem, type Answer } from '../units/index.ts';
import { MPH, PSF } from './factors.ts';
import { aboveZero, covered, zeroOrMore } from './limits.ts';
import { postModulus } from './post.ts';

/**
 * The length of a prop from the fence to the ground.
 *
 * length = sqrt(height^2 + reach^2)
 *
 * Level ground; no allowance for the cut ends.
 *
 * @param height - Height on the fence, more than 0. [m]
 * @param reach - Distance of its foot from the fence, more than 0. [m]
 * @returns Length of the prop. [m]
 *
 * @source plane geometry
 * @check hand-worked: 48 in up, 48 in out → 67.9 in
 */
export function propLength(height: number, reach: number): Answer {
  const limits = [aboveZero('height', height, 'in'), aboveZero('reach', reach, 'in')];
  return covered('prop_length', limits, () => Math.hypot(height, reach));
}

/**
 * The force along a prop that holds a fence hinged at grade.
 *
 * reaction = force x height of force / prop height; along the prop, that x length / reach
 *
 * The posts are taken to hold nothing. The foot has to be staked for it.
 *
 * @param force - Wind on the propped bay, 0 or more. [N]
 * @param heightOfForce - Height of the force above grade, 0 or more. [m]
 * @param propHeight - Height of the prop on the fence, more than 0. [m]
 * @param reach - Distance of its foot from the fence, more than 0. [m]
 * @returns Force along the prop. [N]
 *
 * @source statics of a hinged panel
 * @check hand-worked: 100 lbf at 36 in, prop 48 in up and 48 in out → 75 x sqrt(2) = 106 lbf
 */
export function propLoad(
  force: number,
  heightOfForce: number,
  propHeight: number,
  reach: number,
): Answer {
  const limits = [
    zeroOrMore('force', force, 'lbf'),
    zeroOrMore('height of the force', heightOfForce, 'in'),
    aboveZero('prop height', propHeight, 'in'),
    aboveZero('reach', reach, 'in'),
  ];
  return covered('prop_load', limits, () => {
    const reaction = force * (heightOfForce / propHeight);
    return reaction * (Math.hypot(propHeight, reach) / reach);
  });
}

/**
 * Wind pressure on a solid fence while it stands on props.
 *
 * p = 1.3 x 0.00256 V^2 (psf, mph)
 *
 * 1.3 is the coefficient of a long solid fence on the ground, ASCE 7-16 Fig. 29.3-1.
 * The full pressure of the gust named: no exposure, gust or direction factor is
 * taken off. For the days of the work only, not for a design.
 *
 * @param speed - Gust in which the props must still hold, 0 or more. [m/s]
 * @returns Pressure on the gross area. [Pa]
 *
 * @source stagnation pressure 0.00256 V^2 of ASCE 7-16 26.10 with Cf 1.3; the speed is common practice
 * @check hand-worked: 25 mph → 1.3 x 0.00256 x 625 = 2.08 psf, about 100 lbf on 6 x 8 ft
 */
export function propWind(speed: number): Answer {
  const limits = [zeroOrMore('working wind', speed, 'mph')];
  return covered('prop_wind', limits, () => 1.3 * 0.00256 * PSF * (speed / MPH) ** 2);
}

/**
 * The bending stress in a solid post.
 *
 * stress = moment / section modulus about the weaker axis
 *
 * Compare with the allowable stress of the species, grade and duration of load;
 * a rotted post has less (`strength_left`).
 *
 * @param moment - Bending moment at grade, 0 or more. [N m]
 * @param size - Post size, such as 4x4 or 125 x 75 mm. [text]
 * @returns Bending stress. [Pa]
 *
 * @source elastic bending of a solid rectangle
 * @check hand-worked: 2,160 lbf ft on a 4x4 → 25,920/7.1458 = 3,627 psi
 */
export function postBending(moment: number, size: string): Answer {
  const limits = [zeroOrMore('moment', moment, 'lbf*ft')];
  return covered('post_bending', limits, () => {
    const modulus = postModulus(size);
    return isProblem(modulus) ? modulus : moment / modulus;
  });
}
