import type { Answer } from '../units/index.ts';
import { DAY, ICE_POINT } from './factors.ts';
import {
  aboveZero,
  atMost,
  between,
  covered,
  oneOf,
  shown,
  zeroOrMore,
  type Limit,
} from './limits.ts';

/** Constants of moist-cured concrete, ACI 209R-92: a in days, b a ratio. */
const MOIST_CURED = new Map([
  ['I', { a: 4, b: 0.85 }],
  ['III', { a: 2.3, b: 0.92 }],
]);

/** The cements that have a strength curve here. */
export const CEMENTS: readonly string[] = [...MOIST_CURED.keys()];

/** The temperature at which an hour counts as an hour. [K] */
const REFERENCE = ICE_POINT + 20;

/** Hardening s of EN 1992-1-1 3.1.2(6): class R to class S. */
const HARDENING_RANGE = [0.2, 0.38] as const;

/** Up to this age EN 1992-1-1 3.1.2(5) wants tests and no curve, from memory. [s] */
const CURVE_FROM = 3 * DAY;

/** Where EN 1992-1-1 Annex B takes the Arrhenius rule to hold, from memory. [K] */
const ARRHENIUS_RANGE = [ICE_POINT, ICE_POINT + 80] as const;

/**
 * Strength of concrete at an age, as a share of its 28-day strength.
 *
 * f(t) / f28 = t / (a + b t), t in days; type I: a 4.0, b 0.85; type III: a 2.3, b 0.92
 *
 * For concrete kept moist at about 70 degF (20 degC); colder, take the equivalent
 * age. The curve is not exactly 1 at 28 days.
 *
 * @param age - Time since the pour, 0 or more. [s]
 * @param cement - I or III. [text]
 * @returns Share of the 28-day strength. [1]
 *
 * @source ACI 209R-92, as transcribed in a Washington State DOT bridge library
 * @check hand-worked: 7 days, type I → 7/(4 + 5.95) = 0.7035
 */
export function strengthFraction(age: number, cement: string): Answer {
  const limits = [zeroOrMore('age', age, 'day'), oneOf('cement', cement, CEMENTS)];
  return covered('strength_fraction', limits, () => {
    const { a, b } = curve(cement);
    const days = age / DAY;
    return days === 0 ? 0 : 1 / (a / days + b);
  });
}

/**
 * The age at which concrete reaches a share of its 28-day strength.
 *
 * t = a f / (1 - b f), t in days
 *
 * `strength_fraction` turned round. The curve never reaches 1/b of the 28-day
 * strength: 1.1765 for type I, 1.0870 for type III.
 *
 * @param fraction - Share of the 28-day strength, 0 or more and below 1/b. [1]
 * @param cement - I or III. [text]
 * @returns Age, moist and at about 70 degF (20 degC). [s]
 *
 * @source ACI 209R-92, as transcribed in a Washington State DOT bridge library
 * @check hand-worked: 0.5, type I → 4 x 0.5/(1 - 0.425) = 3.478 days
 */
export function ageForStrength(fraction: number, cement: string): Answer {
  const limits = [
    oneOf('cement', cement, CEMENTS),
    zeroOrMore('share of strength', fraction, ''),
    reachable(fraction, cement),
  ];
  return covered('age_for_strength', limits, () => {
    const { a, b } = curve(cement);
    return ((a * fraction) / (1 - b * fraction)) * DAY;
  });
}

/**
 * Strength of concrete at an age, as a share of its mean 28-day strength: a second opinion.
 *
 * f(t) / f28 = exp(s (1 - sqrt(28 / t))), t in days; s 0.20 class R, 0.25 N, 0.38 S
 *
 * For concrete kept at a mean of 20 degC. From 3 days on: for younger concrete the
 * standard wants tests (from memory).
 *
 * @param age - Time since the pour, 3 days or more. [s]
 * @param hardening - s, 0.20 to 0.38. [1]
 * @returns Share of the mean 28-day strength. [1]
 *
 * @source EN 1992-1-1:2004 3.1.2(6), Eq. (3.2)
 * @check 9 days, 0.25 → 0.8261668 (tests of fib's structural code library)
 */
export function eurocodeStrength(age: number, hardening: number): Answer {
  const limits = [
    between('hardening', hardening, HARDENING_RANGE, '', '0.20 is class R, 0.25 N, 0.38 S.'),
    fromThreeDays(age),
  ];
  return covered('eurocode_strength', limits, () =>
    Math.exp(hardening * (1 - Math.sqrt((28 * DAY) / age))),
  );
}

