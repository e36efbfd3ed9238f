import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crown, crownVolume, roundHole, squareHole, taperedHole } from '../../src/trade/hole.ts';
import { expectExact, expectNear, read, refusal, si } from './si.ts';

const sizes = fc.double({ min: 0.01, max: 3, noNaN: true });
const inches = (diameter: number, depth: number) => roundHole(si(diameter, 'in'), si(depth, 'in'));

describe('roundHole', () => {
  it('gives the printed 942.48 in^3 for 10 x 12 in', () => {
    expectNear(read(inches(10, 12), 'in^3'), 942.48, 0.005); // OpenStax Contemporary Mathematics 10.7
  });

  it('gives the printed 1017.36 in^3 and 0.59 ft^3 for 6 x 36 in', () => {
    // Web article, gardenguides.com, with pi = 3.14: 0.06%.
    expectNear(read(inches(6, 36), 'in^3'), 1017.36, 0.0006 * 1017.36);
    expectNear(read(inches(6, 36), 'ft^3'), 0.59, 0.005);
  });

  it('gives the printed 91.5624 ft^3 for a radius of 2.7 ft, 4 ft high', () => {
    // OpenStax Prealgebra, with pi = 3.14: 0.06%.
    const volume = read(roundHole(si(5.4, 'ft'), si(4, 'ft')), 'ft^3');
    expectNear(volume, 91.5624, 0.0006 * 91.5624);
  });

  it('gives the printed 502.7 cm^3 can, and 2.3 cans to the pan', () => {
    // OpenStax Contemporary Mathematics 10.7.
    const can = read(roundHole(0.08, 0.1));
    expectNear(read(can, 'cm^3'), 502.7, 0.05);
    expectNear(read(roundHole(0.22, 0.03), 'cm^3'), 1140.4, 0.05);
    expectNear(read(roundHole(0.22, 0.03)) / can, 2.3, 0.05);
  });

  it('is 1.571 ft^3 for 12 in x 2 ft, not the 2.83 of one published page', () => {
    expectNear(read(inches(12, 24), 'ft^3'), 1.571, 0.0005);
  });

  // Hand-worked, ft^3 for a foot of depth.
  it.each([
    { diameter: 6, perFoot: 0.1963 },
    { diameter: 8, perFoot: 0.3491 },
    { diameter: 10, perFoot: 0.5454 },
    { diameter: 12, perFoot: 0.7854 },
    { diameter: 14, perFoot: 1.069 },
    { diameter: 16, perFoot: 1.3963 },
    { diameter: 18, perFoot: 1.7671 },
    { diameter: 24, perFoot: 3.1416 },
  ])('takes $perFoot ft^3 a foot at $diameter in', ({ diameter, perFoot }) => {
    expectNear(read(inches(diameter, 12), 'ft^3'), perFoot, 0.00006);
  });

  it('is 0 at no depth, as for a hole that gets no gravel', () => {
    expect(read(roundHole(0.3, 0))).toBe(0);
  });

  it('grows eightfold when every size doubles', () => {
    fc.assert(
      fc.property(sizes, sizes, (diameter, depth) => {
        const ratio = read(roundHole(2 * diameter, 2 * depth)) / read(roundHole(diameter, depth));
        expectNear(ratio, 8, 1e-12);
      }),
    );
  });

  it('refuses no diameter and a depth below 0', () => {
    expect(refusal(roundHole(0, 1)).found).toContain('diameter');
    expect(refusal(roundHole(0.3, -0.1)).found).toContain('depth');
  });
});

describe('squareHole', () => {
  it('is 0.054 m^3 for 300 x 600 mm', () => {
    expectExact(read(squareHole(0.3, 0.6)), 0.054); // hand-worked
  });

  it('leaves 0.03755 m^3 when a 90 mm post is taken out of a round 300 x 600 mm hole', () => {
    // Worked: 0.04241 - 0.09^2 x 0.6.
    const net = read(roundHole(0.3, 0.6)) - read(squareHole(0.09, 0.6));
    expectNear(net, 0.03755, 0.000005);
  });

  it('holds more than the round hole of its width, by 4/pi', () => {
    fc.assert(
      fc.property(sizes, sizes, (side, depth) => {
        const ratio = read(squareHole(side, depth)) / read(roundHole(side, depth));
        expectNear(ratio, 4 / Math.PI, 1e-12);
      }),
    );
  });

  it('refuses a side of 0', () => {
    expect(refusal(squareHole(0, 1)).where).toBe('square_hole');
  });
});

