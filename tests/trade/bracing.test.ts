import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { postBending, propLength, propLoad, propWind } from '../../src/trade/bracing.ts';
import { expectNear, read, refusal, si } from './si.ts';

describe('propLength', () => {
  // Hand-worked: sqrt(height^2 + reach^2).
  it.each([
    { height: 48, reach: 48, length: 67.9 },
    { height: 60, reach: 36, length: 70 },
  ])('is $length in for $height up and $reach out', ({ height, reach, length }) => {
    expectNear(read(propLength(si(height, 'in'), si(reach, 'in')), 'in'), length, 0.05);
  });

  it('refuses a prop with no reach', () => {
    expect(refusal(propLength(1, 0)).found).toContain('reach');
  });
});

describe('propLoad', () => {
  it('is 106 lbf along a prop at 45 deg that holds 100 lbf at mid-height', () => {
    // Hand-worked: 100 x 36/48 = 75 lbf across, x sqrt(2) along.
    const load = propLoad(si(100, 'lbf'), si(36, 'in'), si(48, 'in'), si(48, 'in'));
    expectNear(read(load, 'lbf'), 106, 0.1);
  });

  it('falls the further the foot stands out', () => {
    const reaches = fc.double({ min: 0.1, max: 3, noNaN: true });
    fc.assert(
      fc.property(reaches, (reach) => {
        expect(read(propLoad(450, 0.9, 1.2, reach * 1.1))).toBeLessThan(
          read(propLoad(450, 0.9, 1.2, reach)),
        );
      }),
    );
  });

  it('refuses a prop at the foot of the fence', () => {
    expect(refusal(propLoad(450, 0.9, 0, 1)).found).toContain('prop height');
  });
});

describe('postBending', () => {
  // Worked at 15 psf on a 6 ft solid fence: 8 ft bays 2,160 lbf ft, 6 ft 1,620, 4 ft 1,080.
  it.each([
    { moment: 2160, size: '4x4', psi: 3627 },
    { moment: 2160, size: '6x6', psi: 935 },
    { moment: 1620, size: '4x4', psi: 2720 },
    { moment: 1620, size: '6x6', psi: 701 },
    { moment: 1080, size: '4x4', psi: 1814 },
    { moment: 1080, size: '6x6', psi: 467 },
  ])('is $psi psi for $moment lbf ft on a $size', ({ moment, size, psi }) => {
    expectNear(read(postBending(si(moment, 'lbf*ft'), size), 'psi'), psi, 0.6);
  });

  it('refuses a pipe in its own name', () => {
    expect(refusal(postBending(1000, '60 mm round')).where).toBe('post_bending');
  });
});

describe('propWind', () => {
  // Hand-worked: 1.3 x 0.00256 V^2 on a solid bay of 6 x 8 ft, 100 lb at 25 mph and 256 lb at 40.
  it.each([
    { gust: 25, force: 99.84 },
    { gust: 40, force: 255.6 },
  ])('puts $force lbf on a 48 ft2 bay at $gust mph', ({ gust, force }) => {
    expectNear(read(propWind(si(gust, 'mph')), 'psf') * 48, force, 0.05);
  });

  it('refuses a wind below 0', () => {
    expect(refusal(propWind(-1)).where).toBe('prop_wind');
  });
});
