import type { Answer } from '../units/index.ts';
import { aboveZero, covered, zeroOrMore } from './limits.ts';

/**
 * Bags to open for a volume of concrete.
 *
 * bags = volume / yield, rounded up
 *
 * A quotient within 1e-9 of a whole number counts as that number, so 4.2 ft^3 at
 * 0.6 ft^3 a bag is 7. The yield belongs to the bag's label; waste is not added here.
 *
 * @param volume - Concrete in place, 0 or more. [m^3]
 * @param bagYield - Concrete that one bag makes, more than 0. [m^3]
 * @returns Whole number of bags. [1]
 *
 * @source arithmetic; yields are common practice, no source
 * @check hand-worked: 1 yd^3 at 0.60 ft^3 → 27/0.60 = 45
 */
export function wholeBags(volume: number, bagYield: number): Answer {
  const limits = [zeroOrMore('volume', volume, 'ft^3'), aboveZero('yield', bagYield, 'ft^3')];
  return covered('whole_bags', limits, () => {
    const bags = volume / bagYield;
    const nearest = Math.round(bags);
    const whole = Math.abs(bags - nearest) <= 1e-9 * Math.max(bags, nearest);
    return whole ? nearest : Math.ceil(bags);
  });
}
