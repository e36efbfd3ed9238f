import { describe, it } from 'vitest';
import { expectReckoned, type Check } from './reckon.ts';

// Formula, printed value in the unit after `to`, tolerance from the printed digits, source.
const CHECKS: readonly Check[] = [
  // Embedment (IBC 2012 1807.3.2), soil, depth
  [
    'lateral_embedment(680 lbf, 7.79 ft, 1 ft, 150 psf/ft) to ft',
    8.08,
    0.005,
    'public hand-worked note on Eq. 18-1',
  ],
  [
    'lateral_embedment(200 lbf, 4.54 ft, 1 ft, 150 psf/ft) to ft',
    4.45,
    0.005,
    'public hand-worked note on Eq. 18-1',
  ],
  [
    'lateral_embedment(200 lbf, 4.54 ft, 1 ft, 300 psf/ft) to ft',
    3.39,
    0.005,
    'public hand-worked note on Eq. 18-1; table value doubled',
  ],
  [
    'lateral_embedment_restrained(510 lbf, 4 ft, 1 ft, 266 psf/ft) to ft',
    3.19,
    0.005,
    'Christy, Engineering with the Spreadsheet, ASCE Press 2006, Fig. 16-1',
  ],
  [
    '150 lb/ft^3 * round_hole(1 ft, lateral_embedment_restrained(510 lbf, 4 ft, 1 ft, 266 psf/ft)) to lb',
    376,
    0.5,
    'Christy, Engineering with the Spreadsheet, ASCE Press 2006, Fig. 16-1',
  ],
  [
    'round_hole(1 ft, lateral_embedment_restrained(510 lbf, 4 ft, 1 ft, 266 psf/ft)) to yd^3',
    0.093,
    0.0005,
    'Christy, Engineering with the Spreadsheet, ASCE Press 2006, Fig. 16-1',
  ],
  [
    'lateral_embedment_restrained(30000 lbf, 3 ft, 4.5 ft, 700 psf/ft) to m',
    1.509,
    0.0005,
    'public worksheet; 350 doubled',
  ],
  [
    '2.34 * 3000 lbf / (1.33 * 150 psf/ft * 6 ft / 3 * 1 ft) to ft',
    17.6,
    0.05,
    'forum; the A of Eq. 18-1 at d = 6 ft',
  ],
  // Depth past 12 ft: 33,700 lb at 39.4 ft on a square of 126 in, held at grade. The sheet prints
  // its 178.19 in diagonal, 2,394 psf (12 ft of 1.33 x 150) and 12.60 ft.
  [
    'lateral_embedment_restrained(33700 lbf, 39.4 ft, square_width(126 in), 1.33 * 150 psf/ft) to ft',
    12.6,
    0.005,
    'public flagpole sheet of 10 January 2024, IBC 2021 Eq. 18-3',
  ],
  ['square_width(126 in) to in', 178.19, 0.005, 'public flagpole sheet of 10 January 2024'],
  [
    'square_width(0.6 m) to m',
    0.849,
    0.0005,
    'public metric sheet of a light pole, IBC 2009 Eq. 18-1',
  ],
  [
    '2.34 * 1.33 kN / (31.4 kPa/m * 1.55 m / 3 * square_width(0.6 m)) to m',
    0.226,
    0.0005,
    'public metric sheet of a light pole, IBC 2009 Eq. 18-1; its A',
  ],
  ['soil_bearing("bedrock") to psf/ft', 1200, 'exact', 'IBC 2012 Table 1806.2'],
  ['soil_bearing("sedimentary rock") to psf/ft', 400, 'exact', 'IBC 2012 Table 1806.2'],
  ['soil_bearing("gravel") to psf/ft', 200, 'exact', 'IBC 2012 Table 1806.2'],
  ['soil_bearing("sand") to psf/ft', 150, 'exact', 'IBC 2012 Table 1806.2'],
  ['soil_bearing("clay") to psf/ft', 100, 'exact', 'IBC 2012 Table 1806.2'],
  ['depth_by_height(4 ft) to in', 24, 'exact', 'ASTM F567 5.1; Byesville, Ohio, code'],
  // Wind
  ['velocity_pressure(155 mph, "D", 20 ft) to psf', 56.62, 0.005, 'public worksheet, ASCE 7-10'],
  [
    '0.6 * (velocity_pressure(155 mph, "D", 20 ft) * 0.85 * wall_force_coefficient(3 ft, 3 ft, 20 ft) * 7.48 ft^2) to lbf',
    389,
    0.5,
    'public worksheet, ASCE 7-10',
  ],
  ['wall_force_coefficient(3 ft, 3 ft, 20 ft)', 1.8, 0.005, 'public worksheet, ASCE 7-10'],
  [
    '(velocity_pressure(155 mph, "D", 20 ft) * 0.85 * wall_force_coefficient(3 ft, 3 ft, 20 ft) * 7.48 ft^2) to lbf',
    648,
    0.5,
    'public worksheet, ASCE 7-10; 0.6 of it is printed 389',
  ],
  [
    '1.15 * velocity_pressure(100 mph, "C", 6.6 ft) to psf',
    21.27,
    21.27 * 0.002,
    'public worksheet, ASCE 7-05, I = 1.15; it uses Kz 0.85 where the formula gives 0.849',
  ],
  [
    'wall_force_coefficient(689 ft, 6.6 ft, 6.6 ft)',
    1.3,
    0.005,
    'public worksheet, ASCE 7-05, I = 1.15',
  ],
  [
    '1.15 * velocity_pressure(100 mph, "C", 6.6 ft) * 0.85 * 1.30 * 689 ft * 6.6 ft to lbf',
    106880,
    106880 * 0.002,
    'public worksheet, ASCE 7-05, I = 1.15, printed 106.88 kip',
  ],
  [
    '1.15 * velocity_pressure(100 mph, "C", 6.6 ft) * 0.85 * 1.30 * 689 ft * 6.6 ft * 0.55 * 6.6 ft to lbf*ft',
    387980,
    387980 * 0.002,
    'public worksheet, ASCE 7-05, I = 1.15, printed 387.98 kip-ft',
  ],
  [
    '17.80 psf * 0.85 * wall_force_coefficient(100 ft, 8 ft, 35 ft) * 800 ft^2 to lbf',
    22370,
    5,
    'public worksheet, ASCE 7-05, sign 8 x 100 ft with its top at 35 ft',
  ],
  [
    'velocity_pressure(50 m/s, "C", 4.6 m) to Pa',
    1107,
    1107 * 0.001,
    'public file; Kz 0.85 and 0.613',
  ],
  [
    'wall_force_coefficient(6 ft, 6 ft, 6 ft)',
    1.45,
    0.0005,
    'ASCE 7-16 Fig. 29.3-1, Cases A and B',
  ],
  [
    'wall_force_coefficient(24 ft, 6 ft, 6 ft)',
    1.35,
    0.0005,
    'ASCE 7-16 Fig. 29.3-1, Cases A and B',
  ],
  [
    'wall_force_coefficient(60 ft, 6 ft, 6 ft)',
    1.3,
    0.0005,
    'ASCE 7-16 Fig. 29.3-1, Cases A and B',
  ],
  [
    'wall_force_coefficient(28 ft, 7 ft, 10 ft)',
    1.6,
    0.0005,
    'ASCE 7-16 Fig. 29.3-1, Cases A and B',
  ],
  [
    'wall_force_coefficient(30 ft, 6 ft, 12 ft)',
    1.7,
    0.0005,
    'ASCE 7-16 Fig. 29.3-1, Cases A and B',
  ],
  [
    'wall_force_coefficient(90 ft, 2 ft, 10 ft)',
    1.95,
    0.0005,
    'ASCE 7-16 Fig. 29.3-1, Cases A and B',
  ],
  // Broms, clay (kip and ft taken as the units)
  [
    '54000 lbf / (9 * 1500 psf * 1 ft) to ft',
    4,
    0.0001,
    'public file that transcribes UFC 3-220-20 (Jan 2025), Eq. 6-59',
  ],
  [
    'sqrt((100000 lbf*ft + 54000 lbf * 3.5 ft) / (2.25 * 1500 psf * 1 ft)) to ft',
    9.2537,
    0.0001,
    'public file that transcribes UFC 3-220-20 (Jan 2025), Eq. 6-59, Eq. 6-60',
  ],
  [
    'clay_capacity(14.75 ft, 1.85185 ft, 1 ft, 1500 psf, 1.5 ft) to lbf',
    54000,
    54000 * 0.001,
    'public file that transcribes UFC 3-220-20 (Jan 2025), Eq. 6-59, Eq. 6-61 (printed depth 14.75 for 54)',
  ],
  [
    'sqrt(27000 lbf / (1.5 * 60 lbf/ft^3 * 1 ft * 3)) to ft',
    10,
    0.05,
    'public file that transcribes UFC 3-220-20 (Jan 2025), Eq. 6-64',
  ],
  [
    '3 * sand_capacity(10 ft, 0 ft, 1 ft, 60 lbf/ft^3, 30 deg) / 1 ft to lbf/ft',
    27000,
    50,
    'public file that transcribes UFC 3-220-20 (Jan 2025); full pressure 1.5 gamma b Kp Z^2 at 10 ft',
  ],
  [
    'clay_capacity(2.44 m, 0.61 m, 0.305 m, 47.9 kPa, 1.5 * 0.305 m) to kN',
    59.4,
    0.1,
    'Reese and Van Impe, Single Piles and Pile Groups under Lateral Loading, Appendix A; root of its quadratic',
  ],
  // Concrete volume
  ['round_hole(10 in, 12 in) to in^3', 942.48, 0.005, 'OpenStax Contemporary Mathematics 10.7'],
  [
    'round_hole(6 in, 36 in) to in^3',
    1017.36,
    1017.36 * 0.0006,
    'web article, gardenguides.com; pi = 3.14',
  ],
  ['round_hole(6 in, 36 in) to ft^3', 0.59, 0.005, 'web article, gardenguides.com'],
  ['round_hole(5.4 ft, 4 ft) to ft^3', 91.5624, 91.5624 * 0.0006, 'OpenStax Prealgebra; pi = 3.14'],
  ['round_hole(8 cm, 10 cm) to cm^3', 502.7, 0.05, 'OpenStax Contemporary Mathematics 10.7'],
  [
    'round_hole(22 cm, 3 cm) / round_hole(8 cm, 10 cm)',
    2.3,
    0.05,
    'OpenStax Contemporary Mathematics 10.7',
  ],
  ['round_hole(22 cm, 3 cm) to cm^3', 1140.4, 0.05, 'OpenStax Contemporary Mathematics 10.7'],
  [
    'whole_bags(round_hole(22 cm, 3 cm), round_hole(8 cm, 10 cm))',
    3,
    'exact',
    'OpenStax Contemporary Mathematics 10.7; 2.3 cans, so buy 3',
  ],
  [
    '50 lb / (133 lb/ft^3) to ft^3',
    0.375,
    0.001,
    'web article, civilhow.com: dry bag per volume of concrete',
  ],
  // Strength with time
  [
    'eurocode_strength(9 day, 0.25)',
    0.8261668305,
    1e-9,
    "tests of fib's open-source structural code library, EN 1992-1-1 Eq. (3.2)",
  ],
  [
    'eurocode_strength(56 day, 0.25)',
    1.0759707794,
    1e-9,
    "tests of fib's open-source structural code library, EN 1992-1-1 Eq. (3.2)",
  ],
  [
    'eurocode_strength(10 day, 0.38)',
    0.77425,
    5e-6,
    "tests of fib's open-source structural code library, EN 1992-1-1 Eq. (3.2)",
  ],
  // Maturity
  [
    'maturity([20 degC, 25 degC], [12 h, 12 h], 0 degC) to degC*h',
    540,
    'exact',
    'general web guide to ASTM C1074',
  ],
  [
    'equivalent_age([19 degC, 20 degC, 20 degC, 21 degC, 22 degC, 23 degC], [1 day, 2 day, 1 day, 1 day, 1 day, 2 day], 4000 K) to day',
    8.37987,
    8.37987 * 0.0025,
    "tests of fib's open-source structural code library, EN 1992-1-1 (B.10); its rounded 13.65 makes it 0.18% lower",
  ],
  // Lumber
  ['dressed("1x6") to in', 0.75, 'exact', 'PS 20 sizes, engineeringtoolbox.com'],
  ['dressed("2x4") to in', 1.5, 'exact', 'NDS 2018 Supplement Table 1A'],
  ['dressed("4x4") to in', 3.5, 'exact', 'NDS 2018 Supplement Table 1A'],
  ['dressed("6x6") to in', 5.5, 'exact', 'PS 20-05, sizes.com'],
  ['(62.43 lb/ft^3 * 0.4 * 1.12) to lb/ft^3', 27.968, 0.001, 'Wood Handbook FPL-GTR-190 ch. 4'],
  ['35 lb/ft^3 * 1.5 in * 3.5 in to lb/ft', 1.28, 0.006, 'engineeringtoolbox.com'],
  ['35 lb/ft^3 * 1.5 in * 5.5 in to lb/ft', 2, 0.006, 'engineeringtoolbox.com'],
  ['35 lb/ft^3 * 0.75 in * 5.5 in to lb/ft', 1, 0.006, 'engineeringtoolbox.com'],
  // Spoil
  ['10 yd^3 * 1.3 to yd^3', 13, 'exact', 'projectengineer.net: 10 dug is 13 loose'],
  // Fasteners (NDS 2018; printed to the pound, rounded Fe)
  ['screw_lateral(10, 0.5 in, 2.5 in, 0.50) to lbf', 90, 0.6, 'Table 12L'],
  ['screw_lateral(8, 0.5 in, 2.5 in, 0.50) to lbf', 73, 0.6, 'Table 12L'],
  ['screw_lateral(10, 1.5 in, 3.5 in, 0.50) to lbf', 117, 0.6, 'Table 12L'],
  ['nail_lateral(0.113 in, 2 in, 0.75 in, 0.50) to lbf', 72, 0.6, 'Table 12N, 6d common'],
  ['nail_lateral(0.148 in, 3 in, 0.75 in, 0.50) to lbf', 105, 0.6, '10d common'],
  ['nail_lateral(0.131 in, 2.5 in, 1 in, 0.50) to lbf', 97, 0.6, '8d common'],
  ['nail_lateral(0.162 in, 3.5 in, 1 in, 0.50) to lbf', 141, 0.6, '16d common'],
  ['nail_lateral(0.135 in, 3.5 in, 0.75 in, 0.50) to lbf', 94, 0.6, '16d box'],
  ['nail_lateral(0.120 in, 2.875 in, 0.75 in, 0.50) to lbf', 80, 0.6, '10d sinker'],
  ['nail_lateral(0.162 in, 3.5 in, 1.5 in, 0.42) to lbf', 120, 0.6, '16d common'],
  [
    '1.6 * nail_lateral(0.162 in, 3.5 in - 0.75 in, 1.5 in, 0.50) to lbf',
    174,
    0.7,
    "structural engineers' mailing list, seaintarchive.org, 2009; 16d through 3/4 in of floor, 1.25/1.62 of 141, x 1.6",
  ],
  ['1800 lbf/in * 0.50^1.5 * 0.25^0.75 to lbf/in', 225, 0.5, 'Table 12.2A, lag screw 1/4 in'],
  ['screw_withdrawal(10, 0.50) to lbf/in', 135, 0.5, 'Table 12.2B'],
  ['nail_withdrawal(0.131 in, 0.50) to lbf/in', 32, 0.5, 'Table 12.2C'],
  // The page calls this a 20d nail; ASTM F1667 makes a common 20d nail 0.192 in thick, which holds
  // 36 lb/in. The arithmetic at the diameter it prints is right.
  [
    'nail_withdrawal(0.203 in, 0.45) to lbf/in',
    38,
    0.5,
    'public engineering table of nails, SG 0.45',
  ],
  ['nail_withdrawal(0.131 in, 0.42) to lbf/in', 20.667, 0.0005, 'AWC example E2.1a'],
  ['nail_withdrawal(0.131 in, 0.42) * 2.395 in to lbf', 49.5, 0.005, 'AWC example E2.1a'],
  // Price
  [
    'price_at_markup(62 USD, 0.15) to USD',
    71.3,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  [
    'price_at_markup(1.30 USD, 0.6) to USD',
    2.08,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  [
    'price_at_markup(250 USD, 0.4) to USD',
    350,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  [
    'price_at_markup(115 USD, 2.25) to USD',
    373.75,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  [
    '(103.50 USD - 90 USD) / 90 USD',
    0.15,
    5e-5,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  [
    '10.62 USD / (1 + 0.20) to USD',
    8.85,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  [
    '(428.99 USD * 0.0825) to USD',
    35.39,
    0.005,
    "OpenStax Contemporary Mathematics 6.2 and Prealgebra; the book's total 464.87 is an error",
  ],
  [
    '(428.99 USD * 1.0825) to USD',
    464.38,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 prints 464.87, an error: its own tax of 35.39 makes 464.38',
  ],
  ['(840 USD - 480 USD) / 480 USD', 0.75, 5e-5, 'OpenStax Contemporary Mathematics 6.2'],
  [
    '(36.56 USD / 1.0575) to USD',
    34.57,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  [
    '(499 USD * 1.0881) to USD',
    542.96,
    0.005,
    'OpenStax Contemporary Mathematics 6.2 and Prealgebra',
  ],
  ['markup_of_margin(0.20)', 0.25, 'exact', 'web article on margin; cost 80, price 100'],
  ['margin_of_markup(0.25)', 0.2, 'exact', 'web article on margin'],
];

describe('a published value comes out of the formula language', () => {
  it.each(CHECKS)('%s is %s (within %s; %s)', (formula, printed, tolerance) => {
    expectReckoned(formula, printed, tolerance);
  });
});
