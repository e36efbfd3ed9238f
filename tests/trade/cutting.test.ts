import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cutCount,
  cutCountOf,
  firstFitTotal,
  planCuts,
  type CuttingPlan,
  type Pieces,
  type Stock,
} from '../../src/trade/index.ts';
import { refusal, si } from './si.ts';

const INCH = si(1, 'in');
const FOOT = si(1, 'ft');

function pieces(...of: readonly (readonly [count: number, inches: number])[]): readonly Pieces[] {
  return of.map(([count, inches]) => ({ count, length: inches * INCH }));
}

function stocks(feet: readonly number[], prices: readonly number[] = []): readonly Stock[] {
  return feet.map((length, at) => ({ length: length * FOOT, price: prices[at] }));
}

function feetOf({ bars }: CuttingPlan): readonly number[] {
  return bars.map(({ stock }) => Math.round((stock / FOOT) * 1000) / 1000);
}

describe('planCuts', () => {
  it('proves the least of the example in print, and comes within one roll of it', () => {
    // A paper machine's 5,600 mm rolls and 13 widths: the optimal answer is 73 rolls
    // (Wikipedia, “Cutting stock problem”). Widths in mm and how many of each.
    const order = [
      [1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1880, 18], [1930, 20],
      [2000, 10], [2050, 12], [2100, 14], [2140, 16], [2150, 18], [2200, 20],
    ] as const; // prettier-ignore
    const plan = planCuts(
      order.map(([mm, count]) => ({ length: mm / 1000, count })),
      [{ length: 5.6, price: undefined }],
      0,
    )!;
    expect(plan.bound).toBeCloseTo(73 * 5.6, 6);
    expect(plan.bars.length).toBeGreaterThanOrEqual(73);
    expect(plan.bars.length).toBeLessThanOrEqual(74);
    expectWhole(
      plan,
      order.map(([mm, count]) => ({ length: mm / 1000, count })),
      0,
    );
  });

  it.each([
    // P. C. Gilmore, R. E. Gomory, Operations Research 9 (1961), as CUTSTOCK (294) of the GAMS model
    // library has it: raw rolls of 100 in, the least is 453.
    [
      'Gilmore and Gomory’s rolls',
      100,
      [
        [97, 45],
        [610, 36],
        [395, 31],
        [211, 14],
      ],
      453,
    ],
    // R. Fourer, D. M. Gay, B. W. Kernighan, AMPL, chapter 15 (from memory): rolls of 110 in, 47.
    [
      'the AMPL book’s rolls',
      110,
      [
        [48, 20],
        [35, 45],
        [24, 50],
        [10, 55],
        [8, 75],
      ],
      47,
    ],
    // W. L. Winston, Operations Research (from memory): 17 ft boards. No fewer than 310 / 17 = 18.2 hold
    // them, so 19; hand-worked: 15 of 9 + 5 + 3, two of 5 + 3 + 3 + 3 + 3, one of 5 + 5 + 5, one of 3 + 3.
    [
      'Winston’s boards',
      17,
      [
        [25, 3],
        [20, 5],
        [15, 9],
      ],
      19,
    ],
  ] as const)('comes to the published least for %s', (_, bar, order, least) => {
    const wanted = pieces(...order);
    const plan = planCuts(wanted, [{ length: bar * INCH, price: undefined }], 0)!;
    expect(plan.bars).toHaveLength(least);
    expect(plan.bound / (bar * INCH)).toBeCloseTo(least, 6);
    expect(plan.isLeast).toBe(true);
    expectWhole(plan, wanted, 0);
  });

  it('cuts each of many different lengths from the first bar with room for it', () => {
    const lengths = fc.uniqueArray(fc.integer({ min: 1, max: 2500 }), { maxLength: 300 });
    fc.assert(
      fc.property(lengths, (millimetres) => {
        const left: number[] = [];
        for (const length of [...millimetres].sort((a, b) => b - a)) {
          const place = left.findIndex((room) => room >= length);
          if (place === -1) left.push(2500 - length);
          else left[place] = (left[place] ?? 0) - length;
        }
        const wanted = millimetres.map((length) => ({ length: length / 1000, count: 1 }));
        const total = firstFitTotal(wanted, [{ length: 2.5, price: undefined }], 0);
        expect(total).toBeCloseTo(2.5 * left.length, 6);
      }),
    );
  });

  it('beats first-fit-decreasing where that is known to waste a bar', () => {
    // Hand-worked, bars of 10: 4 4 3 3 3 3 is two full bars of 4 + 3 + 3; first fit pairs the fours and needs three.
    const wanted = pieces([2, 48], [4, 36]);
    const plan = planCuts(wanted, stocks([10]), 0)!;
    expect(firstFitTotal(wanted, stocks([10]), 0) / FOOT).toBeCloseTo(30, 9);
    expect(feetOf(plan)).toEqual([10, 10]);
    expect(plan.isLeast).toBe(true);
  });

  it('counts the saw: two 96 in rails do not come out of 16 ft', () => {
    expect(feetOf(planCuts(pieces([2, 96]), stocks([16]), 0)!)).toEqual([16]);
    expect(feetOf(planCuts(pieces([2, 96]), stocks([16]), INCH / 8)!)).toEqual([16, 16]);
  });

  it('takes a piece that is exactly as long as the stock', () => {
    expect(feetOf(planCuts(pieces([9, 96]), stocks([8, 10, 12, 16]), INCH / 8)!)).toEqual(
      Array(9).fill(8),
    );
  });

  it('mixes stock lengths: three 6 ft from one 12 ft and one 8 ft', () => {
    expect(feetOf(planCuts(pieces([3, 72]), stocks([8, 12]), 0)!)).toEqual([12, 8]);
  });

  it('uses offcuts of one bay in another', () => {
    // Hand-worked: 10 ft gives 72 + 48; alone, each 48 would take a bar of its own.
    const plan = planCuts(pieces([2, 72], [2, 48]), stocks([10]), 0)!;
    expect(plan.bars.map((bar) => bar.pieces.map((piece) => Math.round(piece / INCH)))).toEqual([
      [72, 48],
      [72, 48],
    ]);
  });

  it('goes by cost where every length has a price, and by length where one has none', () => {
    // 2 x 72 in: 12 ft at 20 against two of 8 ft at 9 each, 18.
    const wanted = pieces([2, 72]);
    const paid = planCuts(wanted, stocks([8, 12], [9, 20]), 0)!;
    expect([feetOf(paid), paid.total, paid.byPrice]).toEqual([[8, 8], 18, true]);
    const unpaid = planCuts(wanted, stocks([8, 12], [9]), 0)!;
    expect([feetOf(unpaid), unpaid.byPrice]).toEqual([[12], false]);
  });

  it('says what is left of a bar after the last cut', () => {
    const [bar] = planCuts(pieces([1, 72]), stocks([8]), INCH / 8)!.bars;
    expect(bar!.offcut / INCH).toBeCloseTo(23.875, 3);
  });

  it('has no plan where a piece is longer than any stock', () => {
    expect(planCuts(pieces([1, 200]), stocks([8, 16]), 0)).toBeUndefined();
  });

  it('agrees with trying every way, on small jobs', () => {
    const small = fc.array(fc.integer({ min: 15, max: 120 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(
        small,
        fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 3, maxLength: 3 }),
        (inches, prices) => {
          const plan = planCuts(
            pieces(...inches.map((each) => [1, each] as const)),
            stocks([10, 12, 16], prices),
            INCH / 8,
          )!;
          expect(plan.total).toBeCloseTo(cheapestOfAll(inches, [10, 12, 16], prices), 6);
          expect(plan.isLeast).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is never worse than first fit, never under its bound, and cuts just what is wanted', () => {
    const wanted = fc.array(
      fc.record({
        count: fc.integer({ min: 1, max: 12 }),
        length: fc.integer({ min: 10, max: 96 }),
      }),
      { minLength: 1, maxLength: 9 },
    );
    fc.assert(
      fc.property(wanted, fc.subarray([8, 10, 12, 16], { minLength: 1 }), (order, feet) => {
        const job = order.map(({ count, length }) => ({ count, length: length * INCH }));
        const plan = planCuts(job, stocks(feet), INCH / 8)!;
        expect(plan.total).toBeLessThanOrEqual(firstFitTotal(job, stocks(feet), INCH / 8) + 1e-9);
        expect(plan.bound).toBeLessThanOrEqual(plan.total + 1e-9);
        expectWhole(plan, job, INCH / 8);
      }),
      { numRuns: 80 },
    );
  });
});

/** Every piece is cut once, and no bar holds more than it has. */
function expectWhole(plan: CuttingPlan, job: readonly Pieces[], kerf: number): void {
  const micro = (length: number): number => Math.round(length * 1e6);
  const cut = plan.bars.flatMap((bar) => bar.pieces.map(micro)).sort((a, b) => a - b);
  const asked = job
    .flatMap(({ length, count }) => Array<number>(count).fill(micro(length)))
    .sort((a, b) => a - b);
  expect(cut).toEqual(asked);
  for (const { stock, pieces: of } of plan.bars) {
    const used = of.reduce((sum, each) => sum + each, 0) + (of.length - 1) * kerf;
    expect(used).toBeLessThanOrEqual(stock + 1e-4);
  }
}

/** The least cost over every way of putting pieces into groups, each group cut from its cheapest stock. */
function cheapestOfAll(
  inches: readonly number[],
  feet: readonly number[],
  prices: readonly number[],
): number {
  const priceOf = (group: readonly number[]): number => {
    const used = group.reduce((sum, each) => sum + each, 0) + (group.length - 1) / 8;
    return Math.min(...feet.map((each, at) => (each * 12 >= used - 1e-9 ? prices[at]! : Infinity)));
  };
  let least = Infinity;
  const place = (at: number, groups: readonly (readonly number[])[]): void => {
    if (at === inches.length) {
      least = Math.min(
        least,
        groups.reduce((sum, group) => sum + priceOf(group), 0),
      );
      return;
    }
    const piece = inches[at]!;
    place(at + 1, [...groups, [piece]]);
    groups.forEach((group, into) => {
      place(
        at + 1,
        groups.map((each, which) => (which === into ? [...group, piece] : each)),
      );
    });
  };
  place(0, []);
  return least;
}

describe('cutCount', () => {
  it('counts each stock of the plan', () => {
    // Hand-worked: three 6 ft from 8 and 12 ft are one of each.
    const of = (feet: number) =>
      cutCount([6 * FOOT], [3], [8 * FOOT, 12 * FOOT], [], [], 0, feet * FOOT);
    expect([of(8), of(12), of(10)]).toEqual([1, 1, 0]);
  });

  it('refuses a piece that no stock holds, in its own name', () => {
    const refused = refusal(cutCount([20 * FOOT], [1], [16 * FOOT], [], [], 0, 16 * FOOT));
    expect(refused.where).toBe('cut_count');
    expect(refused.found).toContain('240 in');
  });

  it('takes no notice of pieces that are not wanted', () => {
    expect(cutCount([20 * FOOT, FOOT], [0, 1], [8 * FOOT], [], [], 0, 8 * FOOT)).toBe(1);
  });
});

describe('cutCountOf', () => {
  it('plans each section by itself, with its own prices', () => {
    const small = 12.25 * INCH ** 2;
    const large = 30.25 * INCH ** 2;
    const of = (area: number, feet: number) =>
      cutCountOf(
        [104 * INCH, 104 * INCH, 104 * INCH],
        [1, 2, 1],
        [small, small, large],
        area,
        [8, 10, 12].map((each) => each * FOOT),
        [10 * FOOT],
        [small],
        [20],
        INCH / 8,
        feet * FOOT,
      );
    expect([of(small, 10), of(large, 10), of(small, 8), of(small, 12)]).toEqual([3, 1, 0, 0]);
  });
});
