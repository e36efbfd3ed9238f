import { PLAIN, choiceOf } from '../units/index.ts';
import { endWind } from './end-wind.ts';
import { endGapFactor, gapFactor } from './gap-wind.ts';
import {
  coefficientOnTheWay,
  endWindOnTheWay,
  fenceWindOnTheWay,
  pressureOnTheWay,
} from './on-the-way.ts';
import type { Rule } from './rule.ts';
import { length, pressure, speed, takes } from './takes.ts';
import {
  EXPOSURES,
  fenceWind,
  openAreaFactor,
  velocityPressure,
  wallForceCoefficient,
} from './wind.ts';

const WIND =
  'A check for judging a fence, not a design: local code sets the wind speed, and a licensed engineer decides.';

/** Rules about what pushes a fence: the wind along it, near its ends, and with a gap under it. */
export const WIND_RULES: readonly Rule[] = [
  {
    name: 'velocity_pressure',
    parameters: takes({ speed, exposure: choiceOf(EXPOSURES), height: length }),
    result: pressure,
    unit: 'psf',
    meaning: 'Velocity pressure of the wind at a height.',
    equation:
      'q = 0.00256 Kz Kzt Kd Ke V^2 (psf, mph), Kz = 2.01 (max(z, 15 ft) / zg)^(2/alpha), Kd 0.85, Kzt 1, Ke 1; V speed, z height',
    source: 'ASCE 7-16 26.10, as carried in public worksheets',
    standing: 'standard',
    caution: WIND,
    apply: velocityPressure,
    onTheWay: pressureOnTheWay,
  },
  {
    name: 'wall_force_coefficient',
    parameters: takes({ length, height: length, top_height: length }),
    result: PLAIN,
    unit: '',
    meaning: 'Net force coefficient of a solid wall or fence; cases A and B only.',
    equation:
      'Cf = the table at B/s and s/h, linear between its values; B length, s height, h top height',
    source: 'ASCE 7-16 Fig. 29.3-1, Cases A and B',
    standing: 'standard',
    caution: WIND,
    apply: wallForceCoefficient,
    onTheWay: coefficientOnTheWay,
  },
  {
    name: 'open_area_factor',
    parameters: takes({ solid_ratio: PLAIN }),
    result: PLAIN,
    unit: '',
    meaning: 'The share of the full wind force that a fence with small openings takes.',
    equation: 'factor = 1 - (1 - e)^1.5, e the solid ratio',
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
    equation:
      'p = 0.6 q G Cf (1 - (1 - e)^1.5), G 0.85, Cf of Cases A and B at s/h = 1; e solid ratio',
    source: 'ASCE 7-16 29.3 and Fig. 29.3-1, Cases A and B, with 0.6 W of 2.4',
    standing: 'standard',
    caution: `${WIND} Near a free end use end_wind.`,
    apply: fenceWind,
    onTheWay: fenceWindOnTheWay,
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
    equation:
      'p = 0.6 q G (1 - (1 - e)^1.5) (1.8 - s/h) x the mean of Cf over the strip, G 0.85, s/h 1; e solid ratio',
    source: 'ASCE 7-16 Fig. 29.3-1, Case C; the factor 1.8 - s/h from memory',
    standing: 'standard',
    caution: WIND,
    apply: endWind,
    onTheWay: endWindOnTheWay,
  },
  {
    name: 'gap_factor',
    parameters: takes({ length, height: length, gap: length }),
    result: PLAIN,
    unit: '',
    meaning: 'What a gap under the boards makes of the wind on a fence; cases A and B.',
    equation: 'factor = Cf at s/h / Cf at s/h 1, h = s + gap; s fence height, B length',
    source: 'ASCE 7-16 Fig. 29.3-1, Cases A and B',
    standing: 'standard',
    caution: WIND,
    apply: gapFactor,
  },
  {
    name: 'end_gap_factor',
    parameters: takes({ height: length, gap: length }),
    result: PLAIN,
    unit: '',
    meaning: 'What a gap under the boards makes of the wind near a free end; case C.',
    equation:
      'factor = (1.8 - s/h) / 0.8, and 1.25 for s/h of 0.8 and less, h = s + gap; s fence height',
    source: 'ASCE 7-16 Fig. 29.3-1, Case C; the factor 1.8 - s/h from memory',
    standing: 'standard',
    caution: WIND,
    apply: endGapFactor,
  },
];
