import { describe, expect, it } from 'vitest';
import { LENGTH, PLAIN, VOLUME, quantity } from '../../src/units/index.ts';
import { Desk, reckon } from './reckon.ts';

const INCH = 0.0254;
const FOOT3 = 0.3048 ** 3;

describe('on the line is within it', () => {
  // Decimal fractions that binary doubles miss by a hair.
  it.each([
    ['0.1 + 0.2 == 0.3', true],
    ['0.1 + 0.2 <= 0.3', true],
    ['0.1 + 0.2 > 0.3', false],
    ['0.1 + 0.2 != 0.3', false],
    ['0.3 < 0.1 + 0.2', false],
    ['1/4 in / 48 in > 1/16 in / 1 ft', false],
    ['1/4 in / 48 in >= 1/16 in / 1 ft', true],
    ['1 in + 3.5 in - 4.5 in == 0 in', true],
    ['1 in + 3.5 in - 4.5 in > 0 in', false],
    ['1 in + 3.5 in - 4.5 in >= 0 in', true],
    ['0 in < 1 in + 3.5 in - 4.5 in', false],
    ['(0.1 + 0.2 - 0.3) * 10 > 0', false],
    ['0.1 + 0.2 - 0.3 < 0', false],
    ['0.3 - (0.1 + 0.2) == 0', true],
    ['-(0.1 + 0.2) + 0.3 == 0', true],
    ['sum(0.1, 0.2, -0.3) == 0', true],
    ['5 ft + 6 in == 66 in', true],
    ['3 * 0.1 == 0.3', true],
    ['1 + 1e-10 == 1', true],
    ['1e6 + 1e-4 > 1e6', false],
    ['1 + 1e-8 == 1', false],
    ['1 + 1e-8 > 1', true],
    ['1e-12 > 0', true],
    ['1e-12 == 0', false],
    ['0 == 0', true],
  ])('%s is %s', (formula, value) => {
    expect(reckon(formula)).toBe(value);
  });

  it.each([
    ['ceil(4.2 ft^3 / 0.6 ft^3)', 7],
    ['whole_bags(4.2 ft^3, 0.6 ft^3)', 7],
    ['whole_bags(4.2 ft^3 + 0.00001 ft^3, 0.6 ft^3)', 8],
    ['ceil(0.1 * 3 / 0.1)', 3],
    ['ceil(0.1 + 0.2 - 0.3)', 0],
    ['ceil(1 + 0.1 + 0.2 - 0.3)', 1],
    ['floor(0.3 - 0.1 - 0.2)', 0],
    ['floor(0.7 / 0.1)', 7],
    ['floor(2.3 * 100)', 230],
    ['ceil(1.1 * 100)', 110],
    ['ceil(7.0001)', 8],
    ['floor(6.9999)', 6],
    ['ceil(-0.5)', 0],
    ['floor(-0.5)', -1],
  ])('%s is %s', (formula, value) => {
    expect(reckon(formula)).toBe(value);
  });

  it.each([
    ['up_to_step(0.3 m, 0.1 m) to m', 0.3],
    ['up_to_step(0.1 m + 0.2 m, 0.1 m) to m', 0.3],
    ['up_to_step(5 ft, 6 in)', 60 * INCH],
    ['up_to_step(60.01 in, 6 in)', 66 * INCH],
    ['up_to_step(0 in, 6 in)', 0],
  ])('%s is %s', (formula, value) => {
    expect(reckon(formula)).toBeCloseTo(value, 12);
  });

  it('holds for values that come from cells', () => {
    const desk = new Desk({
      job: {
        gap: [quantity(LENGTH), [INCH]],
        post: [quantity(LENGTH), [3.5 * INCH]],
        hole: [quantity(LENGTH), [4.5 * INCH]],
        concrete: [quantity(VOLUME), [4.2 * FOOT3]],
        one: [PLAIN, [1]],
      },
    });
    expect(desk.only('gap + post - hole > 0 in')).toBe(false);
    expect(desk.only('gap + post - hole')).toBe(0);
    expect(desk.only('max(0 in, hole - (gap + post))')).toBe(0);
    expect(desk.only('ceil(concrete / 0.6 ft^3)')).toBe(7);
  });

  it('leaves a real difference alone', () => {
    expect(reckon('1 in + 3.5 in - 4.49 in > 0 in')).toBe(true);
    expect(reckon('1/4 in / 47.9 in > 1/16 in / 1 ft')).toBe(true);
  });
});
