import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gateSag, pivotHeight, strengthLeft } from '../../src/trade/condition.ts';
import { expectExact, expectNear, read, refusal, si } from './si.ts';

describe('pivotHeight', () => {
  // Hand-worked: z0 = h1 - d1 (h2 - h1)/(d2 - d1), readings at 6 and 60 in.
  it.each([
    { low: 0.4, high: 1.9, pivot: -8.4, means: 'a footing turning in the soil' },
    { low: 0.1, high: 1.9, pivot: 3, means: 'a hinge at grade' },
  ])('is $pivot in for $means', ({ low, high, pivot }) => {
    const moves = [si(low, 'in'), si(high, 'in')] as const;
    const height = pivotHeight(moves[0], si(6, 'in'), moves[1], si(60, 'in'));
    expectNear(read(height, 'in'), pivot, 0.0001);
  });

  it('finds the point about which a rigid post was turned', () => {
    const pivots = fc.double({ min: -2, max: 0.1, noNaN: true });
    const slopes = fc.double({ min: 0.001, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(pivots, slopes, (pivot, slope) => {
        const move = (height: number) => slope * (height - pivot);
        expectNear(read(pivotHeight(move(0.15), 0.15, move(1.5), 1.5)), pivot, 1e-9);
      }),
    );
  });

  it('refuses two equal moves: the footing slid', () => {
    expect(refusal(pivotHeight(0.01, 0.15, 0.01, 1.5)).fix).toContain('slid');
  });

  it('refuses heights in the wrong order', () => {
    expect(refusal(pivotHeight(0.01, 1.5, 0.02, 0.15)).fix).toContain('lower reading first');
  });
});

describe('strengthLeft', () => {
  // Hand-worked: ((side - 2 rot)/side)^3.
  it.each([
    { side: '4x4', inches: 3.5, rot: 0.25, share: 0.6297, tolerance: 0.0001 },
    { side: '4x4', inches: 3.5, rot: 0.125, share: 0.8, tolerance: 0.005 },
    { side: '4x4', inches: 3.5, rot: 0.5, share: 0.36, tolerance: 0.005 },
    { side: '4x4', inches: 3.5, rot: 0.75, share: 0.19, tolerance: 0.005 },
    { side: '6x6', inches: 5.5, rot: 0.5, share: 0.55, tolerance: 0.005 },
    { side: '6x6', inches: 5.5, rot: 1, share: 0.26, tolerance: 0.005 },
    { side: '100 mm', inches: 100 / 25.4, rot: 6 / 25.4, share: 0.68, tolerance: 0.005 },
    { side: '100 mm', inches: 100 / 25.4, rot: 13 / 25.4, share: 0.41, tolerance: 0.005 },
  ])('is $share of a $side with $rot in of rot', ({ inches, rot, share, tolerance }) => {
    expectNear(read(strengthLeft(si(inches, 'in'), si(rot, 'in'))), share, tolerance);
  });

  it('is whole with no rot, and gone from half the side on', () => {
    expect(read(strengthLeft(0.1, 0))).toBe(1);
    expect(read(strengthLeft(0.1, 0.05))).toBe(0);
    expect(read(strengthLeft(0.1, 0.3))).toBe(0);
  });

  it('never grows with the rot', () => {
    const rots = fc.double({ min: 0, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(rots, rots, (a, b) => {
        const [less, more] = a < b ? [a, b] : [b, a];
        expect(read(strengthLeft(0.0889, more))).toBeLessThanOrEqual(
          read(strengthLeft(0.0889, less)),
        );
      }),
    );
  });

  it('refuses a rot depth below 0 and a post with no side', () => {
    expect(refusal(strengthLeft(0.1, -0.01)).found).toContain('rot depth');
    expect(refusal(strengthLeft(0, 0.01)).found).toContain('side');
  });
});

describe('gateSag', () => {
  it('is 1 in on the worked leaf', () => {
    // Hand-worked: (74.06^2 - 72.42^2) / 240.
    const sag = gateSag(si(74.06, 'in'), si(72.42, 'in'), si(60, 'in'));
    expectNear(read(sag, 'in'), 1.0009, 0.0001);
  });

  it('finds the drop of a leaf that was sheared by it', () => {
    const drops = fc.double({ min: 0, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(drops, (drop) => {
        const [width, height] = [1.1, 1.5];
        const long = Math.hypot(width, height + drop);
        const short = Math.hypot(width, height - drop);
        expectNear(read(gateSag(long, short, height)), drop, 1e-9);
      }),
    );
  });

  it('is 0 for a square leaf', () => {
    expectExact(read(gateSag(1.8, 1.8, 1.5)), 0);
  });

  it('refuses the diagonals in the wrong order', () => {
    expect(refusal(gateSag(1.8, 1.9, 1.5)).fix).toContain('longer diagonal first');
  });
});
