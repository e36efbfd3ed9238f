import { PLAIN, TEXT, listOf } from '../units/index.ts';
import { postBending, propLength, propLoad } from './bracing.ts';
import { gateSag, pivotHeight, strengthLeft } from './condition.ts';
import { dressed, stockLength } from './lumber.ts';
import { combinedGap, leanAngle, leanBearing, postBow, topOffset } from './plumb.ts';
import { postArea, postFace, postModulus, postSide } from './post.ts';
import type { Rule } from './rule.ts';
import { angle, area, force, length, moment, pressure, takes, volume } from './takes.ts';

const SOUNDNESS =
  'A yardstick only: where a post carries a gate, a guard or a person, have it judged on site.';
const PROP =
  'Propped fences fall: keep that side clear, stake the foot, and let no one stand under it.';

/** Rules about the post: plumb, condition, sizes, props and stock. */
export const POST_RULES: readonly Rule[] = [
  {
    name: 'lean_angle',
    parameters: takes({ gap: length, level_length: length }),
    result: angle,
    unit: 'deg',
    meaning: 'How far a post leans from plumb.',
    source: 'plane geometry',
    standing: 'arithmetic',

    apply: leanAngle,
  },
  {
    name: 'top_offset',
    parameters: takes({ gap: length, level_length: length, height: length }),
    result: length,
    unit: 'in',
    meaning: 'How far the top of a post stands out of plumb.',
    source: 'plane geometry',
    standing: 'arithmetic',

    apply: topOffset,
  },
  {
    name: 'combined_gap',
    parameters: takes({ gap_across: length, gap_along: length }),
    result: length,
    unit: 'in',
    meaning: 'The one gap of a post that leans two ways.',
    source: 'plane geometry',
    standing: 'arithmetic',

    apply: combinedGap,
  },
  {
    name: 'lean_bearing',
    parameters: takes({ gap_north: length, gap_east: length }),
    result: angle,
    unit: 'deg',
    meaning: 'The compass direction in which a post leans, clockwise from north.',
    source: 'plane geometry',
    standing: 'arithmetic',

    apply: leanBearing,
  },
  {
    name: 'post_bow',
    parameters: takes({ gap_top: length, gap_mid: length, gap_bottom: length }),
    result: length,
    unit: 'in',
    meaning: 'How far the middle of a post stands off the line between its ends.',
    source: 'plane geometry',
    standing: 'arithmetic',

    apply: postBow,
  },
  {
    name: 'pivot_height',
    parameters: takes({
      move_low: length,
      height_low: length,
      move_high: length,
      height_high: length,
    }),
    result: length,
    unit: 'in',
    meaning: 'The height of the point about which a post turned; negative is below grade.',
    source: 'plane geometry of a rigid post',
    standing: 'arithmetic',

    apply: pivotHeight,
  },
  {
    name: 'strength_left',
    parameters: takes({ side: length, rot_depth: length }),
    result: PLAIN,
    unit: '',
    meaning: 'The share of its bending strength that a rotted square post keeps.',
    source: 'section modulus of a square, side^3 / 6',
    standing: 'theory',
    caution: SOUNDNESS,
    apply: strengthLeft,
  },
  {
    name: 'gate_sag',
    parameters: takes({ diagonal_long: length, diagonal_short: length, leaf_height: length }),
    result: length,
    unit: 'in',
    meaning: 'How far the latch side of a gate leaf has dropped.',
    source: 'plane geometry of a sheared rectangle',
    standing: 'arithmetic',

    apply: gateSag,
  },
  {
    name: 'dressed',
    parameters: takes({ size: TEXT }),
    result: length,
    unit: 'in',
    meaning: 'The dry, dressed thickness of a lumber size such as 4x4.',
    source: 'NDS 2018 Supplement Table 1A; PS 20-05 for timbers, as quoted at sizes.com',
    standing: 'standard',

    apply: dressed,
  },
  {
    name: 'post_side',
    parameters: takes({ size: TEXT }),
    result: length,
    unit: 'in',
    meaning: 'The smaller side of a post as it stands, or its diameter.',
    source: 'NDS 2018 Supplement Table 1A for names; otherwise as written',
    standing: 'standard',

    apply: postSide,
  },
  {
    name: 'post_face',
    parameters: takes({ size: TEXT }),
    result: length,
    unit: 'in',
    meaning: 'The larger side of a post as it stands, or its diameter.',
    source: 'NDS 2018 Supplement Table 1A for names; otherwise as written',
    standing: 'standard',

    apply: postFace,
  },
  {
    name: 'post_area',
    parameters: takes({ size: TEXT }),
    result: area,
    unit: 'in^2',
    meaning: 'The area that a post takes up in its hole.',
    source: 'plane geometry',
    standing: 'arithmetic',

    apply: postArea,
  },
  {
    name: 'post_modulus',
    parameters: takes({ size: TEXT }),
    result: volume,
    unit: 'in^3',
    meaning: 'The section modulus of a solid post about its weaker axis.',
    source: 'section modulus of a solid rectangle',
    standing: 'theory',

    apply: postModulus,
  },
  {
    name: 'post_bending',
    parameters: takes({ moment, size: TEXT }),
    result: pressure,
    unit: 'psi',
    meaning: 'The bending stress in a solid post.',
    source: 'elastic bending of a solid rectangle',
    standing: 'theory',
    caution: SOUNDNESS,
    apply: postBending,
  },
  {
    name: 'prop_length',
    parameters: takes({ height: length, reach: length }),
    result: length,
    unit: 'in',
    meaning: 'The length of a prop from the fence to the ground.',
    source: 'plane geometry',
    standing: 'arithmetic',

    apply: propLength,
  },
  {
    name: 'prop_load',
    parameters: takes({ force, height_of_force: length, prop_height: length, reach: length }),
    result: force,
    unit: 'lbf',
    meaning: 'The force along a prop that holds a fence hinged at grade.',
    source: 'statics of a hinged panel',
    standing: 'theory',
    caution: PROP,
    apply: propLoad,
  },
  {
    name: 'stock_length',
    parameters: takes({ needed: length, lengths: listOf(length) }),
    result: length,
    unit: 'ft',
    meaning: 'The shortest stock length that serves.',
    source: 'arithmetic',
    standing: 'arithmetic',

    apply: stockLength,
  },
];
