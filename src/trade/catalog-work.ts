import { PLAIN, TEMPERATURE_POINT, listOf } from '../units/index.ts';
import { propWind } from './bracing.ts';
import { cutCount, cutCountOf } from './cut-rules.ts';
import type { Rule } from './rule.ts';
import { buriedPanels, equalStep, leastClearance, stepReach } from './slope.ts';
import {
  activation,
  area,
  duration,
  length,
  maturityKind,
  money,
  pressure,
  speed,
  takes,
} from './takes.ts';
import { ageAtEquivalent, ageAtMaturity, equivalentAtAge } from './temperature-log.ts';

const LOG =
  'An estimate from a log or a forecast: where it turns colder, wait longer. Keep the load off while in doubt.';
const LOGGED = {
  temperatures: listOf(TEMPERATURE_POINT),
  durations: listOf(duration),
  pour: duration,
};

/** Rules for the days of the work: what the props must hold, and how long to wait. */
export const WORK_RULES: readonly Rule[] = [
  {
    name: 'prop_wind',
    parameters: takes({ speed }),
    result: pressure,
    unit: 'psf',
    meaning: 'Wind pressure on a solid fence while it stands on props.',
    equation: 'p = 1.3 x 0.00256 V^2 (psf, mph)',
    source:
      'stagnation pressure 0.00256 V^2 of ASCE 7-16 26.10 with Cf 1.3; the speed is common practice',
    standing: 'standard',
    caution: 'For the days of the work only, not for a design. A stronger gust brings it down.',
    apply: propWind,
  },
  {
    name: 'age_at_equivalent',
    parameters: takes({ ...LOGGED, wanted: duration, activation }),
    result: duration,
    unit: 'h',
    meaning: 'How long after its pour concrete has done what so many hours at 20 degC would do.',
    equation:
      'the age t at which the sum of exp(-Q (1/T - 1/293.15)) x duration comes to the age wanted',
    source: 'Arrhenius function of ASTM C1074, solved for the age',
    standing: 'standard',
    caution: LOG,
    apply: ageAtEquivalent,
  },
  {
    name: 'equivalent_at_age',
    parameters: takes({ ...LOGGED, age: duration, activation }),
    result: duration,
    unit: 'h',
    meaning: 'The age at 20 degC that concrete has come to, so long after its pour.',
    equation: 'te = sum of exp(-Q (1/T - 1/293.15)) x duration, from the pour to the age given',
    source: 'Arrhenius function of ASTM C1074; EN 1992-1-1 Eq. (B.10)',
    standing: 'standard',
    caution: LOG,
    apply: equivalentAtAge,
  },
  {
    name: 'age_at_maturity',
    parameters: takes({ ...LOGGED, wanted: maturityKind, datum: TEMPERATURE_POINT }),
    result: duration,
    unit: 'h',
    meaning: 'How long after its pour concrete has gathered a maturity.',
    equation: 'the age t at which the sum of (T - T0) x duration comes to the maturity wanted',
    source: 'Nurse-Saul function of ASTM C1074, solved for the age',
    standing: 'standard',
    caution: LOG,
    apply: ageAtMaturity,
  },
  {
    name: 'cut_count',
    parameters: takes({
      pieces: listOf(length),
      counts: listOf(PLAIN),
      stocks: listOf(length),
      priced: listOf(length),
      prices: listOf(money),
      kerf: length,
      stock: length,
    }),
    result: PLAIN,
    unit: '',
    meaning: 'Pieces of one stock length that the cutting plan takes.',
    equation:
      'least cost where every stock length has a price, else least length bought; a saw cut between each two pieces; offcuts serve the whole job',
    source: 'cutting-stock problem: branch and bound over first-fit-decreasing',
    standing: 'arithmetic',
    apply: cutCount,
  },
  {
    name: 'cut_count_of',
    parameters: takes({
      pieces: listOf(length),
      counts: listOf(PLAIN),
      areas: listOf(area),
      area,
      stocks: listOf(length),
      priced: listOf(length),
      priced_areas: listOf(area),
      prices: listOf(money),
      kerf: length,
      stock: length,
    }),
    result: PLAIN,
    unit: '',
    meaning:
      'Pieces of one stock length that the cutting plan takes for one section among several.',
    equation: 'as cut_count, for the pieces whose area is this one',
    source: 'cutting-stock problem: branch and bound over first-fit-decreasing',
    standing: 'arithmetic',
    apply: cutCountOf,
  },
  {
    name: 'equal_step',
    parameters: takes({ drops: listOf(length) }),
    result: length,
    unit: 'in',
    meaning: 'Step of each panel where all step down alike.',
    equation: 'step = fall of the run / bays',
    source: 'proportion',
    standing: 'arithmetic',
    apply: equalStep,
  },
  {
    name: 'least_clearance',
    parameters: takes({ drops: listOf(length), gap: length }),
    result: length,
    unit: 'in',
    meaning: 'Least clearance under any panel where all step down alike.',
    equation: 'under each panel: gap + fall so far - steps so far, at the end where it is less',
    source: 'plane geometry',
    standing: 'arithmetic',
    apply: leastClearance,
  },
  {
    name: 'buried_panels',
    parameters: takes({ drops: listOf(length), gap: length }),
    result: PLAIN,
    unit: '',
    meaning: 'Panels that would go into the ground where all step down alike.',
    equation: 'panels whose gap + fall so far - steps so far is under 0',
    source: 'plane geometry',
    standing: 'arithmetic',
    apply: buriedPanels,
  },
  {
    name: 'step_reach',
    parameters: takes({ drops: listOf(length), gap: length }),
    result: length,
    unit: 'in',
    meaning: 'Most clearance under any panel where all step down alike.',
    equation: 'at each post: gap + fall so far - steps before the panel uphill of it',
    source: 'plane geometry',
    standing: 'arithmetic',
    apply: stepReach,
  },
];
