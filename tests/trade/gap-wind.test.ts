import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endGapFactor, gapFactor } from '../../src/trade/gap-wind.ts';
import { wallForceCoefficient } from '../../src/trade/wind.ts';
import { expectNear, read, refusal, si } from './si.ts';

const feet = (length: number, height: number, gap: number): number =>
  read(gapFactor(si(length, 'ft'), si(height, 'ft'), si(gap, 'ft')));

describe('gapFactor', () => {
  // ASCE 7-16 Fig. 29.3-1, Cases A and B: a column at two values of s/h, hand-divided.
  it.each([
    { length: 90, height: 9, gap: 1, printed: 1.4 / 1.3 },
    { length: 9, height: 9, gap: 1, printed: 1.55 / 1.45 },
    { length: 70, height: 7, gap: 3, printed: 1.55 / 1.3 },
    { length: 20, height: 5, gap: 5, printed: 1.7 / 1.35 },
  ])('is $printed over $length x $height ft, $gap ft off the ground', (row) => {
    expectNear(feet(row.length, row.height, row.gap), row.printed, 1e-9);
  });

  // Hand-worked on a long 6 ft fence: s/h 72/74 between 1.30 and 1.40 is 1.327; s/h 72/84, between 1.40 and 1.55, is 1.432.
  it.each([
    { gap: 2, coefficient: 1.327 },
    { gap: 12, coefficient: 1.432 },
  ])('makes the coefficient $coefficient at $gap in', ({ gap, coefficient }) => {
    expectNear(1.3 * feet(96, 6, gap / 12), coefficient, 0.0005);
  });

  it('is the coefficient of the wall over that of one on the ground', () => {
    const sizes = fc.double({ min: 0.3, max: 30, noNaN: true });
    fc.assert(
      fc.property(sizes, sizes, sizes, (length, height, gap) => {
        const [raised, grounded] = [height + gap, height].map((top) =>
          read(wallForceCoefficient(length, height, top)),
        );
        expectNear(read(gapFactor(length, height, gap)), raised! / grounded!, 1e-9);
      }),
    );
  });
});

describe('endGapFactor', () => {
  // Hand-worked from 1.8 - s/h over 0.8, the factor from memory: s/h 0.9, 0.973, 0.857, 0.5.
  it.each([
    { height: 9, gap: 1, factor: 1.125 },
    { height: 6, gap: 2 / 12, factor: 1.0338 },
    { height: 6, gap: 1, factor: 1.1786 },
    { height: 6, gap: 6, factor: 1.25 },
  ])('is $factor for $height ft, $gap ft off the ground', ({ height, gap, factor }) => {
    expectNear(read(endGapFactor(height, gap)), factor, 0.0001);
  });
});

describe('a gap', () => {
  it('of nothing changes nothing, and more of it never takes wind away', () => {
    const sizes = fc.double({ min: 0.3, max: 30, noNaN: true });
    fc.assert(
      fc.property(sizes, sizes, sizes, (length, height, gap) => {
        expectNear(read(gapFactor(length, height, 0)), 1, 1e-12);
        expectNear(read(endGapFactor(height, 0)), 1, 1e-12);
        const more = read(endGapFactor(height, gap * 1.5));
        expect(more).toBeGreaterThanOrEqual(read(endGapFactor(height, gap)));
        expect(read(gapFactor(length, height, gap))).toBeGreaterThanOrEqual(1);
      }),
    );
  });

  it('under 0, and a fence of no height, are refused', () => {
    expect(refusal(gapFactor(20, 2, -0.1)).found).toContain('gap');
    expect(refusal(endGapFactor(0, 0.1)).where).toBe('end_gap_factor');
  });
});