/**
 * Maturity of concrete from a log of temperatures.
 *
 * M = sum of (T - T0) x duration, with nothing for time at or below T0
 *
 * Say which datum was used: ASTM C1074 is described with 0 degC, older practice -10 degC.
 *
 * @param temperatures - Temperature of the concrete in each interval. [K]
 * @param durations - Length of each interval, 0 or more. [s]
 * @param datum - T0, the temperature below which strength stands still. [K]
 * @returns Maturity. [K s]
 *
 * @source Nurse-Saul function of ASTM C1074
 * @check 12 h at 20 and 12 h at 25 degC, datum 0 degC → 540 degC h (general web guide to ASTM C1074)
 */
export function maturity(
  temperatures: readonly number[],
  durations: readonly number[],
  datum: number,
): Answer {
  const limits = [...logLimits(temperatures, durations), aboveZero('datum', datum, 'K')];
  return covered('maturity', limits, () =>
    sumOver(temperatures, durations, (temperature) => Math.max(0, temperature - datum)),
  );
}

/**
 * The age at 20 degC that does as much as a log of temperatures did.
 *
 * te = sum of exp(-Q (1/T - 1/293.15)) x duration, T in kelvin
 *
 * For concrete between 0 and 80 degC (EN 1992-1-1 Annex B, from memory). The
 * choice of Q moves the answer at 5 degC by a fifth: 4,000 K (EN 1992-1-1),
 * 5,000 K (type I, from memory).
 *
 * @param temperatures - Temperature of the concrete in each interval. [K]
 * @param durations - Length of each interval, 0 or more. [s]
 * @param activation - Q, activation energy over the gas constant. [K]
 * @returns Equivalent age at 20 degC. [s]
 *
 * @source Arrhenius function of ASTM C1074; EN 1992-1-1 Eq. (B.10)
 * @check 19, 20, 20, 21, 22, 23 degC for 1, 2, 1, 1, 1, 2 days, 4,000 K → 8.37987 days, within its 0.18% of rounding (tests of fib's structural code library)
 */
export function equivalentAge(
  temperatures: readonly number[],
  durations: readonly number[],
  activation: number,
): Answer {
  const advice = 'Count only the hours in which the concrete was above freezing, and protect it.';
  const limits = [
    ...logLimits(temperatures, durations),
    zeroOrMore('activation', activation, 'K'),
    ...temperatures.map((temperature) =>
      between('temperature', temperature, ARRHENIUS_RANGE, 'degC', advice),
    ),
  ];
  return covered('equivalent_age', limits, () =>
    sumOver(temperatures, durations, (temperature) =>
      Math.exp(-activation * (1 / temperature - 1 / REFERENCE)),
    ),
  );
}

function curve(cement: string): { readonly a: number; readonly b: number } {
  return MOIST_CURED.get(cement) ?? { a: NaN, b: NaN };
}

function fromThreeDays(age: number): Limit {
  if (atMost(CURVE_FROM, age)) return undefined;
  return [
    `The age is “${shown(age, 'day')}”.`,
    'Keep it at 3 days or more. For younger concrete take strength_fraction, or test cylinders.',
  ];
}

function reachable(fraction: number, cement: string): Limit {
  const most = 1 / curve(cement).b;
  if (!atMost(most, fraction)) return undefined;
  return [
    `The share of strength is “${String(Number(fraction.toPrecision(5)))}”.`,
    `Keep it below ${most.toFixed(4)}: type ${cement} cement never reaches more of its 28-day strength.`,
  ];
}

/** Refuses a log whose temperatures and durations are not pairs, or are no amounts. */
export function logLimits(
  temperatures: readonly number[],
  durations: readonly number[],
): readonly Limit[] {
  const paired: Limit =
    temperatures.length === durations.length && durations.length > 0
      ? undefined
      : [
          `There are “${String(temperatures.length)}” temperatures and “${String(durations.length)}” durations.`,
          'Give one duration for each temperature.',
        ];
  return [
    paired,
    ...temperatures.map((temperature) => aboveZero('temperature', temperature, 'K')),
    ...durations.map((duration) => zeroOrMore('duration', duration, 'h')),
  ];
}

function sumOver(
  temperatures: readonly number[],
  durations: readonly number[],
  rate: (temperature: number) => number,
): number {
  return temperatures.reduce(
    (sum, temperature, interval) => sum + rate(temperature) * (durations[interval] ?? NaN),
    0,
  );
}
