import { describe, it } from 'vitest';
import { expectReckoned, type Check } from './reckon.ts';

// Common practice, no source: values a user may change.
const CHECKS: readonly Check[] = [
  // Values a user may change
  ['whole_bags(1 yd^3, 0.60 ft^3)', 45, 'exact', 'common practice, no source'],
  ['whole_bags(1 yd^3, 0.45 ft^3)', 60, 'exact', 'common practice, no source'],
  ['whole_bags(1 yd^3, 0.30 ft^3)', 90, 'exact', 'common practice, no source'],
  ['whole_bags(0.03755 m^3, 1 m^3/108)', 5, 'exact', 'common practice, no source'],
  ['whole_bags(0.03755 m^3, 1 m^3/100)', 4, 'exact', 'common practice, no source'],
  ['max(30 in, 42 in + 6 in) to in', 48, 'exact', 'common practice, no source'],
  ['0.25 in * 1 m / 48 in to mm', 5.208, 0.001, 'common practice, no source'],
  ['(105 lb/ft^3 * 0.5 ft^3) to lb', 52.5, 'exact', 'common practice, no source'],
];

describe('a value of common practice comes out of the formula language', () => {
  it.each(CHECKS)('%s is %s', (formula, printed, tolerance) => {
    expectReckoned(formula, printed, tolerance);
  });
});
