import type { Answer } from '../units/index.ts';
import { aboveZero, covered, zeroOrMore } from './limits.ts';

/**
 * The upward force with which frozen ground can grip the side of a round footing.
 *
 * force = bond x pi x width x frost depth
 *
 * A warning, not a pass or fail: it dwarfs the weight of any straight pier. What
 * holds is grip below frost, a bell, or smooth, tapered or sleeved sides. Average
 * field bond 65 kPa for fine soil on wood or concrete, 100 kPa on steel (Penner 1974).
 *
 * @param width - Diameter of the footing, more than 0. [m]
 * @param frostDepth - Depth of frozen ground along its side, 0 or more. [m]
 * @param bond - Adfreeze bond, 0 or more. [Pa]
 * @returns Upward force. [N]
 *
 * @source Canadian Foundation Engineering Manual, 4th ed., as quoted in a forum thread
 * @check hand-worked: 12 in, 36 in, 9.4 psi → 9.4 x pi x 12 x 36 = 12,757 lbf
 */
export function frostGrip(width: number, frostDepth: number, bond: number): Answer {
  const limits = [
    aboveZero('width', width, 'in'),
    zeroOrMore('frost depth', frostDepth, 'in'),
    zeroOrMore('bond', bond, 'psi'),
  ];
  return covered('frost_grip', limits, () => bond * Math.PI * width * frostDepth);
}
