import type { Answer } from '../units/index.ts';
import { logLimits } from './cure.ts';
import { ICE_POINT } from './factors.ts';
import { aboveZero, atMost, between, covered, refusal, shown, zeroOrMore } from './limits.ts';

/** The temperature at which an hour counts as an hour. [K] */
const REFERENCE = ICE_POINT + 20;

/** Where EN 1992-1-1 Annex B takes the Arrhenius rule to hold, from memory. [K] */
const WARMEST = ICE_POINT + 80;

/** A stretch of the log after the pour; the last one has no end. */
interface Stretch {
  readonly temperature: number;
  readonly duration: number;
}

/**
 * How long after its pour concrete has done what so many hours at 20 degC would do.
 *
 * the age t at which the sum of exp(-Q (1/T - 1/293.15)) x duration comes to the age wanted
 *
 * Each reading holds for its duration and the last one from then on: a forecast,
 * not a promise. Time at or below 0 degC counts for nothing. The log may begin
 * before the pour, never after it.
 *
 * @param temperatures - Temperature of each interval of the log. [K]
 * @param durations - Length of each interval, 0 or more; one of 0 is passed over. [s]
 * @param pour - Time of the pour since the log began, 0 or more. [s]
 * @param wanted - Age at 20 degC, 0 or more. [s]
 * @param activation - Q, activation energy over the gas constant. [K]
 * @returns Time since the pour. [s]
 *
 * @source Arrhenius function of ASTM C1074, solved for the age
 * @check hand-worked: 5 degC throughout, 5,000 K, 23.13 h wanted → 23.13/0.3986 = 58.0 h
 */
export function ageAtEquivalent(
  temperatures: readonly number[],
  durations: readonly number[],
  pour: number,
  wanted: number,
  activation: number,
): Answer {
  const limits = [
    ...readingLimits(temperatures, durations, pour),
    zeroOrMore('age wanted', wanted, 'h'),
    zeroOrMore('activation', activation, 'K'),
  ];
  return covered('age_at_equivalent', limits, () =>
    timeToGather(wanted, afterPour(temperatures, durations, pour), (temperature) =>
      arrhenius(temperature, activation),
    ),
  );
}

/**
 * The age at 20 degC that concrete has come to, so long after its pour.
 *
 * te = sum of exp(-Q (1/T - 1/293.15)) x duration, from the pour to the age given
 *
 * `age_at_equivalent` turned round, read from the log in the same way.
 *
 * @param temperatures - Temperature of each interval of the log. [K]
 * @param durations - Length of each interval, 0 or more; one of 0 is passed over. [s]
 * @param pour - Time of the pour since the log began, 0 or more. [s]
 * @param age - Time since the pour, 0 or more. [s]
 * @param activation - Q, activation energy over the gas constant. [K]
 * @returns Equivalent age at 20 degC. [s]
 *
 * @source Arrhenius function of ASTM C1074; EN 1992-1-1 Eq. (B.10)
 * @check hand-worked: 10 degC throughout, 5,000 K, 72 h → 0.5475 x 72 = 39.42 h
 */
export function equivalentAtAge(
  temperatures: readonly number[],
  durations: readonly number[],
  pour: number,
  age: number,
  activation: number,
): Answer {
  const limits = [
    ...readingLimits(temperatures, durations, pour),
    zeroOrMore('age', age, 'h'),
    zeroOrMore('activation', activation, 'K'),
  ];
  return covered('equivalent_at_age', limits, () => {
    let [gathered, left] = [0, age];
    for (const { temperature, duration } of afterPour(temperatures, durations, pour)) {
      const spent = Math.min(left, duration);
      if (spent > 0) gathered += arrhenius(temperature, activation) * spent;
      left -= spent;
    }
    return gathered;
  });
}

/**
 * How long after its pour concrete has gathered a maturity.
 *
 * the age t at which the sum of (T - T0) x duration comes to the maturity wanted
 *
 * Each reading holds for its duration and the last one from then on. Time at or
 * below the datum counts for nothing. Say which datum was used.
 *
 * @param temperatures - Temperature of each interval of the log. [K]
 * @param durations - Length of each interval, 0 or more; one of 0 is passed over. [s]
 * @param pour - Time of the pour since the log began, 0 or more. [s]
 * @param wanted - Maturity, 0 or more. [K s]
 * @param datum - T0, the temperature below which strength stands still. [K]
 * @returns Time since the pour. [s]
 *
 * @source Nurse-Saul function of ASTM C1074, solved for the age
 * @check hand-worked: 12 h at 20 and then 25 degC, datum 0 degC, 540 degC h → 24 h
 */
export function ageAtMaturity(
  temperatures: readonly number[],
  durations: readonly number[],
  pour: number,
  wanted: number,
  datum: number,
): Answer {
  const limits = [
    ...readingLimits(temperatures, durations, pour),
    zeroOrMore('maturity wanted', wanted, 'K*h'),
    aboveZero('datum', datum, 'K'),
  ];
  return covered('age_at_maturity', limits, () =>
    timeToGather(wanted, afterPour(temperatures, durations, pour), (temperature) =>
      Math.max(0, temperature - datum),
    ),
  );
}

function arrhenius(temperature: number, activation: number): number {
  if (atMost(temperature, ICE_POINT)) return 0;
  return Math.exp(-activation * (1 / temperature - 1 / REFERENCE));
}

function timeToGather(
  wanted: number,
  stretches: readonly Stretch[],
  rate: (temperature: number) => number,
): Answer {
  let [gathered, elapsed] = [0, 0];
  for (const { temperature, duration } of stretches) {
    const missing = wanted - gathered;
    if (missing <= 0) return elapsed;
    const time = missing / rate(temperature);
    if (time < Infinity && time <= duration) return elapsed + time;
    if (duration === Infinity) return standsStill(temperature);
    gathered += rate(temperature) * duration;
    elapsed += duration;
  }
  return elapsed;
}

function standsStill(temperature: number): Answer {
  return refusal('', [
    `The last reading is “${shown(temperature, 'degC')}”, where concrete gains nothing.`,
    'Enter later readings, or protect the concrete and enter its own temperature.',
  ]);
}

/** What the log holds from the pour on, its last reading without end. */
function afterPour(
  temperatures: readonly number[],
  durations: readonly number[],
  pour: number,
): readonly Stretch[] {
  const counted = temperatures
    .map((temperature, at) => ({ temperature, duration: durations[at] ?? 0 }))
    .filter(({ duration }) => duration > 0);
  let end = 0;
  return counted.flatMap(({ temperature, duration }, at) => {
    end += duration;
    if (at === counted.length - 1) return [{ temperature, duration: Infinity }];
    return end > pour ? [{ temperature, duration: Math.min(duration, end - pour) }] : [];
  });
}

function readingLimits(
  temperatures: readonly number[],
  durations: readonly number[],
  pour: number,
) {
  return [
    ...logLimits(temperatures, durations),
    durations.some((duration) => duration > 0)
      ? undefined
      : (['The log has no readings.', 'Enter an hour and a temperature.'] as const),
    pour >= 0
      ? undefined
      : ([
          `The log begins “${shown(-pour, 'h')}” after the pour.`,
          'Enter a reading from the time of the pour, or before it.',
        ] as const),
    ...temperatures.map((temperature) =>
      between('temperature', temperature, [Number.MIN_VALUE, WARMEST], 'degC'),
    ),
  ];
}
