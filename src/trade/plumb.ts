import type { Answer } from '../units/index.ts';
import { aboveZero, covered, zeroOrMore, type Limit } from './limits.ts';

/**
 * How far a post leans from plumb.
 *
 * angle = atan(gap / level length)
 *
 * The level is held plumb and the gap is read square to it; a tape held along
 * the post would need asin instead, 0.16 deg more at 10 deg. The sign of the
 * gap stays with the angle.
 *
 * @param gap - Gap between post and level at the far end of the level. [m]
 * @param levelLength - Length of the level, more than 0. [m]
 * @returns Lean from plumb. [rad]
 *
 * @source plane geometry
 * @check hand-worked: 1 in over 48 in → atan(1/48) = 1.1935 deg
 */
export function leanAngle(gap: number, levelLength: number): Answer {
  return covered('lean_angle', [aboveZero('level length', levelLength, 'in')], () =>
    Math.atan(gap / levelLength),
  );
}

/**
 * How far the top of a post stands out of plumb.
 *
 * offset = gap / level length x height
 *
 * Holds for a straight post; a bowed one has to be read against a straight edge.
 *
 * @param gap - Gap between post and level at the far end of the level. [m]
 * @param levelLength - Length of the level, more than 0. [m]
 * @param height - Height of the top above the foot of the lean, 0 or more. [m]
 * @returns Horizontal offset of the top. [m]
 *
 * @source plane geometry
 * @check hand-worked: 2 1/4 in over 48 in at 72 in → 2.25 x 1.5 = 3.375 in
 */
export function topOffset(gap: number, levelLength: number, height: number): Answer {
  const limits = [aboveZero('level length', levelLength, 'in'), zeroOrMore('height', height, 'in')];
  return covered('top_offset', limits, () => (gap / levelLength) * height);
}

/**
 * The one gap of a post that leans two ways, both read with the same level.
 *
 * gap = sqrt(across^2 + along^2)
 *
 * @param gapAcross - Gap square to the fence. [m]
 * @param gapAlong - Gap along the fence, over the same level length. [m]
 * @returns Gap in the direction of the lean, never negative. [m]
 *
 * @source plane geometry
 * @check hand-worked: 3/8 in and 1/2 in → 5/8 in, a 3-4-5 triangle
 */
export function combinedGap(gapAcross: number, gapAlong: number): Answer {
  return covered('combined_gap', [], () => Math.hypot(gapAcross, gapAlong));
}

/**
 * The compass direction in which a post leans.
 *
 * bearing = atan2(east, north), turned into 0 to 360 deg
 *
 * A gap to the south or west is negative. A plumb post leans no way and is refused.
 *
 * @param gapNorth - Gap toward north. [m]
 * @param gapEast - Gap toward east, over the same level length. [m]
 * @returns Bearing clockwise from north, from 0 up to but not including a full turn. [rad]
 *
 * @source plane geometry
 * @check hand-worked: 3/8 in north and 1/2 in east → atan(4/3) = 53.13 deg
 */
export function leanBearing(gapNorth: number, gapEast: number): Answer {
  const plumb: Limit =
    gapNorth === 0 && gapEast === 0
      ? [
          'Both gaps are “0 in”: a plumb post leans no way.',
          'Leave the direction blank for this post.',
        ]
      : undefined;
  return covered('lean_bearing', [plumb], () => {
    const turn = 2 * Math.PI;
    const bearing = (Math.atan2(gapEast, gapNorth) + turn) % turn;
    return bearing < turn ? bearing : 0;
  });
}

/**
 * How far the middle of a post stands off the straight line between its ends.
 *
 * bow = mid - (top + bottom) / 2
 *
 * All three gaps are read against one straight edge; a straight post gives
 * about 0 however far it leans.
 *
 * @param gapTop - Gap at the top of the straight edge. [m]
 * @param gapMid - Gap at its middle. [m]
 * @param gapBottom - Gap at its bottom. [m]
 * @returns Bow, positive where the middle stands away from the straight edge. [m]
 *
 * @source plane geometry
 * @check hand-worked: 0, 1/2, 3/4 in → 0.5 - 0.375 = 0.125 in
 */
export function postBow(gapTop: number, gapMid: number, gapBottom: number): Answer {
  return covered('post_bow', [], () => gapMid - (gapTop / 2 + gapBottom / 2));
}
