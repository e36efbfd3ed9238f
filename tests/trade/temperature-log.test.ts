import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ageForStrength, equivalentAge, maturity } from '../../src/trade/cure.ts';
import {
  ageAtEquivalent,
  ageAtMaturity,
  equivalentAtAge,
} from '../../src/trade/temperature-log.ts';
import { expectNear, read, refusal, si } from './si.ts';

const celsius = (...numbers: number[]) => numbers.map((number) => si(number, 'degC'));
const hours = (...numbers: number[]) => numbers.map((number) => si(number, 'h'));
const AT_ONCE = 0;

/** 500 psi of a 2,500 psi mix, type I, at 20 degC. */
const REHANG = read(ageForStrength(500 / 2500, 'I'));
const days = (temperature: number) =>
  ageAtEquivalent(celsius(temperature), hours(1), AT_ONCE, REHANG, 5000);

describe('ageAtEquivalent', () => {
  // Worked from ACI 209R-92, type I: 500 of 2,500 psi takes 23.1 h at 20 degC; of 3,000 psi 18.6 h,
  // 34.0 h at 10 and 46.8 h at 5 degC, with 5,000 K. At 5 degC 23.13/0.3986 = 58.0 h.
  it.each([
    { mix: 2500, at: 20, age: 23.1, tolerance: 0.05 },
    { mix: 2500, at: 5, age: 58, tolerance: 0.1 },
    { mix: 3000, at: 20, age: 18.6, tolerance: 0.05 },
    { mix: 3000, at: 10, age: 34, tolerance: 0.1 },
    { mix: 3000, at: 5, age: 46.8, tolerance: 0.1 },
  ])('is $age h to 500 psi of a $mix psi mix at $at degC', ({ mix, at, age, tolerance }) => {
    const wanted = read(ageForStrength(500 / mix, 'I'));
    const answer = ageAtEquivalent(celsius(at), hours(1), AT_ONCE, wanted, 5000);
    expectNear(read(answer, 'h'), age, tolerance);
  });

  it('holds the last reading beyond the end of the log', () => {
    // Hand-worked: 10 h at 20 degC, then 13.13 h at a rate of 0.3986 take 32.93 h more.
    const answer = ageAtEquivalent(celsius(20, 5), hours(10, 1), AT_ONCE, si(23.125, 'h'), 5000);
    expectNear(read(answer, 'h'), 10 + 13.125 / 0.39857, 0.01);
  });

  it('counts nothing before the pour', () => {
    const warmFirst = ageAtEquivalent(celsius(35, 20), hours(6, 6), si(6, 'h'), REHANG, 5000);
    expectNear(read(warmFirst), REHANG, 1e-6);
    const longAfter = ageAtEquivalent(celsius(35, 20), hours(6, 6), si(100, 'h'), REHANG, 5000);
    expectNear(read(longAfter), REHANG, 1e-6);
  });

  it('passes over readings of no duration, first and last', () => {
    const log = [celsius(60, 20, 20, 60), hours(0, 5, 5, 0)] as const;
    expectNear(read(ageAtEquivalent(...log, AT_ONCE, REHANG, 5000)), REHANG, 1e-6);
  });

  it('lets a frozen night count for nothing', () => {
    const night = ageAtEquivalent(celsius(20, -4, 20), hours(10, 12, 1), AT_ONCE, REHANG, 5000);
    expectNear(read(night), REHANG + si(12, 'h'), 1e-6);
  });

  it('is turned round by equivalentAtAge and agrees with equivalentAge', () => {
    const temperature = fc.double({ min: 0.5, max: 40, noNaN: true });
    const duration = fc.double({ min: 0.1, max: 30, noNaN: true });
    const log = fc.array(fc.tuple(temperature, duration), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(log, fc.double({ min: 0, max: 1, noNaN: true }), (rows, share) => {
        const temperatures = celsius(...rows.map(([degrees]) => degrees));
        const durations = hours(...rows.map(([, time]) => time));
        const whole = durations.reduce((sum, time) => sum + time, 0);
        const pour = share * whole * 0.5;
        const age = read(ageAtEquivalent(temperatures, durations, pour, REHANG, 4000));
        const back = read(equivalentAtAge(temperatures, durations, pour, age, 4000));
        expectNear(back, REHANG, 1e-6 * REHANG);
        expectNear(
          read(equivalentAtAge(temperatures, durations, 0, whole, 4000)),
          read(equivalentAge(temperatures, durations, 4000)),
          1e-6 * whole,
        );
      }),
    );
  });

  it('is longer the colder it is', () => {
    expect(read(days(5))).toBeGreaterThan(read(days(10)));
    expect(read(days(10))).toBeGreaterThan(read(days(20)));
  });

  it('refuses a log that ends frozen short of the age, and says what to do', () => {
    const { found, fix } = refusal(days(-2));
    expect(found).toContain('-2 degC');
    expect(fix).toContain('protect');
  });

  it.each([
    { what: 'no readings', log: [[], []], pour: 0 },
    { what: 'no duration', log: [celsius(20), [0]], pour: 0 },
    { what: 'a log begun after the pour', log: [celsius(20), [3600]], pour: -3600 },
    { what: 'a reading out of order', log: [celsius(20, 10), [3600, -3600]], pour: 0 },
    { what: 'an oven', log: [celsius(90), [3600]], pour: 0 },
  ])('refuses $what', ({ log: [temperatures = [], durations = []], pour }) => {
    expect(refusal(ageAtEquivalent(temperatures, durations, pour, REHANG, 5000)).where).toBe(
      'age_at_equivalent',
    );
  });
});

describe('equivalentAtAge', () => {
  it('gives 3 days at 10 degC their 1.6425 days', () => {
    // Worked from the Arrhenius rate .5475 at 10 degC, 5,000 K.
    const answer = equivalentAtAge(celsius(10), hours(1), AT_ONCE, si(72, 'h'), 5000);
    expectNear(read(answer, 'day'), 1.6425, 0.0005);
  });
});

describe('ageAtMaturity', () => {
  it('takes 24 h to the printed 540 degC h', () => {
    // General web guide to ASTM C1074: 12 h at 20 and 12 h at 25 degC, datum 0 degC.
    const log = [celsius(20, 25), hours(12, 12)] as const;
    const wanted = read(maturity(...log, si(0, 'degC')));
    expectNear(read(ageAtMaturity(...log, AT_ONCE, wanted, si(0, 'degC')), 'h'), 24, 1e-9);
  });

  it('refuses a log that ends at the datum', () => {
    const answer = ageAtMaturity(celsius(-10), hours(1), AT_ONCE, 1e6, si(-10, 'degC'));
    expect(refusal(answer).where).toBe('age_at_maturity');
  });
});
