import { describe, expect, it } from 'vitest';
import {
  buriedPanels,
  equalStep,
  leastClearance,
  stepClearance,
  stepReach,
} from '../../src/trade/index.ts';
import { expectNear, refusal, si } from './si.ts';

const INCH = si(1, 'in');
// A surveyed slope of 44 in over eight bays; the first post has no drop. All figures hand-worked.
const DROPS = [0, 3, 4.5, 6, 8.25, 7.5, 6.25, 5, 3.5].map((drop) => drop * INCH);
const UP = [
  0,
  ...DROPS.slice(1)
    .reverse()
    .map((drop) => -drop),
];

describe('panels that step down alike', () => {
  it('step 5 1/2 in on 44 in over eight bays', () => {
    expectNear(equalStep(DROPS) as number, 5.5 * INCH, 1e-9);
  });

  it('put three panels into the ground, the third by 1 1/2 in', () => {
    // Uphill clearances with a 2 in gap: 2, -0.5, -1.5, -1, 1.75, 3.75, 4.5, 4.
    expect(buriedPanels(DROPS, 2 * INCH)).toBe(3);
    expectNear(leastClearance(DROPS, 2 * INCH) as number, -1.5 * INCH, 1e-9);
  });

  it('leave each panel its own clearance, from either end of the run', () => {
    const under = (drops: readonly number[]) =>
      [1, 2, 3, 4, 5, 6, 7, 8].map(
        (post) => (stepClearance(drops, 2 * INCH, post) as number) / INCH,
      );
    const worked = [2, -0.5, -1.5, -1, 1.75, 3.75, 4.5, 4];
    under(DROPS).forEach((each, at) => expectNear(each, worked[at]!, 1e-9));
    under(UP).forEach((each, at) => expectNear(each, worked[7 - at]!, 1e-9));
    expect(refusal(stepClearance(DROPS, 2 * INCH, 9)).where).toBe('step_clearance');
  });

  it('bury none with 3 1/2 in under them', () => {
    expect(buriedPanels(DROPS, 3.5 * INCH)).toBe(0);
  });

  it('stand 10 in clear at most', () => {
    expectNear(stepReach(DROPS, 2 * INCH) as number, 10 * INCH, 1e-9);
  });

  it('come to the same from the other end of the run', () => {
    expect(buriedPanels(UP, 2 * INCH)).toBe(3);
    expectNear(stepReach(UP, 2 * INCH) as number, 10 * INCH, 1e-9);
    expectNear(equalStep(UP) as number, -5.5 * INCH, 1e-9);
  });

  it('keep the gap everywhere on an even fall', () => {
    const even = [0, 4, 4, 4].map((drop) => drop * INCH);
    expectNear(leastClearance(even, 2 * INCH) as number, 2 * INCH, 1e-9);
  });

  it('need two posts', () => {
    expect(refusal(equalStep([0])).where).toBe('equal_step');
  });
});
