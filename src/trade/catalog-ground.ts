import { PLAIN, choiceOf } from '../units/index.ts';
import { clayCapacity, sandCapacity } from './broms.ts';
import { depthByHeight, holeWidthByPost } from './depth.ts';
import { endWind } from './end-wind.ts';
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
  EXPOSURES,
  fenceWind,
  openAreaFactor,
  velocityPressure,
  wallForceCoefficient,
} from './wind.ts';
import type { Rule } from './rule.ts';
import { angle, force, length, pressure, pressurePerDepth, speed, takes } from './takes.ts';

const DEPTH =
  'A rule for the height alone: frost, soil, wind and local code may each ask for more.';
const GROUND =
  'Allowable values for judging a fence post; local code and a licensed engineer decide.';
const ULTIMATE =
  'Ultimate force: divide by a safety factor of 2.5 to 3 before use, or ask an engineer.';
const FROST = 'A warning, not a pass or fail: frost grip dwarfs the weight of any straight pier.';
const WIND =
  'A check for judging a fence, not a design: local code sets the wind speed, and a licensed engineer decides.';

/** Rules about what holds a post and what pushes it: depth, ground, frost and wind. */
export const GROUND_RULES: readonly Rule[] = [
  {
    name: 'depth_by_height',
    parameters: takes({ fence_height: length }),
    result: length,
    unit: 'in',
    meaning: 'Least depth of a post hole by the height of the fence.',
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
    source: 'IBC 2012 1807.3.2.1, Eq. 18-1',
    standing: 'code',
    caution: GROUND,
    apply: lateralEmbedment,
  },
  {
    name: 'lateral_embedment_restrained',
    parameters: takes({ force, arm: length, width: length, bearing: pressurePerDepth }),
    result: length,
    unit: 'ft',
    meaning: 'Depth of embedment for a post held at grade by a slab or rigid paving.',
    source: 'IBC 2012 1807.3.2.2, Eq. 18-2 and 18-3',
    standing: 'code',
    caution: GROUND,
    apply: lateralEmbedmentRestrained,
  },
  {
    name: 'lateral_capacity',
    parameters: takes({ depth: length, arm: length, width: length, bearing: pressurePerDepth }),
    result: force,
    unit: 'lbf',
    meaning: 'The horizontal force that a post free to turn at grade may take.',
    source: 'IBC 2012 1807.3.2.1, Eq. 18-1',
    standing: 'code',
    caution: GROUND,
    apply: lateralCapacity,
  },
  {
    name: 'width_for_capacity',
    parameters: takes({ force, arm: length, depth: length, bearing: pressurePerDepth }),
    result: length,
    unit: 'in',
    meaning: 'The width of footing with which a given depth takes a given force.',
    source: 'IBC 2012 1807.3.2.1, Eq. 18-1',
    standing: 'code',
    caution: GROUND,
    apply: widthForCapacity,
  },
  {
    name: 'soil_bearing',
    parameters: takes({ soil: choiceOf(SOILS) }),
    result: pressurePerDepth,
    unit: 'psf/ft',
    meaning: 'Presumptive allowable lateral bearing of a soil, per depth.',
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
    source: 'Broms, short free head in sand; UFC 3-220-20 (Jan 2025) Eq. 6-63',
    standing: 'theory',
    caution: ULTIMATE,
    apply: sandCapacity,
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
    source: 'Broms, short free head in clay; UFC 3-220-20 (Jan 2025) Eq. 6-59 to 6-61',
    standing: 'theory',
    caution: ULTIMATE,
    apply: clayCapacity,
  },
  {
    name: 'frost_grip',
    parameters: takes({ width: length, frost_depth: length, bond: pressure }),
    result: force,
    unit: 'lbf',
    meaning: 'The upward force with which frozen ground can grip the side of a round footing.',
    source: 'Canadian Foundation Engineering Manual, 4th ed., as quoted in a forum thread',
    standing: 'theory',
    caution: FROST,
    apply: frostGrip,
  },
  {
    name: 'velocity_pressure',
    parameters: takes({ speed, exposure: choiceOf(EXPOSURES), height: length }),
    result: pressure,
    unit: 'psf',
    meaning: 'Velocity pressure of the wind at a height.',
    source: 'ASCE 7-16 26.10, as carried in public worksheets',
    standing: 'standard',
    caution: WIND,
    apply: velocityPressure,
  },
  {
    name: 'wall_force_coefficient',
    parameters: takes({ length, height: length, top_height: length }),
    result: PLAIN,
    unit: '',
    meaning: 'Net force coefficient of a solid wall or fence; cases A and B only.',
    source: 'ASCE 7-16 Fig. 29.3-1, Cases A and B',
    standing: 'standard',
    caution: WIND,
    apply: wallForceCoefficient,
  },
  {
    name: 'open_area_factor',
    parameters: takes({ solid_ratio: PLAIN }),
    result: PLAIN,
    unit: '',
    meaning: 'The share of the full wind force that a fence with small openings takes.',
    source: 'ASCE 7-16 Fig. 29.3-1, note on openings',
    standing: 'standard',
    caution: WIND,
    apply: openAreaFactor,
  },
  {
    name: 'fence_wind',
    parameters: takes({
      speed,
      exposure: choiceOf(EXPOSURES),
      height: length,
      solid_ratio: PLAIN,
      length,
    }),
    result: pressure,
    unit: 'psf',
    meaning:
      'Allowable-stress wind pressure on a fence away from its free ends; cases A and B only.',
    source: 'ASCE 7-16 29.3 and Fig. 29.3-1, Cases A and B, with 0.6 W of 2.4',
    standing: 'standard',
    caution: `${WIND} Near a free end use end_wind.`,
    apply: fenceWind,
  },
  {
    name: 'end_wind',
    parameters: takes({
      speed,
      exposure: choiceOf(EXPOSURES),
      height: length,
      solid_ratio: PLAIN,
      length,
      start: length,
      end: length,
    }),
    result: pressure,
    unit: 'psf',
    meaning: 'Allowable-stress wind pressure on a strip of fence near a free end; case C.',
    source: 'ASCE 7-16 Fig. 29.3-1, Case C; the factor 1.8 - s/h from memory',
    standing: 'standard',
    caution: WIND,
    apply: endWind,
  },
];
