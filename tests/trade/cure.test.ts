import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ageForStrength,
  equivalentAge,
  eurocodeStrength,
  maturity,
  strengthFraction,
} from '../../src/trade/cure.ts';
import { expectNear, read, refusal, si } from './si.ts';

const days = (number: number) => si(number, 'day');
const celsius = (...numbers: number[]) => numbers.map((number) => si(number, 'degC'));

describe('strengthFraction', () => {
  // Worked from ACI 209R-92, t/(a + b t); no example with printed strengths is known.
  it.each([
    {
      cement: 'I',
      age: [1, 3, 7, 14, 21, 28, 56, 365],
      row: '.2062 .4580 .7035 .8805 .9611 1.0072 1.0853 1.1615',
    },
    {
      cement: 'III',
      age: [1, 3, 7, 14, 21, 28, 56, 365],
      row: '.3106 .5929 .8009 .9223 .9713 .9979 1.0405 1.0796',
    },
  ])('follows the curve of type $cement', ({ cement, age, row }) => {
    const printed = row.split(' ').map(Number);
    age.forEach((day, column) => {
      expectNear(read(strengthFraction(days(day), cement)), printed[column]!, 0.0001);
    });
  });

  it('shows the trend that Concrete Construction prints for III over I', () => {
    // Printed 190, 150, 120, 110% at 1, 3, 7, 28 days; ACI 209 with f28 x 1.10 gives 166, 142, 125, 109%.
    const ratios = [1, 3, 7, 28].map(
      (day) =>
        (110 * read(strengthFraction(days(day), 'III'))) / read(strengthFraction(days(day), 'I')),
    );
    [166, 142, 125, 109].forEach((percent, column) => expectNear(ratios[column]!, percent, 0.5));
  });

  it('is 0 at the pour, never falls, and stays under 1/b', () => {
    const ages = fc.double({ min: 0, max: 1e10, noNaN: true });
    expect(read(strengthFraction(0, 'I'))).toBe(0);
    fc.assert(
      fc.property(ages, ages, (a, b) => {
        const [younger, older] = a < b ? [a, b] : [b, a];
        const [less, more] = [
          read(strengthFraction(younger, 'III')),
          read(strengthFraction(older, 'III')),
        ];
        expect(less).toBeLessThanOrEqual(more);
        expect(more).toBeLessThan(1 / 0.92);
      }),
    );
  });

  it('refuses an age before the pour and a cement it does not know', () => {
    expect(refusal(strengthFraction(-1, 'I')).found).toContain('age');
    expect(refusal(strengthFraction(days(7), 'II')).fix).toContain('I, III');
  });
});

describe('ageForStrength', () => {
  // Worked from ACI 209R-92, a f/(1 - b f).
  it.each([
    { share: 0.5, cement: 'I', unit: 'day', age: 3.478, tolerance: 0.001 },
    { share: 0.5, cement: 'III', unit: 'day', age: 2.13, tolerance: 0.001 },
    { share: 500 / 3000, cement: 'I', unit: 'h', age: 18.64, tolerance: 0.01 },
    { share: 500 / 3000, cement: 'III', unit: 'h', age: 10.9, tolerance: 0.05 },
    { share: 500 / 2500, cement: 'I', unit: 'h', age: 23.1, tolerance: 0.05 },
  ])('is $age $unit to $share of type $cement', ({ share, cement, unit, age, tolerance }) => {
    expectNear(read(ageForStrength(share, cement), unit), age, tolerance);
  });

  it('is within the 24 h that the Portland Cement Association allows for 500 psi', () => {
    // PCA, cold-weather concreting: 500 psi (3.5 MPa) within 24 h at normal temperature.
    for (const strength of [2500, 3000, 3500]) {
      expect(read(ageForStrength(500 / strength, 'I'), 'h')).toBeLessThan(24);
    }
    expectNear(read(si(500, 'psi'), 'MPa'), 3.5, 0.06);
  });

  it('is the curve turned round', () => {
    const shares = fc.double({ min: 0, max: 1.08, noNaN: true });
    fc.assert(
      fc.property(shares, (share) => {
        const age = read(ageForStrength(share, 'III'));
        expectNear(read(strengthFraction(age, 'III')), share, 1e-9);
      }),
    );
  });

  it.each([
    { cement: 'I', share: 1 / 0.85, most: '1.1765' },
    { cement: 'I', share: 2, most: '1.1765' },
    { cement: 'III', share: 1.09, most: '1.0870' },
  ])('refuses $share of type $cement, beyond its curve', ({ cement, share, most }) => {
    expect(refusal(ageForStrength(share, cement)).fix).toContain(most);
  });

  it('refuses a share below 0', () => {
    expect(refusal(ageForStrength(-0.1, 'I')).found).toContain('“-0.1”');
  });
});

