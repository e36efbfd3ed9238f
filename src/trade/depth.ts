import type { Answer } from '../units/index.ts';
import { FOOT, INCH } from './factors.ts';
import { aboveZero, atMost, covered } from './limits.ts';

/**
 * Least depth of a post hole by the height of the fence.
 *
 * depth = 24 in, and 3 in more for each foot of fence over 4 ft
 *
 * Written for chain link. Parts of a foot count in proportion. Says nothing of
 * wind, soil or frost, and local rules may ask for more.
 *
 * @param fenceHeight - Height of the fence, more than 0. [m]
 * @returns Depth below grade. [m]
 *
 * @source ASTM F567-11, 5.1
 * @check 4 ft → 24 in (ASTM F567 5.1; Byesville, Ohio, municipal code)
 */
export function depthByHeight(fenceHeight: number): Answer {
  return covered('depth_by_height', [aboveZero('fence height', fenceHeight, 'ft')], () => {
    const overFourFeet = Math.max(0, fenceHeight - 4 * FOOT);
    return 24 * INCH + (3 * INCH * overFourFeet) / FOOT;
  });
}

/**
 * Diameter of a post hole by the size of the post.
 *
 * diameter = 4 x the largest section up to 4 in, 3 x above
 *
 * Written for chain link. The step at 4 in is the standard's own: a post just
 * over it takes a smaller hole than one just under.
 *
 * @param postSize - Largest side or the diameter of the post, more than 0. [m]
 * @returns Diameter of the hole. [m]
 *
 * @source ASTM F567-11, 5.1
 * @check hand-worked: 2.375 in → 4 x 2.375 = 9.5 in
 */
export function holeWidthByPost(postSize: number): Answer {
  return covered('hole_width_by_post', [aboveZero('post size', postSize, 'in')], () =>
    atMost(postSize, 4 * INCH) ? 4 * postSize : 3 * postSize,
  );
}
