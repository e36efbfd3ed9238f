import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CATALOG, type OnTheWay } from '../../src/trade/index.ts';
import { si } from './si.ts';

const FOLDER = new URL('../../src/trade/', import.meta.url);

/** The equation of every documented function: the second paragraph of its comment. */
const EQUATIONS = new Map(
  readdirSync(FOLDER)
    .map((file) => readFileSync(new URL(file, FOLDER), 'utf8'))
    .flatMap((text) => [
      ...text.matchAll(/\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export function (\w+)/g),
    ])
    .map(([, doc, name]) => [name!, doc!.split(/\n \*\s*\n/)[1] ?? '']),
);

const RULES = [...CATALOG.values()].map((rule) => ({ name: rule.name, rule }));

describe('the equation of a rule', () => {
  it.each(RULES)('of $name is the one its comment has', ({ rule }) => {
    const printed = (EQUATIONS.get(rule.apply.name) ?? '').replaceAll(/\n? \* ?/g, ' ').trim();
    expect(printed).not.toBe('');
    expect(rule.equation.replaceAll('’', "'")).toBe(printed);
  });
});

/** What a rule goes through, by symbol, as numbers in the unit that is printed. */
function way(name: string, ...values: readonly (number | string)[]): Map<string, number> {
  const rule = CATALOG.get(name)!;
  const answer = rule.apply(...(values as never[]));
  expect(typeof answer).toBe('number');
  const steps: readonly OnTheWay[] = rule.onTheWay!(values as never, answer as never);
  return new Map(steps.map(({ symbol, value }) => [symbol, parseFloat(value)]));
}

describe('the values on the way', () => {
  it('lead to the printed depth of Eq. 18-1: 8.08 ft (public hand-worked note)', () => {
    const steps = way('lateral_embedment', si(680, 'lbf'), si(7.79, 'ft'), si(1, 'ft'), si(150, 'psf/ft')); // prettier-ignore
    const a = steps.get('A')!;
    expect(0.5 * a * (1 + Math.sqrt(1 + (4.36 * 7.79) / a))).toBeCloseTo(8.08, 2);
    expect((2.34 * 680) / steps.get('S1')!).toBeCloseTo(a, 3);
  });

  it('stop S1 at a third of 12 ft, in the deep example of the code text: 54.60 ft', () => {
    const steps = way('lateral_embedment', si(100000, 'lbf'), si(62.11, 'ft'), si(6, 'ft'), si(400, 'psf/ft')); // prettier-ignore
    expect(steps.get('S1')).toBe(1600);
  });

  it('stop S3 at 12 ft: the 2,394 psf of a public flagpole sheet, IBC 2021 Eq. 18-3', () => {
    const steps = way('lateral_embedment_restrained', si(33700, 'lbf'), si(39.4, 'ft'), si(178.19, 'in'), si(1.33 * 150, 'psf/ft')); // prettier-ignore
    expect(steps.get('S3')).toBeCloseTo(2394, 0);
  });

  it('lead to a capacity of 92.01 lbf by Eq. 18-1 turned round', () => {
    const steps = way('lateral_capacity', si(3, 'ft'), si(3, 'ft'), si(1, 'ft'), si(150, 'psf/ft')); // prettier-ignore
    expect((steps.get('A')! * steps.get('S1')!) / 2.34).toBeCloseTo(92.01, 1);
  });

  it('are the Kz of 1.083 of a public worksheet at 155 mph, D, 20 ft', () => {
    expect(way('velocity_pressure', si(155, 'mph'), 'D', si(20, 'ft')).get('Kz')).toBeCloseTo(1.083, 3); // prettier-ignore
  });

  it('multiply to the wind on a fence: 526.3 lbf on 48 ft^2', () => {
    const steps = way('fence_wind', si(115, 'mph'), 'B', si(6, 'ft'), 1, si(96, 'ft'));
    const pressure = 0.6 * 0.85 * steps.get('q')! * steps.get('Cf')! * steps.get('1 - (1 - e)^1.5')!; // prettier-ignore
    expect(pressure * 48).toBeCloseTo(526.3, 0);
  });

  it('are a mean of 2.95 for a strip over three regions of case C, 0.8 of it counted', () => {
    // 78 ft by 6 ft is B/s 13. Strip 4 to 12 ft: 2 ft of 4.00 and 6 ft of 2.60 (ASCE 7-16 Fig. 29.3-1).
    const steps = way('end_wind', si(115, 'mph'), 'B', si(6, 'ft'), 1, si(78, 'ft'), si(4, 'ft'), si(12, 'ft')); // prettier-ignore
    expect(steps.get('Cf')).toBeCloseTo((2 * 4 + 6 * 2.6) / 8, 4);
    expect(steps.get('1.8 - s/h')).toBe(0.8);
  });

  it('name the mode that gives a No. 10 screw the 117 lbf of NDS 2018 Table 12L', () => {
    const steps = way('screw_lateral', 10, si(1.5, 'in'), si(3.5, 'in'), 0.5);
    expect(steps.get('IV')).toBeCloseTo(117, 0);
    expect(steps.get('p / 10D')).toBe(1);
    expect(steps.get('6D')).toBeCloseTo(1.14, 9);
  });

  it('count a nail’s penetration from its own arguments', () => {
    // 10d common through 3/4 in: 105 lbf in full (NDS 2018 Table 12N).
    const steps = way('nail_lateral', si(0.148, 'in'), si(3, 'in'), si(0.75, 'in'), 0.5);
    expect(steps.get('p')).toBeCloseTo(2.25, 9);
    expect([...steps.values()][5]).toBeCloseTo(105, 0);
  });

  it('are the Kp of 3 of 30 deg, and the f of 4.0 and g of 9.25 ft printed on UFC 3-220-20', () => {
    const sand = way('sand_capacity', si(10, 'ft'), si(3, 'ft'), si(1, 'ft'), si(60, 'lbf/ft^3'), si(30, 'deg')); // prettier-ignore
    expect(sand.get('Kp')).toBeCloseTo(3, 4);
    const clay = way('clay_capacity', si(14.7537, 'ft'), si(100 / 54, 'ft'), si(1, 'ft'), si(1500, 'psf'), si(1.5, 'ft')); // prettier-ignore
    expect(clay.get('f')).toBeCloseTo(4, 2);
    expect(clay.get('g')).toBeCloseTo(9.2537, 2);
  });
});