describe('eurocodeStrength', () => {
  // fib's open-source structural code library, its tests of EN 1992-1-1 property development: to the digits printed there.
  it.each([
    { age: 9, hardening: 0.25, printed: 0.8261668305, tolerance: 1e-9 },
    { age: 56, hardening: 0.25, printed: 1.0759707794, tolerance: 1e-9 },
    { age: 27, hardening: 0.25, printed: 0.995422968, tolerance: 1e-9 },
    { age: 10, hardening: 0.38, printed: 0.77425, tolerance: 5e-6 },
    { age: 10, hardening: 0.2, printed: 0.87401, tolerance: 5e-6 },
    { age: 20, hardening: 0.38, printed: 0.93275, tolerance: 5e-6 },
    { age: 40, hardening: 0.38, printed: 1.06404, tolerance: 5e-6 },
  ])('gives the printed $printed at $age days, s $hardening', (row) => {
    expectNear(read(eurocodeStrength(days(row.age), row.hardening)), row.printed, row.tolerance);
  });

  it('is 1 at 28 days whatever the cement, grows with age, and starts later where hardening is slow', () => {
    const ages = fc.double({ min: 3, max: 3000, noNaN: true });
    const slowness = fc.double({ min: 0.2, max: 0.37, noNaN: true });
    fc.assert(
      fc.property(ages, slowness, (age, s) => {
        const at = (day: number, hardening = s) => read(eurocodeStrength(days(day), hardening));
        expectNear(at(28), 1, 1e-12);
        expect(at(age * 1.1)).toBeGreaterThan(at(age));
        expect(Math.sign(at(age) - at(age, s + 0.01))).toBe(Math.sign(28 - age));
      }),
    );
  });

  it('refuses concrete younger than 3 days and an s of no class, on the line is within it', () => {
    expect(refusal(eurocodeStrength(days(2.9), 0.25)).fix).toContain('strength_fraction');
    expect(refusal(eurocodeStrength(days(7), 0.4)).fix).toContain('class R');
    expect(read(eurocodeStrength(days(3) * (1 - 1e-12), 0.2))).toBeGreaterThan(0);
  });
});

