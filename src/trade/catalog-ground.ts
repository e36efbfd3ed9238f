import { choiceOf } from '../units/index.ts';
import { clayCapacity, sandCapacity } from './broms.ts';
import { depthByHeight, holeWidthByPost } from './depth.ts';
import { frostGrip } from './frost.ts';
import {
  SOILS,
  lateralCapacity,
  lateralEmbedment,
  lateralEmbedmentRestrained,
  soilBearing,
  squareWidth,
  widthForCapacity,
} from './ground.ts';
import {
  capacityOnTheWay,
  clayOnTheWay,
  embedmentOnTheWay,
  restrainedOnTheWay,
  sandOnTheWay,
  widthOnTheWay,
} from './on-the-way.ts';
import type { Rule } from './rule.ts';
import { angle, force, length, pressure, pressurePerDepth, takes } from './takes.ts';

const DEPTH =
  'A rule for the height alone: frost, soil, wind and local code may each ask for more.';
const GROUND =
  'Allowable values for judging a fence post; local code and a licensed engineer decide.';
const ULTIMATE =
  'Ultimate force: divide by a safety factor of 2.5 to 3 before use, or ask an engineer.';
const FROST = 'A warning, not a pass or fail: frost grip dwarfs the weight of any straight pier.';
/** Rules about what holds a post: depth, ground and frost. */
export const GROUND_RULES: readonly Rule[] = [
  {
    name: 'depth_by_height',
    parameters: takes({ fence_height: length }),
    result: length,
    unit: 'in',
    meaning: 'Least depth of a post hole by the height of the fence.',
    equation: 'depth = 24 in, and 3 in more for each foot of fence over 4 ft',
    source: 'ASTM F567-11, 5.1',
    standing: 'standard',
    caution: DEPTH,
    apply: depthByHeight,
  },
  {
    name: 'hole_width_by_post',
    parameters: takes({ post_size: length }),
    result: length,
    unit: 'in',
    meaning: 'Diameter of a post hole by the size of the post.',
    equation: 'diameter = 4 x the largest section up to 4 in, 3 x above',
    source: 'ASTM F567-11, 5.1',
    standing: 'standard',
    apply: holeWidthByPost,
  },
  {
    name: 'square_width',
    parameters: takes({ side: length }),
    result: length,
    unit: 'in',
    meaning: 'The width of a square post or footing as the lateral rule counts it: its diagonal.',
    equation: 'width = side x sqrt(2)',
    source: 'IBC 2012 1807.3.2.1, definition of b',
    standing: 'code',
    apply: squareWidth,
  },
  {
    name: 'lateral_embedment',
    parameters: takes({ force, arm: length, width: length, bearing: pressurePerDepth }),
    result: length,
    unit: 'ft',
    meaning: 'Depth of embedment for a post that is free to turn at grade.',
    equation:
      'd = 0.5 A (1 + sqrt(1 + 4.36 h / A)), A = 2.34 P / (S1 b), S1 = s d / 3, d in S1 not over 12 ft; P force, h arm, b width, s bearing',
    source: 'IBC 2012 1807.3.2.1, Eq. 18-1',
    standing: 'code',
    caution: GROUND,
    apply: lateralEmbedment,
    onTheWay: embedmentOnTheWay,
  },
  {
    name: 'lateral_embedment_restrained',
    parameters: takes({ force, arm: length, width: length, bearing: pressurePerDepth }),
    result: length,
    unit: 'ft',
    meaning: 'Depth of embedment for a post held at grade by a slab or rigid paving.',
    equation:
      'd^2 = 4.25 P h / (S3 b), S3 = s d, d in S3 not over 12 ft; P force, h arm, b width, s bearing',
    source: 'IBC 2012 1807.3.2.2, Eq. 18-2 and 18-3',
    standing: 'code',
    caution: GROUND,
    apply: lateralEmbedmentRestrained,
    onTheWay: restrainedOnTheWay,
  },
  {
    name: 'lateral_capacity',
    parameters: takes({ depth: length, arm: length, width: length, bearing: pressurePerDepth }),
    result: force,
    unit: 'lbf',
    meaning: 'The horizontal force that a post free to turn at grade may take.',
    equation:
      'P = A S1 b / 2.34, A = d^2 / (d + 1.09 h), S1 = s d / 3, d in S1 not over 12 ft; d depth, h arm, b width, s bearing',
    source: 'IBC 2012 1807.3.2.1, Eq. 18-1',
    standing: 'code',
    caution: GROUND,
    apply: lateralCapacity,
    onTheWay: capacityOnTheWay,
  },
  {
    name: 'width_for_capacity',
    parameters: takes({ force, arm: length, depth: length, bearing: pressurePerDepth }),
    result: length,
    unit: 'in',
    meaning: 'The width of footing with which a given depth takes a given force.',
    equation:
      'b = 2.34 P / (A S1), A = d^2 / (d + 1.09 h), S1 = s d / 3, d in S1 not over 12 ft; P force, h arm, d depth, s bearing',
    source: 'IBC 2012 1807.3.2.1, Eq. 18-1',
    standing: 'code',
    caution: GROUND,
    apply: widthForCapacity,
    onTheWay: widthOnTheWay,
  },
  {
    name: 'soil_bearing',
    parameters: takes({ soil: choiceOf(SOILS) }),
    result: pressurePerDepth,
    unit: 'psf/ft',
    meaning: 'Presumptive allowable lateral bearing of a soil, per depth.',
    equation: 'bearing = the value of the table for the soil',
    source: 'IBC 2012 Table 1806.2',
    standing: 'code',
    caution: GROUND,
    apply: soilBearing,
  },
  {
    name: 'sand_capacity',
    parameters: takes({
      depth: length,
      arm: length,
      width: length,
      unit_weight: pressurePerDepth,
      friction_angle: angle,
    }),
    result: force,
    unit: 'lbf',
    meaning: 'Ultimate horizontal force on a short post free to turn in sand.',
    equation:
      'H = 0.5 gamma b Kp L^3 / (e + L), Kp = tan^2(45 deg + phi / 2); L depth, e arm, b width, gamma unit weight, phi friction angle',
    source: 'Broms, short free head in sand; UFC 3-220-20 (Jan 2025) Eq. 6-63',
    standing: 'theory',
    caution: ULTIMATE,
    apply: sandCapacity,
    onTheWay: sandOnTheWay,
  },
  {
    name: 'clay_capacity',
    parameters: takes({
      depth: length,
      arm: length,
      width: length,
      cohesion: pressure,
      dead_zone: length,
    }),
    result: force,
    unit: 'lbf',
    meaning: 'Ultimate horizontal force on a short post free to turn in clay.',
    equation:
      'f = H / (9 c b), g = sqrt(H (e + z0 + f/2) / (2.25 c b)), L = z0 + f + g; L depth, e arm, b width, c cohesion, z0 dead zone',
    source: 'Broms, short free head in clay; UFC 3-220-20 (Jan 2025) Eq. 6-59 to 6-61',
    standing: 'theory',
    caution: ULTIMATE,
    apply: clayCapacity,
    onTheWay: clayOnTheWay,
  },
  {
    name: 'frost_grip',
    parameters: takes({ width: length, frost_depth: length, bond: pressure }),
    result: force,
    unit: 'lbf',
    meaning: 'The upward force with which frozen ground can grip the side of a round footing.',
    equation: 'force = bond x pi x width x frost depth',
    source: 'Canadian Foundation Engineering Manual, 4th ed., as quoted in a forum thread',
    standing: 'theory',
    caution: FROST,
    apply: frostGrip,
  },
];
