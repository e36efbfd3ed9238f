import { describe, it } from 'vitest';
import { expectReckoned, type Check } from './reckon.ts';

// Hand-worked from the rule named, and recomputed by an independent program: formula, value, tolerance, rule.
const CHECKS: readonly Check[] = [
  // Footing and wind
  ['lateral_embedment(696 lbf, 4 ft, 1 ft, 1064 psf/ft) to ft', 3.2726, 0.0001, 'IBC 1807.3.2.1'],
  [
    'lateral_embedment(100000 lbf, 62.11 ft, 6 ft, 400 psf/ft) to ft',
    54.6,
    0.01,
    'IBC 1807.3.2.1, with the 12 ft cap of the text',
  ],
  [
    'lateral_capacity(3 ft, 3 ft, 1 ft, 150 psf/ft) to lbf',
    92.01,
    0.01,
    'IBC 1807.3.2.1, turned round',
  ],
  [
    'lateral_capacity(18 in, 3 ft, 18 in, 150 psf/ft) / lateral_capacity(30 in, 3 ft, 12 in, 150 psf/ft)',
    0.3919,
    0.0001,
    'IBC 1807.3.2.1',
  ],
  [
    'width_for_capacity(lateral_capacity(30 in, 3 ft, 12 in, 150 psf/ft), 3 ft, 18 in, 150 psf/ft) to in',
    45.93,
    0.01,
    'IBC 1807.3.2.1',
  ],
  ['square_width(12 in) to in', 16.9706, 0.0001, 'diagonal'],
  ['depth_by_height(6 ft) to in', 30, 'exact', 'ASTM F567 5.1'],
  ['hole_width_by_post(2.375 in) to in', 9.5, 'exact', 'ASTM F567 5.1'],
  [
    'sand_capacity(3 ft, 3 ft, 1 ft, 110 lbf/ft^3, 30 deg) to lbf',
    742.5,
    0.1,
    'Broms; UFC 3-220-20 Eq. 6-63; unit weight as a force',
  ],
  ['clay_capacity(3 ft, 3 ft, 1 ft, 1000 psf, 1.5 ft) to lbf', 959.4, 0.1, 'Eq. 6-59 to 6-61'],
  ['frost_grip(12 in, 36 in, 9.4 psi) to lbf', 12757, 1.0, 'bond x perimeter x depth'],
  ['wall_force_coefficient(40 ft, 6 ft, 6 ft)', 1.3333, 0.0001, 'Fig. 29.3-1, linear'],
  ['open_area_factor(0.8)', 0.9106, 0.0001, '1-(1-e)^1.5'],
  ['(fence_wind(115 mph, "B", 6 ft, 1, 96 ft) * 48 ft^2) to lbf', 526.3, 0.5, 'ASCE 7-16, 0.6 W'],
  ['(fence_wind(115 mph, "C", 6 ft, 1, 96 ft) * 48 ft^2) to lbf', 777.4, 0.5, 'ASCE 7-16, 0.6 W'],
  [
    'lateral_embedment(526.3 lbf, 3.3 ft, 1 ft, soil_bearing("clay")) to ft',
    7.41,
    0.005,
    'IBC 1807.3.2.1',
  ],
  // Plumb and condition
  ['lean_angle(1 in, 48 in) to deg', 1.1935, 0.0001, 'atan'],
  ['top_offset(2.25 in, 48 in, 72 in) to in', 3.375, 'exact', 'proportion'],
  ['combined_gap(0.375 in, 0.5 in) to in', 0.625, 'exact', 'Pythagoras'],
  ['lean_bearing(0.375 in, 0.5 in) to deg', 53.13, 0.01, 'atan2(east, north)'],
  ['post_bow(0 in, 0.5 in, 0.75 in) to in', 0.125, 'exact', 'mid less mean of ends'],
  ['pivot_height(0.4 in, 6 in, 1.9 in, 60 in) to in', -8.4, 0.0001, 'straight line'],
  ['pivot_height(0.1 in, 6 in, 1.9 in, 60 in) to in', 3, 0.0001, 'straight line'],
  ['strength_left(3.5 in, 0.25 in)', 0.6297, 0.0001, '((s-2t)/s)^3'],
  ['gate_sag(74.06 in, 72.42 in, 60 in) to in', 1.0009, 0.0001, '(a^2-b^2)/4h'],
  // Concrete, cure, price, stock
  ['crown(12 in, 3.5 in, 2 in) to ft^3', 0.04854, 1e-5, 'frustum less post'],
  [
    'round_hole(12 in, 30 in) - 3.5 in * 3.5 in * 30 in + crown(12 in, 3.5 in, 2 in) to ft^3',
    1.7994,
    0.0001,
    'frustum less post',
  ],
  ['square_hole(300 mm, 600 mm) to m^3', 0.054, 'exact', 'product'],
  ['tapered_hole(113.0973 in^2, 78.5398 in^2, 30 in) to ft^3', 1.6544, 0.0001, 'frustum'],
  [
    'whole_bags(4.2 ft^3, 0.6 ft^3)',
    7,
    'exact',
    'guarded division (4.2/0.6 is a hair over 7 in doubles)',
  ],
  ['whole_bags(3.278 ft^3 * 1.1, 0.6 ft^3)', 7, 'exact', '6.01 rounded up'],
  ['strength_fraction(7 day, "I")', 0.7035, 0.0001, 'ACI 209R-92'],
  ['strength_fraction(28 day, "I")', 1.0072, 0.0001, 'ACI 209R-92'],
  ['strength_fraction(3 day, "III")', 0.5929, 0.0001, 'ACI 209R-92'],
  ['age_for_strength(0.5, "I") to day', 3.478, 0.001, 'ACI 209R-92'],
  ['age_for_strength(0.5, "III") to day', 2.13, 0.001, 'ACI 209R-92'],
  ['age_for_strength(500 / 3000, "I") to h', 18.64, 0.01, 'ACI 209R-92'],
  ['equivalent_age([10 degC], [3 day], 5000 K) to day', 1.6425, 0.0005, 'Arrhenius'],
  [
    'maturity([-15 degC, 10 degC], [10 h, 10 h], -10 degC) to degC*h',
    200,
    'exact',
    'no credit below the datum',
  ],
  ['screw_lateral(8, 1.5 in, 3.75 in, 0.43) to lbf', 79.9, 0.6, 'NDS 2018 Table 12.3.1A, mode IV'],
  ['screw_lateral(12, 1.5 in, 4 in, 0.55) to lbf', 161, 0.6, 'NDS 2018 Table 12.3.1A, mode IV'],
  // Wood at 19% from its oven-dry G, engineeringtoolbox.com; the Wood Handbook's rule takes G at that moisture, so the two differ.
  ...(
    [
      [0.5, 34.2, 'Douglas fir-larch'],
      [0.55, 37.3, 'southern pine'],
      [0.42, 29.1, 'spruce-pine-fir'],
      [0.36, 25.2, 'western cedar'],
      [0.37, 25.8, 'redwood'],
    ] as const
  ).map(([gravity, weight, wood]): Check => [
    `62.4 lb/ft^3 * ${String(gravity)} / (1 + 0.009 * ${String(gravity)} * 19) * 1.19 to lb/ft^3`,
    weight,
    0.05,
    wood,
  ]),
  ['0.25 in / 8 ft * 384', 1, 'exact', 'crook of a Stud, WWPA 1998, as L/384'],
  ['0.75 in / 8 ft * 128', 1, 'exact', 'bow of a Stud, WWPA 1998, as L/128'],
  // Shaft friction at the least of 500 psf and 1/6 of the vertical value, IBC 1810.3.3.1.4, and the weight of the pier.
  ['min(500 psf, 1500 psf / 6) * pi * 1 ft * 3 ft to lbf', 2356, 0.5, 'clay, 12 in x 3 ft'],
  ['150 lb/ft^3 * round_hole(1 ft, 3 ft) to lb', 353, 0.5, 'clay, 12 in x 3 ft'],
  ['51 lb to kg', 23, 0.15, 'NIOSH 94-110, the load constant in both units'],
  ['price_at_margin(1000 USD, 0.25) to USD', 1333.33, 0.005, 'cost/(1-g)'],
  ['stock_length(104 in, [8 ft, 10 ft, 12 ft]) to ft', 10, 'exact', 'shortest that serves'],
];

describe('a value worked from a cited rule comes out of the formula language', () => {
  it.each(CHECKS)('%s is %s', (formula, printed, tolerance) => {
    expectReckoned(formula, printed, tolerance);
  });
});