describe('maturity', () => {
  it('gives the printed 540 degC h', () => {
    // General web guide to ASTM C1074: 12 h at 20 and 12 h at 25 degC, datum 0 degC.
    const answer = maturity(celsius(20, 25), [si(12, 'h'), si(12, 'h')], si(0, 'degC'));
    expectNear(read(answer, 'degC*h'), 540, 1e-9);
  });

  it('credits nothing below the datum', () => {
    const answer = maturity(celsius(-15, 10), [si(10, 'h'), si(10, 'h')], si(-10, 'degC'));
    expectNear(read(answer, 'degC*h'), 200, 1e-9);
  });

  // Worked: rate relative to 20 degC.
  it.each([
    { datum: -10, rates: '.333 .500 .667 .833 1.167 1.333' },
    { datum: 0, rates: '0 .250 .500 .750 1.250 1.500' },
  ])('has the rates of datum $datum degC', ({ datum, rates }) => {
    const at = (temperature: number) =>
      read(maturity(celsius(temperature), [3600], si(datum, 'degC')));
    rates.split(' ').forEach((rate, column) => {
      expectNear(at([0, 5, 10, 15, 25, 30][column]!) / at(20), Number(rate), 0.0005);
    });
  });

  it('adds up whatever way the log is cut', () => {
    const hours = fc.double({ min: 0, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(hours, hours, (first, second) => {
        const cut = read(maturity(celsius(12, 12), [first, second], 273.15));
        const whole = read(maturity(celsius(12), [first + second], 273.15));
        expectNear(cut, whole, 1e-9 * (1 + whole));
      }),
    );
  });

  it('refuses lists that do not pair, an empty log and a negative duration', () => {
    expect(refusal(maturity(celsius(20), [1, 2], 273.15)).found).toContain('“1” temperatures');
    expect(refusal(maturity([], [], 273.15)).fix).toContain('one duration');
    expect(refusal(maturity(celsius(20), [-1], 273.15)).found).toContain('duration');
  });
});

describe('equivalentAge', () => {
  it('gives fib’s printed 8.37987 days within its rounded constant', () => {
    // Tests of fib's structural code library, EN 1992-1-1 (B.10); 13.65 for 4000/293 makes it 0.18% lower.
    const temperatures = celsius(19, 20, 20, 21, 22, 23);
    const age = equivalentAge(temperatures, [1, 2, 1, 1, 1, 2].map(days), 4000);
    expectNear(read(age, 'day'), 8.37987, 0.0025 * 8.37987);
    expectNear(read(age, 'day'), 8.3952, 0.00005); // worked with an exact 20 degC
  });

  it('is counted from an exact 20 degC: not the 0.998 of (B.10), whose 13.65 is rounded', () => {
    // EN 1992-1-1 (B.10): exp(-(4000/(273 + T) - 13.65)).
    expectNear(Math.exp(-(4000 / 293 - 13.65)), 0.998, 0.0005);
    expectNear(read(equivalentAge(celsius(20), [days(1)], 4000), 'day'), 1, 1e-12);
  });

  it('is 1.6425 days for 3 days at 10 degC', () => {
    const age = read(equivalentAge(celsius(10), [days(3)], 5000));
    expectNear(read(age, 'day'), 1.6425, 0.0005); // worked
    expectNear(read(strengthFraction(age, 'I')), 0.3044, 0.0001);
  });

  it('is 2.790 days for 7 days at 5 degC', () => {
    const age = read(equivalentAge(celsius(5), [days(7)], 5000));
    expectNear(read(age, 'day'), 2.79, 0.001); // worked
    expectNear(read(strengthFraction(age, 'I')), 0.4379, 0.0001);
  });

  // Worked: rate relative to 20 degC.
  it.each([
    { activation: 5000, rates: '.287 .399 .548 .744 1.331 1.755' },
    { activation: 4000, rates: '.368 .479 .618 .789 1.257 1.568' },
  ])('has the rates of $activation K', ({ activation, rates }) => {
    rates.split(' ').forEach((rate, column) => {
      const temperature = celsius([0, 5, 10, 15, 25, 30][column]!);
      expectNear(read(equivalentAge(temperature, [1], activation)), Number(rate), 0.0006);
    });
  });

  // Worked: hours to 500 psi of a 3,000 psi mix, type I, 5,000 K; and of 2,500 psi at 5 degC.
  it.each([
    { degrees: 20, strength: 3000, hours: 18.6 },
    { degrees: 10, strength: 3000, hours: 34 },
    { degrees: 5, strength: 3000, hours: 46.8 },
    { degrees: 5, strength: 2500, hours: 58 },
  ])('waits $hours h at $degrees degC for 500 psi of $strength', (row) => {
    const needed = read(ageForStrength(500 / row.strength, 'I'));
    const rate = read(equivalentAge(celsius(row.degrees), [1], 5000));
    expectNear(needed / rate / 3600, row.hours, 0.15);
  });

  it('is the age itself at 20 degC, whatever the activation', () => {
    const activations = fc.double({ min: 0, max: 1e5, noNaN: true });
    fc.assert(
      fc.property(activations, (activation) => {
        expectNear(read(equivalentAge(celsius(20), [days(3)], activation), 'day'), 3, 1e-9);
      }),
    );
  });

  it('is less in the cold and more in the warm, the more so with more activation', () => {
    const degrees = fc.double({ min: 0, max: 19, noNaN: true });
    fc.assert(
      fc.property(degrees, (cold) => {
        const at = (temperature: number, activation: number) =>
          read(equivalentAge(celsius(temperature), [1], activation));
        expect(at(cold, 4000)).toBeLessThan(1);
        expect(at(cold, 5000)).toBeLessThan(at(cold, 4000));
        expect(at(40 - cold, 5000)).toBeGreaterThan(1);
      }),
    );
  });

  it('refuses frozen and scalding concrete, on the line is within it', () => {
    expect(refusal(equivalentAge(celsius(20, -2), [1, 1], 4000)).found).toContain('“-2 degC”');
    expect(refusal(equivalentAge(celsius(81), [1], 4000)).found).toContain('81 degC');
    expect(read(equivalentAge([si(32, 'degF')], [1], 4000))).toBeGreaterThan(0);
  });

  it('refuses a negative activation', () => {
    expect(refusal(equivalentAge(celsius(20), [1], -1)).found).toContain('activation');
  });
});
