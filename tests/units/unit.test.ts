import { describe, expect, it } from 'vitest';
import {
  ANGLE,
  AREA,
  FORCE,
  LENGTH,
  MASS,
  MATURITY,
  MONEY,
  PRESSURE,
  PRESSURE_PER_DEPTH,
  RATIO,
  SPEED,
  TEMPERATURE,
  VOLUME,
  dimension,
  dimensionName,
  fromSI,
  parseUnit,
  per,
  power,
  sameDimension,
  times,
  toSI,
  unitNamed,
  usualUnit,
  wordedUnit,
} from '../../src/units/index.ts';

describe('a unit', () => {
  // NIST SP 811 (2008), App. B.8: factors in bold there are exact, the others have seven digits.
  it.each([
    ['in', 0.0254],
    ['ft', 0.3048],
    ['yd', 0.9144],
    ['lb', 0.45359237],
    ['mph', 0.44704],
    ['ft^2', 0.09290304],
    ['day', 86400],
  ])('%s is exactly %f in SI', (symbol, factor) => {
    expect(parseUnit(symbol)?.factor).toBeCloseTo(factor, 15);
  });

  it.each([
    ['lbf', 4.448222],
    ['psi', 6894.757],
    ['psf', 47.88026],
    ['ft^3', 0.02831685],
    ['yd^3', 0.7645549],
    ['gal', 0.003785412],
    ['L', 0.001],
    ['pcf', 16.01846],
    ['lb/ft^3', 16.01846],
    ['lbf*ft', 1.355818],
    ['lbf/ft', 14.5939],
    ['deg', 0.01745329],
  ])('%s is %f in SI to the digits printed', (symbol, factor) => {
    expect((parseUnit(symbol)?.factor ?? NaN) / factor).toBeCloseTo(1, 6);
  });

  it.each([
    ['psf/ft', PRESSURE_PER_DEPTH],
    ['degC*h', MATURITY],
    ['USD/ft', per(MONEY, LENGTH)],
    ['m/s', SPEED],
    ['in/ft', RATIO],
    ['', RATIO],
    ['1/ft', dimension({ length: -1 })],
    ['kPa', PRESSURE],
  ])('%s has its dimension', (symbol, expected) => {
    expect(sameDimension(parseUnit(symbol)!.dimension, expected)).toBe(true);
  });

  it.each(['furlong', 'ft^', '/ft', '*', 'ft**2', 'constructor', '2 ft', 'ft^x', 'm1', 'lbf ft'])(
    '%s is not one',
    (text) => {
      expect(parseUnit(text)).toBeUndefined();
    },
  );

  // By definition of the scales: water freezes at 32 degF, 0 degC, 273.15 K; the two meet at -40.
  it.each([
    [32, 'degF', 273.15],
    [0, 'degC', 273.15],
    [-40, 'degF', 233.15],
    [-40, 'degC', 233.15],
  ])('puts %f %s at %f K', (number, symbol, kelvin) => {
    const scale = unitNamed(symbol)!;
    expect(toSI(number, scale)).toBeCloseTo(kelvin, 10);
    expect(fromSI(kelvin, scale)).toBeCloseTo(number, 10);
  });
});

describe('the words for a unit', () => {
  it.each([
    ['"', 'in'],
    ['Inches', 'in'],
    ["'", 'ft'],
    ['feet', 'ft'],
    ['metres', 'm'],
    ['LBS', 'lb'],
    ['cu ft', 'ft^3'],
    ['cubic feet', 'ft^3'],
    ['yd3', 'yd^3'],
    ['sq. ft.', 'ft^2'],
    ['m^2', 'm^2'],
    ['°F', 'degF'],
    ['deg C', 'degC'],
    ['hrs', 'h'],
    ['per', undefined],
    ['in per ft', 'in/ft'],
    ['PSF/FT', 'psf/ft'],
    ['$ per hour', 'USD/h'],
    ['lb/cu ft', 'lb/ft^3'],
    ['parsec', undefined],
    ['m1', undefined],
  ])('%s are %s', (text, symbol) => {
    expect(wordedUnit(text)?.symbol).toBe(symbol);
  });
});

describe('a dimension', () => {
  it('multiplies, divides and takes powers', () => {
    expect(times(LENGTH, LENGTH)).toEqual(AREA);
    expect(per(VOLUME, AREA)).toEqual(LENGTH);
    expect(power(LENGTH, 3)).toEqual(VOLUME);
    expect(sameDimension(power(AREA, 0.5), LENGTH)).toBe(true);
    expect(sameDimension(per(FORCE, AREA), PRESSURE)).toBe(true);
  });

  it('keeps mass from force, and angle and money from plain numbers', () => {
    expect(sameDimension(MASS, FORCE)).toBe(false);
    expect(sameDimension(ANGLE, RATIO)).toBe(false);
    expect(sameDimension(MONEY, RATIO)).toBe(false);
  });

  it.each([
    [LENGTH, 'length'],
    [PRESSURE_PER_DEPTH, 'pressure per depth'],
    [TEMPERATURE, 'temperature'],
    [per(MONEY, LENGTH), 'length^-1 x money'],
  ])('has a name', (known, name) => {
    expect(dimensionName(known)).toBe(name);
  });

  it('without a usual unit is written in base units', () => {
    expect(usualUnit(dimension({ length: 4 })).symbol).toBe('m^4');
  });
});
