import type { Answer } from '../units/index.ts';
import { aboveZero, atMost, covered, shown, zeroOrMore, type Limit } from './limits.ts';

/**
 * Volume of a round hole.
 *
 * volume = pi / 4 x diameter^2 x depth
 *
 * Straight sides; the post and the gravel are not taken off.
 *
 * @param diameter - Diameter, more than 0. [m]
 * @param depth - Depth, 0 or more. [m]
 * @returns Volume. [m^3]
 *
 * @source solid geometry, OpenStax Contemporary Mathematics 10.7
 * @check 10 in x 12 in → 942.48 in^3 (OpenStax Contemporary Mathematics 10.7)
 */
export function roundHole(diameter: number, depth: number): Answer {
  const limits = [aboveZero('diameter', diameter, 'in'), zeroOrMore('depth', depth, 'in')];
  return covered('round_hole', limits, () => (Math.PI / 4) * diameter ** 2 * depth);
}

/**
 * Volume of a square hole.
 *
 * volume = side^2 x depth
 *
 * Straight sides; the post and the gravel are not taken off.
 *
 * @param side - Side, more than 0. [m]
 * @param depth - Depth, 0 or more. [m]
 * @returns Volume. [m^3]
 *
 * @source solid geometry
 * @check hand-worked: 300 mm x 600 mm → 0.3 x 0.3 x 0.6 = 0.054 m^3
 */
export function squareHole(side: number, depth: number): Answer {
  const limits = [aboveZero('side', side, 'in'), zeroOrMore('depth', depth, 'in')];
  return covered('square_hole', limits, () => side ** 2 * depth);
}

/**
 * Volume of a hole whose top and bottom differ in area but not in shape.
 *
 * volume = depth / 3 x (A1 + A2 + sqrt(A1 A2))
 *
 * @param areaTop - Area at the top, 0 or more. [m^2]
 * @param areaBottom - Area at the bottom, 0 or more. [m^2]
 * @param depth - Depth, 0 or more. [m]
 * @returns Volume. [m^3]
 *
 * @source solid geometry, frustum of a cone or pyramid
 * @check hand-worked: 113.0973 and 78.5398 in^2 (12 and 10 in dia), 30 in → 1.6544 ft^3
 */
export function taperedHole(areaTop: number, areaBottom: number, depth: number): Answer {
  const limits = [
    zeroOrMore('area at the top', areaTop, 'in^2'),
    zeroOrMore('area at the bottom', areaBottom, 'in^2'),
    zeroOrMore('depth', depth, 'in'),
  ];
  return covered('tapered_hole', limits, () => {
    const between = Math.sqrt(areaTop) * Math.sqrt(areaBottom);
    return (depth / 3) * (areaTop + areaBottom + between);
  });
}

/**
 * Concrete in the crown that sheds water from a square post in a round hole.
 *
 * volume = pi c / 3 (R^2 + R r + r^2) - s^2 c, r = s / sqrt(pi)
 *
 * A frustum from the hole's circle to a circle of the post's area, less the
 * post. The post's corners must fit in the hole.
 *
 * @param holeWidth - Diameter of the hole. [m]
 * @param postSize - Side of the post, more than 0. [m]
 * @param crownHeight - Height of the crown at the post, 0 or more. [m]
 * @returns Volume of concrete. [m^3]
 *
 * @source solid geometry; crown 2 in above grade, ASTM F567 5.3
 * @check hand-worked: 12 in hole, 3.5 in post, 2 in → 0.04854 ft^3
 */
export function crown(holeWidth: number, postSize: number, crownHeight: number): Answer {
  const limits = [
    aboveZero('hole width', holeWidth, 'in'),
    aboveZero('post size', postSize, 'in'),
    zeroOrMore('crown height', crownHeight, 'in'),
    fits(holeWidth, postSize),
  ];
  return covered('crown', limits, () => {
    const outer = holeWidth / 2;
    const inner = postSize / Math.sqrt(Math.PI);
    const frustum = (Math.PI / 3) * (outer ** 2 + outer * inner + inner ** 2);
    return (frustum - postSize ** 2) * crownHeight;
  });
}

/**
 * Concrete in the crown of any hole round any post, where the concrete reaches
 * grade.
 *
 * volume = c / 3 (A + a + sqrt(A a)) - a c
 *
 * A crown sheds water off the post, so it stands on concrete at grade or on a
 * collar above it; below grade soil lies on it, and it is refused.
 *
 * @param holeArea - Area of the hole, more than 0. [m^2]
 * @param postArea - Area of the post, no larger than the hole. [m^2]
 * @param crownHeight - Height of the crown at the post, 0 or more. [m]
 * @param topOfConcrete - Top of the concrete above grade, minus below it. [m]
 * @returns Volume of concrete. [m^3]
 *
 * @source solid geometry; crown 2 in above grade, or concrete stopped 6 in low, ASTM F567 5.3
 * @check hand-worked: 12 in round hole, 3.5 in post, 2 in → 0.04854 ft^3, as `crown` gives
 */
export function crownVolume(
  holeArea: number,
  postArea: number,
  crownHeight: number,
  topOfConcrete: number,
): Answer {
  const limits = [
    aboveZero('hole area', holeArea, 'in^2'),
    zeroOrMore('post area', postArea, 'in^2'),
    zeroOrMore('crown height', crownHeight, 'in'),
    stands(crownHeight, topOfConcrete),
    atMost(postArea, holeArea) ? undefined : tooLarge(holeArea, postArea),
  ];
  return covered('crown_volume', limits, () => {
    const frustum = (holeArea + postArea + Math.sqrt(holeArea) * Math.sqrt(postArea)) / 3;
    return Math.max(0, frustum - postArea) * crownHeight;
  });
}

function tooLarge(holeArea: number, postArea: number): Limit {
  return [
    `A post of “${shown(postArea, 'in^2')}” does not fit a hole of “${shown(holeArea, 'in^2')}”.`,
    'Enter a wider hole or a smaller post.',
  ];
}

function stands(crownHeight: number, topOfConcrete: number): Limit {
  if (topOfConcrete >= 0 || crownHeight <= 0) return undefined;
  return [
    `The concrete stops “${shown(-topOfConcrete, 'in')}” below grade, so it has no crown.`,
    'Set the crown to 0, or bring the concrete up to grade.',
  ];
}

function fits(holeWidth: number, postSize: number): Limit {
  if (atMost(postSize * Math.SQRT2, holeWidth)) return undefined;
  return [
    `A post of “${shown(postSize, 'in')}” does not fit a round hole of “${shown(holeWidth, 'in')}”: it is ${shown(postSize * Math.SQRT2, 'in')} across the corners.`,
    'Enter a wider hole or a smaller post.',
  ];
}
