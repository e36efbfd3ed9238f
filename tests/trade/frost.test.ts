import { describe, expect, it } from 'vitest';
import { frostGrip } from '../../src/trade/frost.ts';
import { expectNear, read, refusal, si } from './si.ts';

describe('frostGrip', () => {
  it('is 12,757 lbf on a 12 in footing with 36 in of frost', () => {
    // Worked: 9.4 psi (Penner 1974, fine soil on concrete, printed 65 kPa) x pi x 12 x 36.
    expectNear(read(frostGrip(si(12, 'in'), si(36, 'in'), si(9.4, 'psi')), 'lbf'), 12757, 1);
  });

  // Canadian Foundation Engineering Manual, 4th ed., as quoted in a forum thread: each bond in both units.
  it.each([
    { kilopascals: 65, printed: 9.4 },
    { kilopascals: 100, printed: 14.5 },
    { kilopascals: 150, printed: 21.8 },
  ])(
    'is the same for $kilopascals kPa and the printed $printed psi',
    ({ kilopascals, printed }) => {
      const grip = (bond: number) => read(frostGrip(0.3, 0.9, bond), 'lbf');
      expectNear(grip(si(kilopascals, 'kPa')) / grip(si(printed, 'psi')), 1, 0.05 / printed);
    },
  );

  it('is far beyond the 353 lb that such a footing weighs', () => {
    const force = read(frostGrip(si(12, 'in'), si(36, 'in'), si(65, 'kPa')), 'lbf');
    expectNear(force, 12800, 50);
    expect(force / 353).toBeGreaterThan(30);
  });

  it('is 0 without frost', () => {
    expect(read(frostGrip(0.3, 0, 65000))).toBe(0);
  });

  it('refuses a footing of no width', () => {
    expect(refusal(frostGrip(0, 1, 65000)).found).toContain('width');
  });
});
