import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { endWind } from '../../src/trade/end-wind.ts';
import { fenceWind, velocityPressure } from '../../src/trade/wind.ts';
import { expectNear, read, refusal, si } from './si.ts';

/** Case C coefficient, the factor for s/h included, over a strip counted in fence heights. */
function coefficient(lengthRatio: number, start: number, end: number): number {
  const height = si(6, 'ft');
  const at = [lengthRatio * height, start * height, end * height] as const;
  const pressure = read(endWind(50, 'B', height, 1, ...at));
  return pressure / (0.6 * 0.85 * read(velocityPressure(50, 'B', height)));
}

// ASCE 7-16 Fig. 29.3-1, Case C, one list a region, from the windward end.
const LENGTH_RATIOS = [2, 3, 4, 5, 6, 7, 8, 9, 10, 13, 45];
const REGIONS = [
  { from: 0, to: 1, row: '2.25 2.60 2.90 3.10 3.30 3.40 3.55 3.65 3.75 4.00 4.30' },
  { from: 1, to: 2, row: '1.50 1.70 1.90 2.00 2.15 2.25 2.30 2.35 2.45 2.60 2.55' },
  { from: 2, to: 3, row: '- 1.15 1.30 1.45 1.55 1.65 1.70 1.75 1.85 2.00 1.95' },
  { from: 3, to: 4, row: '- - 1.10 1.05 1.05 1.05 1.05 1.00 0.95 1.50 1.85' },
  { from: 4, to: 5, row: '- - - 1.05 1.05 1.05 1.05 1.00 0.95 1.35 1.85' },
  { from: 5, to: 10, row: '- - - - 1.05 1.05 1.05 1.00 0.95 0.90 1.10' },
  { from: 10, to: 12, row: '- - - - - - - - - 0.55 0.55' },
];
const CELLS = REGIONS.flatMap(({ from, to, row }) =>
  row.split(' ').flatMap((printed, column) => {
    const lengthRatio = LENGTH_RATIOS[column]!;
    return printed === '-' ? [] : [{ from, to: Math.min(to, lengthRatio), lengthRatio, printed }];
  }),
);

describe('endWind', () => {
  it('is checked in 58 cells', () => {
    expect(CELLS).toHaveLength(58);
  });

  it.each(CELLS)('has 0.8 x $printed from $from s to $to s at B/s $lengthRatio', (cell) => {
    // The factor 1.8 - s/h at s/h = 1 is 0.8, from memory.
    const found = coefficient(cell.lengthRatio, cell.from, cell.to);
    expectNear(found, 0.8 * Number(cell.printed), 1e-9);
  });

  it('has the 2.040 that a public worksheet prints from s to 2s, and its 37 psf', () => {
    // ASCE 7-05, 6.6 x 689 ft, B/s 104: 2.55 x 0.8, at a q of 21.27 psf and G 0.85. In its first
    // region it takes 2.58, which is 4.30 less 40% for a return corner: nothing is taken off here.
    expectNear(coefficient(689 / 6.6, 1, 2), 2.04, 0.0005);
    expectNear(21.27 * 0.85 * coefficient(689 / 6.6, 1, 2), 37, 0.5);
    expectNear(coefficient(689 / 6.6, 0, 1) * 0.6, 2.064, 0.0005);
  });

  // A 6 ft fence, 8 ft bays, 96 ft long, against a middle post: fence_wind over 8 ft. Hand-worked
  // at B/s 13: end post 0.8 x 4.00 x 4 / (1.30 x 8) = 1.23; second 0.8 x (2 x 4.00 + 6 x 2.60) / (1.30 x 8) = 1.82.
  it.each([
    { post: 'end post', from: 0, to: 4, times: 1.2 },
    { post: 'second post', from: 4, to: 12, times: 1.8 },
  ])('puts about $times times a middle post’s wind on the $post of a long run', (strip) => {
    const [speed, height, length] = [si(115, 'mph'), si(6, 'ft'), si(96, 'ft')];
    const [from, to] = [si(strip.from, 'ft'), si(strip.to, 'ft')];
    const post = read(endWind(speed, 'B', height, 1, length, from, to)) * (to - from);
    const middle = read(fenceWind(speed, 'B', height, 1, length)) * si(8, 'ft');
    expectNear(post / middle, strip.times, 0.05);
  });

  it('averages exactly over the regions a strip crosses', () => {
    // Hand-worked at B/s 13: (4.00 + 2.60 + 2.00)/3 and (0.5 x 4.00 + 0.25 x 2.60)/0.75, x 0.8.
    expectNear(coefficient(13, 0, 3), (0.8 * 8.6) / 3, 1e-9);
    expectNear(coefficient(13, 0.5, 1.25), (0.8 * 2.65) / 0.75, 1e-9);
  });

  it('is linear in B/s between the columns', () => {
    expectNear(coefficient(2.5, 0, 1), 0.8 * 2.425, 1e-9); // hand-worked midway of 2.25 and 2.60
    expectNear(coefficient(29, 0, 1), 0.8 * 4.15, 1e-9); // midway of 4.00 and 4.30
  });

  it('adds up: two strips carry what the strip of both carries', () => {
    const cuts = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    const ratios = fc.double({ min: 2, max: 60, noNaN: true });
    fc.assert(
      fc.property(ratios, cuts, cuts, (ratio, a, b) => {
        fc.pre(Math.abs(a - b) > 0.001);
        const [first, second] = [Math.min(a, b) * ratio, Math.max(a, b) * ratio];
        const whole = coefficient(ratio, 0, second) * second;
        const parts =
          coefficient(ratio, 0, first) * first +
          coefficient(ratio, first, second) * (second - first);
        expectNear(parts, whole, 1e-9 * whole);
      }),
    );
  });

  it('refuses a run less than twice as long as high, and sends to fence_wind', () => {
    expect(refusal(endWind(50, 'B', 2, 1, 3.9, 0, 1)).fix).toContain('fence_wind');
    expect(read(endWind(50, 'B', 2, 1, 4 * (1 - 1e-12), 0, 1))).toBeGreaterThan(0);
  });

  it.each([
    { start: 2, end: 1 },
    { start: 1, end: 1 },
    { start: -1, end: 1 },
    { start: 28, end: 31 },
  ])('refuses a strip from $start to $end m on a run of 30 m', ({ start, end }) => {
    expect(refusal(endWind(50, 'B', 1.8, 1, 30, start, end)).where).toBe('end_wind');
  });
});