describe('taperedHole', () => {
  it('is 1.6544 ft^3 from 12 in to 10 in over 30 in', () => {
    const volume = taperedHole(si(113.0973, 'in^2'), si(78.5398, 'in^2'), si(30, 'in'));
    expectNear(read(volume, 'ft^3'), 1.6544, 0.0001); // worked frustum
  });

  it('is a straight hole where both areas agree, and a cone where one is 0', () => {
    expectExact(read(taperedHole(0.09, 0.09, 0.6)), 0.054);
    expectExact(read(taperedHole(0.09, 0, 0.6)), 0.018);
  });

  it('lies between the two straight holes, and turns upside down without change', () => {
    fc.assert(
      fc.property(sizes, sizes, sizes, (top, bottom, depth) => {
        const volume = read(taperedHole(top, bottom, depth));
        expect(volume).toBeGreaterThanOrEqual(Math.min(top, bottom) * depth * (1 - 1e-12));
        expect(volume).toBeLessThanOrEqual(Math.max(top, bottom) * depth * (1 + 1e-12));
        expectNear(read(taperedHole(bottom, top, depth)), volume, 1e-12 * volume);
      }),
    );
  });

  it('refuses an area below 0', () => {
    expect(refusal(taperedHole(-1, 1, 1)).found).toContain('in^2');
  });
});

describe('crown', () => {
  const crownOf = (hole: number, post: number, height: number) =>
    read(crown(si(hole, 'in'), si(post, 'in'), si(height, 'in')), 'ft^3');

  it('is 0.04854 ft^3 on a 12 in hole with a 4x4, 2 in high', () => {
    expectNear(crownOf(12, 3.5, 2), 0.04854, 0.00001); // worked frustum less post
  });

  it('makes 1.7994 ft^3 with a 12 x 30 in hole less its post', () => {
    const post = (3.5 * 3.5 * 30) / 1728;
    const total = read(inches(12, 30), 'ft^3') - post + crownOf(12, 3.5, 2);
    expectNear(total, 1.7994, 0.0001);
  });

  it('is the tapered hole of the same areas, less the post', () => {
    const taper = read(taperedHole(0.0889 ** 2, (Math.PI / 4) * 0.3 ** 2, 0.05));
    expectNear(read(crown(0.3, 0.0889, 0.05)), taper - 0.0889 ** 2 * 0.05, 1e-12);
  });

  it('is 0 with no height', () => {
    expect(crownOf(12, 3.5, 0)).toBe(0);
  });

  it('is never negative for a post that fits', () => {
    fc.assert(
      fc.property(sizes, fc.double({ min: 0.01, max: 0.7, noNaN: true }), (hole, share) => {
        expect(read(crown(hole, share * hole, 0.05))).toBeGreaterThan(0);
      }),
    );
  });

  it('refuses a post bigger than the hole, corner to corner', () => {
    expect(refusal(crown(si(8, 'in'), si(9, 'in'), 0.05)).found).toContain('“9 in”');
    expect(refusal(crown(si(8, 'in'), si(6, 'in'), 0.05)).found).toContain('8.4853 in across');
  });
});

describe('crownVolume', () => {
  const [hole, post] = [(Math.PI / 4) * si(12, 'in') ** 2, si(12.25, 'in^2')];

  it('is 0.04854 ft^3 on a 12 in round hole with a 4x4, as `crown` is', () => {
    const volume = read(crownVolume(hole, post, si(2, 'in'), 0));
    expectNear(read(volume, 'ft^3'), 0.04854, 0.00001); // worked frustum less post
    expectNear(volume, read(crown(si(12, 'in'), si(3.5, 'in'), si(2, 'in'))), 1e-12);
  });

  it('is the tapered hole from post to hole, less the post, for any shapes', () => {
    const areas = fc.double({ min: 0.001, max: 1, noNaN: true });
    fc.assert(
      fc.property(areas, areas, (a, b) => {
        const [small, large] = [Math.min(a, b), Math.max(a, b)];
        const taper = read(taperedHole(small, large, 0.05)) - small * 0.05;
        expectNear(read(crownVolume(large, small, 0.05, 0)), taper, 1e-12);
      }),
    );
  });

  it('stands on a collar above grade as well as at grade', () => {
    expect(read(crownVolume(hole, post, 0.05, 0.1))).toBe(read(crownVolume(hole, post, 0.05, 0)));
  });

  it('refuses a crown on concrete that stops below grade, but not a crown of 0 there', () => {
    expect(refusal(crownVolume(hole, post, 0.05, -si(6, 'in'))).found).toContain('“6 in” below');
    expect(read(crownVolume(hole, post, 0, -0.15))).toBe(0);
  });

  it('refuses a post larger than the hole', () => {
    expect(refusal(crownVolume(post, hole, 0.05, 0)).fix).toContain('wider hole');
  });
});
