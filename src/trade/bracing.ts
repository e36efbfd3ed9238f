import { isProblem, type Answer } from '../units/index.ts';
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
