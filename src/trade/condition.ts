import type { Answer } from '../units/index.ts';
import { aboveZero, atMost, covered, shown, zeroOrMore, type Limit } from './limits.ts';

/**
 * The height of the point about which a post turned, from how far it moved at two heights.
 *
 * z0 = h1 - d1 (h2 - h1) / (d2 - d1)
 *
 * Well below grade the footing turns in the soil; about 0 the post is snapped
 * or rotted at grade. Two equal moves mean that the whole footing slid, and
 * there is no pivot.
 *
 * @param moveLow - Move at the lower height. [m]
 * @param heightLow - Lower height above grade. [m]
 * @param moveHigh - Move at the upper height, different from the lower move. [m]
 * @param heightHigh - Upper height above grade, above the lower one. [m]
 * @returns Height of the pivot above grade, negative below it. [m]
 *
 * @source plane geometry of a rigid post
 * @check hand-worked: 0.4 in at 6 in, 1.9 in at 60 in → 6 - 0.4 x 54/1.5 = -8.4 in
 */
export function pivotHeight(
  moveLow: number,
  heightLow: number,
  moveHigh: number,
  heightHigh: number,
): Answer {
  const heights: Limit = atMost(heightHigh, heightLow)
    ? [
        `The upper height is “${shown(heightHigh, 'in')}” and the lower “${shown(heightLow, 'in')}”.`,
        'Give the lower reading first, then one taken higher up.',
      ]
    : undefined;
  const slid: Limit =
    atMost(moveHigh, moveLow) && atMost(moveLow, moveHigh)
      ? [
          `The post moved “${shown(moveLow, 'in')}” at both heights.`,
          'Look for a footing that slid as a whole: it has no pivot.',
        ]
      : undefined;
  return covered(
    'pivot_height',
    [heights, slid],
    () => heightLow - moveLow * ((heightHigh - heightLow) / (moveHigh - moveLow)),
  );
}

/**
 * The share of its bending strength that a rotted square post keeps.
 *
 * share = ((side - 2 rot) / side)^3, and 0 once the rot reaches the middle
 *
 * Takes rot of one depth on four faces, and sound wood inside it to be as
 * strong as ever: a yardstick, not a grade. Rot on one face only keeps more.
 *
 * @param side - Actual side of the post, more than 0. [m]
 * @param rotDepth - How deep the probe sank, 0 or more. [m]
 * @returns Share of the bending strength, 0 to 1. [1]
 *
 * @source section modulus of a square, side^3 / 6
 * @check hand-worked: 3.5 in with 1/4 in of rot → (3/3.5)^3 = 0.6297
 */
export function strengthLeft(side: number, rotDepth: number): Answer {
  const limits = [aboveZero('side', side, 'in'), zeroOrMore('rot depth', rotDepth, 'in')];
  return covered('strength_left', limits, () => Math.max(0, 1 - 2 * (rotDepth / side)) ** 3);
}

/**
 * How far the latch side of a gate leaf has dropped.
 *
 * sag = (long^2 - short^2) / (4 x leaf height)
 *
 * The long diagonal runs from the top hinge to the bottom of the latch side when
 * the latch has dropped. Takes the stiles to have kept their length and the rails theirs.
 *
 * @param diagonalLong - Longer diagonal. [m]
 * @param diagonalShort - Shorter diagonal, more than 0. [m]
 * @param leafHeight - Height of the leaf, more than 0. [m]
 * @returns Drop of the latch side. [m]
 *
 * @source plane geometry of a sheared rectangle
 * @check hand-worked: 74.06 and 72.42 in on a 60 in leaf → 240.227/240 = 1.0009 in
 */
export function gateSag(diagonalLong: number, diagonalShort: number, leafHeight: number): Answer {
  const order: Limit = atMost(diagonalShort, diagonalLong)
    ? undefined
    : [
        `The first diagonal is “${shown(diagonalLong, 'in')}” and the second “${shown(diagonalShort, 'in')}”.`,
        'Give the longer diagonal first.',
      ];
  const limits = [
    aboveZero('short diagonal', diagonalShort, 'in'),
    aboveZero('leaf height', leafHeight, 'in'),
    order,
  ];
  return covered('gate_sag', limits, () => {
    const difference = Math.max(0, diagonalLong - diagonalShort);
    return difference * ((diagonalLong + diagonalShort) / (4 * leafHeight));
  });
}
