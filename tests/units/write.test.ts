import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DATE,
  LENGTH,
  TEMPERATURE_POINT,
  UNITS,
  numberText,
  parseUnit,
  plainDecimal,
  quantity,
  usualUnit,
  writeDate,
  writeDuration,
  writeExact,
  writeQuantity,
  writeTape,
  writeWithUnit,
  type Unit,
} from '../../src/units/index.ts';
import { readingOf } from './reads.ts';

const length = quantity(LENGTH);
const finite = fc.double({ noNaN: true, noDefaultInfinity: true });

function unit(symbol: string): Unit {
  return parseUnit(symbol)!;
}

describe('writeQuantity', () => {
  // An inch is 25.4 mm exactly: NIST SP 811 (2008), App. B.8.
  it.each([
    [0.05715, 'in', '2 1/4'],
    [-0.009525, 'in', '-3/8'],
    [0.0142875, 'in', '9/16'],
    [0.3048, 'in', '12'],
    [0, 'in', '0'],
    [-0.0001, 'in', '0'],
    [0.026, 'in', '1'],
    [2.4384, 'ft', '8'],
    [1.6129, 'ft', '5.292'],
    [0.4, 'mm', '400'],
    [0.0525, 'mm', '52.5'],
    [0.06985, 'mm', '69.9'],
    [2.4, 'm', '2.4'],
    [1.23456, 'm', '1.235'],
    [0.04073, 'm^3', '0.04073'],
    [12345, '', '12345'],
    [0.1, '', '0.1'],
    [4.5, 'USD', '4.50'],
    [1200, 'USD', '1200.00'],
    [Math.PI / 90, 'deg', '2'],
    [0.04675, 'deg', '2.68'],
    [293.15, 'degC', '20'],
    [293.15, 'degF', '68'],
  ])('writes %f in %s as %s', (value, symbol, text) => {
    expect(writeQuantity(value, unit(symbol))).toBe(text);
  });

  it('writes inches as decimals and ratios as percentages where asked', () => {
    expect(writeQuantity(0.05715, unit('in'), { inches: 'decimal' })).toBe('2.25');
    expect(writeQuantity(0.1, unit(''), { ratio: 'percent' })).toBe('10%');
  });

  it('stands before its unit', () => {
    expect(writeWithUnit(0.05715, unit('in'))).toBe('2 1/4 in');
    expect(writeWithUnit(0.1, unit(''))).toBe('0.1');
    expect(writeWithUnit(0.1, unit(''), { ratio: 'percent' })).toBe('10%');
  });

  it('reads back to the same value for every sixteenth', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20000, max: 20000 }), (parts) => {
        const value = (parts / 16) * 0.0254 + 0;
        expect(readingOf(writeQuantity(value, unit('in')), length, { unit: 'in' }).value).toBe(
          value,
        );
      }),
    );
  });
});

describe('writeTape', () => {
  it.each([
    [1.6129, `5' 3 1/2"`],
    [1.8288, `6'`],
    [0.009525, `3/8"`],
    [-1.6002, `-5' 3"`],
    [0.3047, `1'`],
    [0, `0"`],
  ])('writes %f m as %s', (value, text) => {
    expect(writeTape(value)).toBe(text);
  });

  it('reads back within half a sixteenth', () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 100, noNaN: true }), (value) => {
        const back = Number(readingOf(writeTape(value), length).value);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(0.0254 / 32 + 1e-12);
      }),
    );
  });
});

describe('writeExact', () => {
  it.each([
    [63.5 * 0.0254, 'in', '63 1/2 in'],
    [-0.375 * 0.0254, 'in', '-3/8 in'],
    [(5 / 64) * 0.0254, 'in', '5/64 in'],
    [0.45, 'mm', '450 mm'],
    [8 * 0.3048, 'ft', '8 ft'],
    [0.1, '', '0.1'],
    [0, 'in', '0 in'],
  ])('writes %f in %s as %s', (value, symbol, text) => {
    expect(writeExact(value, unit(symbol))).toBe(text);
  });

  it('reads back to the identical length, whatever it is', () => {
    fc.assert(
      fc.property(finite, fc.constantFrom('in', 'ft', 'mm', 'm'), (value, symbol) => {
        const back = readingOf(writeExact(value, unit(symbol)), length).value;
        expect(back === value).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('reads back to the identical quantity in every unit', () => {
    fc.assert(
      fc.property(finite, fc.constantFrom(...UNITS), (value, written) => {
        const kind = written.offset === 0 ? quantity(written.dimension) : TEMPERATURE_POINT;
        expect(readingOf(writeExact(value, written), kind).value === value).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it.each(['psf/ft', 'lb/ft^3', 'USD/h', 'USD/ft', 'yd^3', 'degC*h', 'lbf*ft'])(
    'reads back to the identical quantity in %s',
    (symbol) => {
      const { dimension } = unit(symbol);
      fc.assert(
        fc.property(finite, (value) => {
          const back = readingOf(writeExact(value, unit(symbol)), quantity(dimension)).value;
          expect(back === value).toBe(true);
        }),
      );
    },
  );
});

describe('numberText', () => {
  it.each([
    [8.0791234, 4, '8.079'],
    [24, 4, '24'],
    [106712.3, 4, '106700'],
    [0.04073, 4, '0.04073'],
    [1 / 3, 6, '0.333333'],
    [-0, 4, '0'],
    [1234567, 9, '1234567'],
    [0.0000001234, 3, '0.000000123'],
  ])('writes %f with %i digits as %s', (number, digits, text) => {
    expect(numberText(number, digits)).toBe(text);
  });

  it('stands at four digits unless told', () => {
    expect(numberText(Math.PI)).toBe('3.142');
  });
});

describe('plainDecimal', () => {
  it('reads back to the same number and has no exponent', () => {
    fc.assert(
      fc.property(finite, (number) => {
        expect(plainDecimal(number)).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Number(plainDecimal(number)) === number).toBe(true);
      }),
    );
  });
});

describe('writeDuration', () => {
  // Hours and minutes of 3,600 and 60 s, by definition.
  it.each([
    [4800, '1 h 20 min'],
    [7200, '2 h'],
    [2700, '45 min'],
    [0, '0 h'],
    [3599.99, '1 h'],
    [-1800, '-30 min'],
    [36000, '10 h'],
    [125880, '35 h'],
    [125640, '34.9 h'],
  ])('writes %s s as %s', (seconds, text) => {
    expect(writeDuration(seconds)).toBe(text);
  });
});

describe('writeDate', () => {
  it.each(['2026-10-14', '2026-10-14 07:30', '2026-10-14 07:30:15', '1999-12-31'])(
    'writes %s as it was read',
    (text) => {
      expect(writeDate(Number(readingOf(text, DATE).value))).toBe(text);
    },
  );
});

describe('the usual unit', () => {
  it('of every unit’s dimension measures the same thing', () => {
    for (const known of UNITS) {
      expect(usualUnit(known.dimension).dimension).toEqual(known.dimension);
    }
  });
});
