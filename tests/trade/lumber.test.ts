import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dressed, stockLength } from '../../src/trade/lumber.ts';
import { expectExact, read, refusal, si } from './si.ts';

describe('dressed', () => {
  // PS 20 sizes as engineeringtoolbox.com prints them; NDS 2018 Supplement Table 1A; PS 20-05 at sizes.com.
  it.each([
    { size: '1x4', inches: 0.75, source: 'engineeringtoolbox.com' },
    { size: '1x6', inches: 0.75, source: 'engineeringtoolbox.com' },
    { size: '2x4', inches: 1.5, source: 'NDS 2018 Supplement Table 1A' },
    { size: '2x6', inches: 1.5, source: 'NDS 2018 Supplement Table 1A' },
    { size: '4x4', inches: 3.5, source: 'NDS 2018 Supplement Table 1A' },
    { size: '4x6', inches: 3.5, source: 'NDS 2018 Supplement Table 1A' },
    { size: '6x6', inches: 5.5, source: 'PS 20-05, sizes.com' },
    { size: '6 X 6', inches: 5.5, source: 'PS 20-05, sizes.com' },
    { size: '6x4', inches: 3.5, source: 'the thickness is the smaller side' },
    { size: '7x7', inches: 6.25, source: 'less 3/4 in above 6 in' },
    { size: '8x8', inches: 7.25, source: 'less 3/4 in above 6 in' },
  ])('makes $size $inches in thick ($source)', ({ size, inches }) => {
    expectExact(read(dressed(size), 'in'), inches);
  });

  it.each(['100 mm', '125 x 75 mm', '3 1/2 in', '2 3/8 in round', '4 x 4 in'])(
    'never takes wood off %s, a size as it stands',
    (size) => {
      expect(refusal(dressed(size)).fix).toContain('post_side');
    },
  );

  it.each(['', 'four by four', '18x18', '90x90', '0x4', '4'])('refuses “%s”', (size) => {
    expect(refusal(dressed(size)).where).toBe('dressed');
  });
});

describe('stockLength', () => {
  const stock = [8, 10, 12].map((feet) => si(feet, 'ft'));

  // Hand-worked: 6 ft fence + 2 in gap + 30 in embedment = 104 in; 2,500 mm from metric stock.
  it.each([
    { inches: 104, feet: 10 },
    { inches: 96, feet: 8 },
    { inches: 112.25, feet: 10 },
    { inches: 120.5, feet: 12 },
    { inches: 1, feet: 8 },
  ])('is $feet ft for $inches in', ({ inches, feet }) => {
    expectExact(read(stockLength(si(inches, 'in'), stock), 'ft'), feet);
  });

  it('is 2.7 m for 2,500 mm', () => {
    expect(read(stockLength(2.5, [3, 2.4, 2.7]))).toBe(2.7);
  });

  it('takes a length that falls short by floating-point noise as long enough', () => {
    expect(read(stockLength(0.1 + 0.2, [0.3, 0.6]))).toBe(0.3);
  });

  it('is the shortest that serves', () => {
    const lengths = fc.array(fc.double({ min: 0.1, max: 5, noNaN: true }), { minLength: 1 });
    fc.assert(
      fc.property(lengths, fc.double({ min: 0.01, max: 5, noNaN: true }), (sold, needed) => {
        fc.pre(sold.some((length) => length >= needed));
        const chosen = read(stockLength(needed, sold));
        expect(sold).toContain(chosen);
        expect(sold.filter((length) => length >= needed && length < chosen)).toEqual([]);
      }),
    );
  });

  it('refuses where none serves, naming the longest', () => {
    expect(refusal(stockLength(si(150, 'in'), stock)).found).toContain('longest stock is 12 ft');
  });

  it('refuses an empty list, a length of 0 and nothing needed', () => {
    expect(refusal(stockLength(1, [])).found).toContain('empty');
    expect(refusal(stockLength(1, [0, 2])).found).toContain('stock length');
    expect(refusal(stockLength(0, stock)).found).toContain('needed');
  });
});
