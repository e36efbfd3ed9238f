import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combinedGap, leanAngle, leanBearing, postBow, topOffset } from '../../src/trade/plumb.ts';
import { expectExact, expectNear, read, refusal, si } from './si.ts';

const gap = fc.double({ min: -1, max: 1, noNaN: true });
const level = fc.double({ min: 0.1, max: 3, noNaN: true });

describe('leanAngle', () => {
  // Hand-worked: atan(gap / level length).
  it.each([
    { gapInches: 1, levelInches: 48, degrees: 1.1935, tolerance: 0.0001 },
    { gapInches: 0.25, levelInches: 48, degrees: 0.3, tolerance: 0.005 },
    { gapInches: 2, levelInches: 48, degrees: 2.39, tolerance: 0.005 },
    { gapInches: 0.375, levelInches: 48, degrees: 0.45, tolerance: 0.005 },
    { gapInches: 1.875, levelInches: 48, degrees: 2.24, tolerance: 0.005 },
    { gapInches: 2.25, levelInches: 48, degrees: 2.68, tolerance: 0.005 },
    { gapInches: 3.5, levelInches: 48, degrees: 4.17, tolerance: 0.005 },
    { gapInches: 0, levelInches: 48, degrees: 0, tolerance: 0 },
  ])('is $degrees deg for $gapInches in over $levelInches in', (row) => {
    const angle = leanAngle(si(row.gapInches, 'in'), si(row.levelInches, 'in'));
    expectNear(read(angle, 'deg'), row.degrees, row.tolerance);
  });

  it('takes the level length into account: 3/8 in over 2 ft is not 3/8 in over 4 ft', () => {
    // Hand-worked: 0.45 deg over 4 ft, 0.90 deg over 2 ft.
    expectNear(read(leanAngle(si(0.375, 'in'), si(2, 'ft')), 'deg'), 0.9, 0.005);
  });

  it('grows with the gap and shrinks with the level', () => {
    fc.assert(
      fc.property(gap, level, (size, length) => {
        const here = read(leanAngle(Math.abs(size), length));
        expect(read(leanAngle(Math.abs(size) + 0.01, length))).toBeGreaterThan(here);
        expect(read(leanAngle(Math.abs(size), length * 1.1))).toBeLessThanOrEqual(here);
      }),
    );
  });

  it('keeps the sign of the gap', () => {
    fc.assert(
      fc.property(gap, level, (size, length) => {
        expectExact(read(leanAngle(-size, length)), -read(leanAngle(size, length)));
      }),
    );
  });

  it.each([0, -1])('refuses a level %s m long, quoting it in inches', (length) => {
    const { where, found } = refusal(leanAngle(0.01, length));
    expect(where).toBe('lean_angle');
    expect(found).toContain(length === 0 ? '“0 in”' : '“-39.37 in”');
  });
});

describe('topOffset', () => {
  // Hand-worked: gap / level x height.
  it.each([
    { gapInches: 2.25, heightInches: 72, offset: 3.375 },
    { gapInches: 3.5, heightInches: 72, offset: 5.25 },
    { gapInches: 1, heightInches: 0, offset: 0 },
  ])('is $offset in for $gapInches in over 48 in, $heightInches in up', (row) => {
    const offset = topOffset(si(row.gapInches, 'in'), si(48, 'in'), si(row.heightInches, 'in'));
    expectExact(read(offset, 'in'), row.offset);
  });

  it('is 52.5 mm at 1.8 m for a post 1.67 deg out, read in millimetres', () => {
    // Hand-worked: 35 mm over 1,200 mm, 35/1200 x 1800 = 52.5; atan(35/1200) = 1.67 deg.
    expectNear(read(topOffset(0.035, 1.2, 1.8), 'mm'), 52.5, 1e-9);
    expectNear(read(leanAngle(0.035, 1.2), 'deg'), 1.67, 0.005);
  });

  it('is the tangent of the lean times the height', () => {
    fc.assert(
      fc.property(gap, level, level, (size, length, height) => {
        const fromAngle = Math.tan(read(leanAngle(size, length))) * height;
        expectNear(read(topOffset(size, length, height)), fromAngle, 1e-9);
      }),
    );
  });

  it('refuses a height below 0', () => {
    expect(refusal(topOffset(0.01, 1, -1)).found).toContain('height');
  });
});

describe('combinedGap', () => {
  it('is 5/8 in for 3/8 in and 1/2 in', () => {
    expectExact(read(combinedGap(si(0.375, 'in'), si(0.5, 'in')), 'in'), 0.625); // hand-worked, 3-4-5
  });

  it('is no less than either gap and no more than their sum', () => {
    fc.assert(
      fc.property(gap, gap, (across, along) => {
        const both = read(combinedGap(across, along));
        expect(both).toBeGreaterThanOrEqual(Math.max(Math.abs(across), Math.abs(along)));
        expect(both).toBeLessThanOrEqual((Math.abs(across) + Math.abs(along)) * (1 + 1e-12));
      }),
    );
  });
});

describe('leanBearing', () => {
  // Hand-worked on the compass; 53.13 deg is the 3-4-5 triangle.
  it.each([
    { north: 0.375, east: 0.5, degrees: 53.13 },
    { north: 1, east: 0, degrees: 0 },
    { north: 0, east: 1, degrees: 90 },
    { north: -1, east: 0, degrees: 180 },
    { north: 0, east: -1, degrees: 270 },
    { north: 1, east: -1, degrees: 315 },
  ])('is $degrees deg for $north north and $east east', ({ north, east, degrees }) => {
    expectNear(read(leanBearing(si(north, 'in'), si(east, 'in')), 'deg'), degrees, 0.005);
  });

  it('stays from 0 up to a full turn', () => {
    fc.assert(
      fc.property(gap, gap, (north, east) => {
        fc.pre(north !== 0 || east !== 0);
        const bearing = read(leanBearing(north, east));
        expect(bearing).toBeGreaterThanOrEqual(0);
        expect(bearing).toBeLessThan(2 * Math.PI);
      }),
    );
  });

  it('is 0, not a full turn, for a hair west of north', () => {
    expect(read(leanBearing(1, -1e-20))).toBe(0);
  });

  it('refuses a plumb post, which leans no way', () => {
    expect(refusal(leanBearing(0, 0)).found).toContain('leans no way');
  });
});

describe('postBow', () => {
  it('is 1/8 in for gaps of 0, 1/2 and 3/4 in', () => {
    const bow = postBow(0, si(0.5, 'in'), si(0.75, 'in'));
    expectExact(read(bow, 'in'), 0.125); // hand-worked: 0.5 - 0.375
  });

  it('is 0 for a straight post, however far it leans', () => {
    fc.assert(
      fc.property(gap, gap, (top, bottom) => {
        expectNear(read(postBow(top, (top + bottom) / 2, bottom)), 0, 1e-15);
      }),
    );
  });
});
