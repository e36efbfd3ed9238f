import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  marginOfMarkup,
  markupOfMargin,
  priceAtMargin,
  priceAtMarkup,
} from '../../src/trade/price.ts';
import { expectExact, expectNear, read, refusal } from './si.ts';

const costs = fc.double({ min: 0.01, max: 1e6, noNaN: true });
const margins = fc.double({ min: -0.9, max: 0.99, noNaN: true });

describe('priceAtMarkup', () => {
  // OpenStax Contemporary Mathematics 6.2 and Prealgebra.
  it.each([
    { cost: 62, rate: 0.15, printed: 71.3 },
    { cost: 1.3, rate: 0.6, printed: 2.08 },
    { cost: 250, rate: 0.4, printed: 350 },
    { cost: 115, rate: 2.25, printed: 373.75 },
    { cost: 90, rate: 0.15, printed: 103.5 },
    { cost: 480, rate: 0.75, printed: 840 },
    { cost: 8.85, rate: 0.2, printed: 10.62 },
  ])('sells $cost at $rate for the printed $printed', ({ cost, rate, printed }) => {
    expectNear(read(priceAtMarkup(cost, rate)), printed, 0.005);
  });

  it('refuses a cost below 0 and a markup of -100%', () => {
    expect(refusal(priceAtMarkup(-1, 0.2)).found).toContain('cost');
    expect(refusal(priceAtMarkup(100, -1)).found).toContain('markup');
  });
});

describe('priceAtMargin', () => {
  it('sells 80 at a margin of 20% for 100', () => {
    expectExact(read(priceAtMargin(80, 0.2)), 100); // web article on margin
  });

  it('is 83.33 more than the same markup on 1,000', () => {
    // Worked: 1000/0.75 = 1333.33 against 1250.
    expectNear(read(priceAtMargin(1000, 0.25)), 1333.33, 0.005);
    expectNear(read(priceAtMargin(1000, 0.25)) - read(priceAtMarkup(1000, 0.25)), 83.33, 0.005);
  });

  it('is the markup of that margin', () => {
    fc.assert(
      fc.property(costs, margins, (cost, margin) => {
        const byMarkup = read(priceAtMarkup(cost, read(markupOfMargin(margin))));
        expectNear(byMarkup, read(priceAtMargin(cost, margin)), 1e-9 * byMarkup);
      }),
    );
  });

  it.each([1, 1.2, 25])('refuses a margin of %s', (margin) => {
    expect(refusal(priceAtMargin(100, margin)).fix).toContain('0.25 for 25%');
  });
});

describe('markupOfMargin and marginOfMarkup', () => {
  it('are 0.25 and 0.2 for each other', () => {
    expectExact(read(markupOfMargin(0.2)), 0.25); // web article on margin
    expectExact(read(marginOfMarkup(0.25)), 0.2);
  });

  it('make 33.33% of a 25% margin', () => {
    expectNear(read(markupOfMargin(0.25)), 0.3333, 0.00005);
  });

  it('turn each other round', () => {
    fc.assert(
      fc.property(margins, (margin) => {
        expectNear(read(marginOfMarkup(read(markupOfMargin(margin)))), margin, 1e-9);
      }),
    );
  });

  it('refuse a margin of 1 and a markup of -1', () => {
    refusal(markupOfMargin(1));
    refusal(marginOfMarkup(-1));
  });
});
