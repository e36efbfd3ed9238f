import { PLAIN, TEMPERATURE_POINT, choiceOf, listOf } from '../units/index.ts';
import { wholeBags } from './bags.ts';
import { CEMENTS, ageForStrength, equivalentAge, maturity, strengthFraction } from './cure.ts';
import { nailLateral, nailWithdrawal, screwLateral, screwWithdrawal } from './fasteners.ts';
import { crown, crownVolume, roundHole, squareHole, taperedHole } from './hole.ts';
import { marginOfMarkup, markupOfMargin, priceAtMargin, priceAtMarkup } from './price.ts';
import type { Rule } from './rule.ts';
import {
  activation,
  area,
  duration,
  force,
  forcePerLength,
  length,
  maturityKind,
  money,
  takes,
  volume,
} from './takes.ts';

const CURE =
  'An estimate from a curve: cold, dry or wet-poured concrete gains strength more slowly. Keep the load off while in doubt.';
const FASTENER =
  'Reference value for sound, dry wood in side grain: guards and gates need an engineer.';

/** Rules about what is bought and fixed: concrete, cure, fasteners and price. */
export const MATERIAL_RULES: readonly Rule[] = [
  {
    name: 'round_hole',
    parameters: takes({ diameter: length, depth: length }),
    result: volume,
    unit: 'ft^3',
    meaning: 'Volume of a round hole.',
    source: 'solid geometry, OpenStax Contemporary Mathematics 10.7',
    standing: 'arithmetic',

    apply: roundHole,
  },
  {
    name: 'square_hole',
    parameters: takes({ side: length, depth: length }),
    result: volume,
    unit: 'ft^3',
    meaning: 'Volume of a square hole.',
    source: 'solid geometry',
    standing: 'arithmetic',

    apply: squareHole,
  },
  {
    name: 'tapered_hole',
    parameters: takes({ area_top: area, area_bottom: area, depth: length }),
    result: volume,
    unit: 'ft^3',
    meaning: 'Volume of a hole whose top and bottom differ in area but not in shape.',
    source: 'solid geometry, frustum of a cone or pyramid',
    standing: 'arithmetic',

    apply: taperedHole,
  },
  {
    name: 'crown',
    parameters: takes({ hole_width: length, post_size: length, crown_height: length }),
    result: volume,
    unit: 'ft^3',
    meaning: 'Concrete in the crown round a square post in a round hole.',
    source: 'solid geometry; crown 2 in above grade, ASTM F567 5.3',
    standing: 'arithmetic',

    apply: crown,
  },
  {
    name: 'crown_volume',
    parameters: takes({
      hole_area: area,
      post_area: area,
      crown_height: length,
      top_of_concrete: length,
    }),
    result: volume,
    unit: 'ft^3',
    meaning: 'Concrete in the crown of any hole round any post.',
    source: 'solid geometry; ASTM F567 5.3',
    standing: 'arithmetic',

    apply: crownVolume,
  },
  {
    name: 'whole_bags',
    parameters: takes({ volume, yield: volume }),
    result: PLAIN,
    unit: '',
    meaning: 'Bags to open for a volume of concrete.',
    source: 'arithmetic; yields are common practice, no source',
    standing: 'arithmetic',

    apply: wholeBags,
  },
  {
    name: 'strength_fraction',
    parameters: takes({ age: duration, cement: choiceOf(CEMENTS) }),
    result: PLAIN,
    unit: '',
    meaning: 'Strength of concrete at an age, as a share of its 28-day strength.',
    source: 'ACI 209R-92, as transcribed in a Washington State DOT bridge library',
    standing: 'standard',
    caution: CURE,
    apply: strengthFraction,
  },
  {
    name: 'age_for_strength',
    parameters: takes({ fraction: PLAIN, cement: choiceOf(CEMENTS) }),
    result: duration,
    unit: 'h',
    meaning: 'The age at which concrete reaches a share of its 28-day strength.',
    source: 'ACI 209R-92, as transcribed in a Washington State DOT bridge library',
    standing: 'standard',
    caution: CURE,
    apply: ageForStrength,
  },
  {
    name: 'maturity',
    parameters: takes({
      temperatures: listOf(TEMPERATURE_POINT),
      durations: listOf(duration),
      datum: TEMPERATURE_POINT,
    }),
    result: maturityKind,
    unit: 'degC*h',
    meaning: 'Maturity of concrete from a log of temperatures.',
    source: 'Nurse-Saul function of ASTM C1074',
    standing: 'standard',
    caution: CURE,
    apply: maturity,
  },
  {
    name: 'equivalent_age',
    parameters: takes({
      temperatures: listOf(TEMPERATURE_POINT),
      durations: listOf(duration),
      activation,
    }),
    result: duration,
    unit: 'h',
    meaning: 'The age at 20 degC that does as much as a log of temperatures did.',
    source: 'Arrhenius function of ASTM C1074; EN 1992-1-1 Eq. (B.10)',
    standing: 'standard',
    caution: CURE,
    apply: equivalentAge,
  },
  {
    name: 'screw_lateral',
    parameters: takes({ gauge: PLAIN, side_thickness: length, length, gravity: PLAIN }),
    result: force,
    unit: 'lbf',
    meaning: 'Reference lateral value of one wood screw in the side grain.',
    source: 'NDS 2018 12.3.1, Tables 12.3.1A, 12.3.3, 12L, L3 and I1',
    standing: 'standard',
    caution: FASTENER,
    apply: screwLateral,
  },
  {
    name: 'nail_lateral',
    parameters: takes({ diameter: length, length, side_thickness: length, gravity: PLAIN }),
    result: force,
    unit: 'lbf',
    meaning: 'Reference lateral value of one nail in the side grain.',
    source: 'NDS 2018 12.3.1, Tables 12.3.1A, 12.3.3, 12N and I1',
    standing: 'standard',
    caution: FASTENER,
    apply: nailLateral,
  },
  {
    name: 'screw_withdrawal',
    parameters: takes({ gauge: PLAIN, gravity: PLAIN }),
    result: forcePerLength,
    unit: 'lbf/in',
    meaning:
      'Reference withdrawal value of one wood screw, for each length of thread in the main piece.',
    source: 'NDS 2018 12.2, Table 12.2B',
    standing: 'standard',
    caution: FASTENER,
    apply: screwWithdrawal,
  },
  {
    name: 'nail_withdrawal',
    parameters: takes({ diameter: length, gravity: PLAIN }),
    result: forcePerLength,
    unit: 'lbf/in',
    meaning: 'Reference withdrawal value of one nail, for each length in the main piece.',
    source: 'NDS 2018 12.2, Table 12.2C',
    standing: 'standard',
    caution: FASTENER,
    apply: nailWithdrawal,
  },
  {
    name: 'price_at_markup',
    parameters: takes({ cost: money, rate: PLAIN }),
    result: money,
    unit: 'USD',
    meaning: 'Selling price with a markup on cost.',
    source: 'OpenStax Contemporary Mathematics 6.2',
    standing: 'arithmetic',

    apply: priceAtMarkup,
  },
  {
    name: 'price_at_margin',
    parameters: takes({ cost: money, rate: PLAIN }),
    result: money,
    unit: 'USD',
    meaning: 'Selling price that leaves a margin.',
    source: 'web article on margin: cost 80, price 100, markup 25%, margin 20%',
    standing: 'arithmetic',

    apply: priceAtMargin,
  },
  {
    name: 'markup_of_margin',
    parameters: takes({ margin: PLAIN }),
    result: PLAIN,
    unit: '',
    meaning: 'The markup that leaves a margin.',
    source: 'web article on margin: cost 80, price 100, markup 25%, margin 20%',
    standing: 'arithmetic',

    apply: markupOfMargin,
  },
  {
    name: 'margin_of_markup',
    parameters: takes({ markup: PLAIN }),
    result: PLAIN,
    unit: '',
    meaning: 'The margin that a markup leaves.',
    source: 'web article on margin: cost 80, price 100, markup 25%, margin 20%',
    standing: 'arithmetic',

    apply: marginOfMarkup,
  },
];
