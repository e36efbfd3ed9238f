import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ANGLE,
  AREA,
  DATE,
  DURATION,
  FLAG,
  FORCE,
  LENGTH,
  MASS,
  MONEY,
  PLAIN,
  PRESSURE_PER_DEPTH,
  SPEED,
  TEMPERATURE,
  TEMPERATURE_POINT,
  TEXT,
  VOLUME,
  choiceOf,
  isDoubt,
  isProblem,
  listOf,
  per,
  quantity,
  readEntry,
  type Kind,
} from '../../src/units/index.ts';
import { doubtOf, problemOf, readingOf } from './reads.ts';

const REMEDY = choiceOf(['leave', 're-plumb', 'mend', 'replace']);
const KINDS: readonly Kind[] = [
  quantity(LENGTH),
  quantity(VOLUME),
  quantity(MONEY),
  quantity(ANGLE),
  TEMPERATURE_POINT,
  PLAIN,
  REMEDY,
  FLAG,
  DATE,
  TEXT,
  listOf(quantity(LENGTH)),
  listOf(REMEDY),
];

describe('a quantity', () => {
  // Factors: NIST SP 811 (2008), App. B.8, printed there to seven digits where they are not exact.
  it.each([
    ['115 MPH', quantity(SPEED), 115 * 0.44704],
    ['80 lbs', quantity(MASS), 80 * 0.45359237],
    ['80#', quantity(MASS), 80 * 0.45359237],
    ['720 lbf', quantity(FORCE), 720 * 4.448222],
    ['1 cu ft', quantity(VOLUME), 0.02831685],
    ['1 ft3', quantity(VOLUME), 0.02831685],
    ['1 ft³', quantity(VOLUME), 0.02831685],
    ['2 cubic yards', quantity(VOLUME), 2 * 0.7645549],
    ['1 gal', quantity(VOLUME), 0.003785412],
    ['0.05 m3', quantity(VOLUME), 0.05],
    ['1/108 m3', quantity(VOLUME), 1 / 108],
    ['12 sq. ft.', quantity(AREA), 12 * 0.09290304],
    ['48 hours', quantity(DURATION), 172800],
    ['2 days', quantity(DURATION), 172800],
    ['68 F', TEMPERATURE_POINT, 293.15],
    ['68 °F', TEMPERATURE_POINT, 293.15],
    ['20 C', TEMPERATURE_POINT, 293.15],
    ['20°C', TEMPERATURE_POINT, 293.15],
    ['-15 degC', TEMPERATURE_POINT, 258.15],
    ['$4.50', quantity(MONEY), 4.5],
    ['4.50 USD', quantity(MONEY), 4.5],
    ['4.50', quantity(MONEY), 4.5],
    ['-$4.50', quantity(MONEY), -4.5],
    ['$1,200.00', quantity(MONEY), 1200],
    ['$65/hr', quantity(per(MONEY, DURATION)), 65 / 3600],
    ['2°', quantity(ANGLE), 0.03490659],
    ['2 deg', quantity(ANGLE), 0.03490659],
    ['10%', PLAIN, 0.1],
    ['0.1', PLAIN, 0.1],
    ['1/16 in per ft', PLAIN, 1 / 192],
    ['1/4 in in 4 ft', PLAIN, 1 / 192],
    ['5 mm/m', PLAIN, 0.005],
  ])('%s is read in SI', (text, kind, expected) => {
    const { value } = readingOf(text, kind);
    expect(Number(value) / expected).toBeCloseTo(1, 6);
  });

  // psf in Pa (47.88026) over a foot: NIST SP 811 (2008), App. B.8.
  it('reads a pressure per depth', () => {
    const { value, unit } = readingOf('150 psf/ft', quantity(PRESSURE_PER_DEPTH));
    expect(Number(value) / ((150 * 47.88026) / 0.3048)).toBeCloseTo(1, 6);
    expect(unit).toBe('psf/ft');
    expect(readingOf('150 PSF per foot', quantity(PRESSURE_PER_DEPTH)).value).toBe(value);
  });

  // Hand-worked: atan(0.02) = 1.1458 deg and atan(0.125 / 12) = 0.5968 deg.
  it.each([
    ['2%', 1.1458],
    ['1/8 per ft', 0.5968],
  ])('takes %s as an angle of %f degrees', (text, expected) => {
    const { value } = readingOf(text, quantity(ANGLE));
    expect((Number(value) * 180) / Math.PI).toBeCloseTo(expected, 4);
  });

  it('takes a temperature difference without the zero of its scale', () => {
    const difference = { type: 'quantity', dimension: TEMPERATURE, scale: 'difference' } as const;
    expect(readingOf('9 degF', difference).value).toBeCloseTo(5, 12);
  });

  it('takes a bare number in the unit that is offered', () => {
    expect(readingOf('2', quantity(DURATION), { unit: 'day' })).toEqual({
      value: 172800,
      unit: 'day',
      unitAssumed: true,
    });
    expect(readingOf('10', PLAIN, { unit: '%' }).value).toBe(0.1);
    expect(readingOf('68°', TEMPERATURE_POINT, { unit: 'degF' }).value).toBeCloseTo(293.15, 9);
  });

  it('asks for the unit of a bare number where none is offered', () => {
    expect(doubtOf('48', quantity(DURATION)).doubt).toBe('unit');
    expect(doubtOf('0', TEMPERATURE_POINT).doubt).toBe('unit');
    expect(readingOf('0', quantity(VOLUME)).value).toBe(0);
  });

  it('says that a mass is no force', () => {
    const { found, fix } = problemOf('80 lb', quantity(FORCE));
    expect(found).toBe('“80 lb” is a mass; a force is needed here.');
    expect(fix).toContain('lbf');
  });

  it.each(['80 lb or so', '€4.50', '1/0 lb', 'eighty', '5 m1'])('does not read %s', (text) => {
    expect(isProblem(readEntry(text, quantity(MASS)))).toBe(true);
    expect(isProblem(readEntry(text, quantity(MONEY)))).toBe(true);
  });
});

describe('a choice', () => {
  it.each([
    ['re-plumb', 're-plumb'],
    ['Re Plumb', 're-plumb'],
    ['REPLUMB', 're-plumb'],
    ['  mend ', 'mend'],
    ['rep', undefined],
    ['repla', 'replace'],
  ])('reads %s as %s', (text, expected) => {
    const read = readEntry(text, REMEDY);
    expect('value' in read ? read.value : undefined).toBe(expected);
  });

  it('asks which of two choices begins so', () => {
    expect(doubtOf('re', REMEDY).choices.map(({ entry }) => entry)).toEqual([
      're-plumb',
      'replace',
    ]);
  });

  it('names the choices where none fits', () => {
    expect(problemOf('burn', REMEDY).fix).toBe('Choose one of leave, re-plumb, mend, replace.');
  });

  it('takes a question mark as not taken', () => {
    expect(doubtOf('?', REMEDY).doubt).toBe('not taken');
  });
});

describe('yes and no', () => {
  it.each(['yes', 'Y', 'TRUE', 'x'])('%s is yes', (text) => {
    expect(readingOf(text, FLAG).value).toBe(true);
  });

  it.each(['no', 'N', 'False'])('%s is no', (text) => {
    expect(readingOf(text, FLAG).value).toBe(false);
  });

  it('is never guessed', () => {
    expect(problemOf('maybe', FLAG).fix).toBe('Write yes or no.');
  });
});

describe('text', () => {
  it('is kept as it stands, without the spaces around it', () => {
    expect(readingOf(' “as is”  ½ ', TEXT).value).toBe('“as is”  ½');
  });

  it('may be long', () => {
    expect(readingOf('a'.repeat(2000), TEXT).value).toHaveLength(2000);
  });
});

describe('a date', () => {
  // `date -u -d 2026-10-14 +%s` of GNU coreutils gives 1791936000.
  it.each([
    ['2026-10-14', 1791936000],
    ['2026-10-14 07:30', 1791936000 + 27000],
    ['2026-10-14T07:30', 1791936000 + 27000],
    ['14 Oct 2026', 1791936000],
    ['October 14, 2026', 1791936000],
    ['14.10.2026', 1791936000],
    ['10/14/2026', 1791936000],
    ['10/14/2026 7:30 PM', 1791936000 + 70200],
  ])('reads %s', (text, expected) => {
    expect(readingOf(text, DATE).value).toBe(expected);
  });

  it('asks which number is the month', () => {
    expect(doubtOf('10/11/2026', DATE).choices).toEqual([
      { label: '11 October 2026', entry: '2026-10-11' },
      { label: '10 November 2026', entry: '2026-11-10' },
    ]);
  });

  it.each(['2026-02-30', '2026-13-01', 'soon', '2026-10-14 25:00', '2026-10-14 07:30Z'])(
    'does not read %s',
    (text) => {
      expect(problemOf(text, DATE).fix).toBe('Write it like 2026-10-14 or 2026-10-14 07:30.');
    },
  );
});

describe('a list', () => {
  const lengths = listOf(quantity(LENGTH));

  it.each([
    ['8, 10, 12 ft', [2.4384, 3.048, 3.6576]],
    ['8,10,12 ft', [2.4384, 3.048, 3.6576]],
    ['8 ft, 10 ft', [2.4384, 3.048]],
    [`8'; 10'; 12'`, [2.4384, 3.048, 3.6576]],
    ['2.4, 2.7, 3.0 m', [2.4, 2.7, 3]],
    ['8 ft', [2.4384]],
  ])('%s has one unit for all', (text, expected) => {
    const read = readingOf(text, lengths);
    expect(read.value).toHaveLength(expected.length);
    expected.forEach((length, place) => {
      expect((read.value as number[])[place]).toBeCloseTo(length, 12);
    });
    expect(read.unitAssumed).toBeUndefined();
  });

  it('asks about its one doubtful item with the whole list as the answer', () => {
    expect(doubtOf('8, 11/4, 12 in', lengths).choices.map(({ entry }) => entry)).toEqual([
      '8; 2 3/4 in; 12 in',
      '8; 1 1/4 in; 12 in',
    ]);
  });

  it('asks for a unit once', () => {
    expect(doubtOf('8, 10', lengths).choices.map(({ entry }) => entry)).toEqual([
      '8; 10 in',
      '8; 10 mm',
      '8; 10 ft',
      '8; 10 m',
    ]);
  });

  it('asks whether a comma stands inside a number', () => {
    expect(doubtOf('1,200 mm', lengths).choices.map(({ entry }) => entry)).toEqual([
      '1; 200 mm',
      '1200 mm',
    ]);
  });

  it('does not pass over a wrong item', () => {
    expect(problemOf('8 ft, long, 10 ft', lengths).found).toContain('“long”');
  });
});

describe('any entry at all', () => {
  const fragment = fc.constantFrom(
    ...'0 1 3 8 11 / - . , + % ? " \' ft in mm m E N ~ ( ) ½ ″ ° x ; at of per over below May 2025'.split(
      ' ',
    ),
    ' ',
  );
  const entries = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.array(fragment, { maxLength: 9 }).map((parts) => parts.join('')),
    fc.array(fragment, { maxLength: 9 }).map((parts) => parts.join(' ')),
  );
  const options = fc.record(
    {
      unit: fc.constantFrom('in', 'ft', 'mm', 'm', '%', 'USD', 'degF', 'nonsense', ''),
      decimal: fc.constantFrom('.' as const, ',' as const),
    },
    { requiredKeys: [] },
  );

  it('is read, asked about or refused, and never throws', () => {
    fc.assert(
      fc.property(entries, fc.constantFrom(...KINDS), options, (text, kind, given) => {
        const read = readEntry(text, kind, given);
        if (isProblem(read)) return read.found !== '' && read.fix !== '';
        if (isDoubt(read)) return read.question !== '';
        return [read.value].flat().every((value) => !Number.isNaN(value));
      }),
      { numRuns: 5000 },
    );
  });

  it('is offered only answers that can be read, or that leave the cell blank', () => {
    fc.assert(
      fc.property(entries, fc.constantFrom(...KINDS), options, (text, kind, given) => {
        const read = readEntry(text, kind, given);
        if (isProblem(read) || !isDoubt(read)) return;
        for (const { entry } of read.choices) {
          if (entry !== '') expect(readEntry(entry, kind, given)).toHaveProperty('value');
        }
      }),
      { numRuns: 5000 },
    );
  });

  it('reads the same with smart quotes, primes and thin spaces', () => {
    const marks = fc.constantFrom(
      ["'", '"', ' '],
      ['’', '”', '\u00a0'],
      ['′', '″', '\u2009'],
      ['´', '´´', '\u202f'],
      ["'", "''", ' '],
    );
    fc.assert(
      fc.property(fc.nat(40), fc.nat(11), fc.nat(15), marks, (feet, inch, parts, marked) => {
        const [foot, inches, space] = marked;
        const plain = `${feet}' ${inch} ${parts}/16"`;
        const dressed = plain.replace(/ /g, space).replace(/"/, inches).replace(/'/, foot);
        expect(readEntry(dressed, quantity(LENGTH))).toEqual(readEntry(plain, quantity(LENGTH)));
      }),
    );
  });

  // A pattern that tries every way to split its text would still be at it when the runner gives up.
  it('answers, whatever it repeats', () => {
    const longest = 500;
    for (const part of ['1 ', '1,000', '-', ' in ', "5'", '/', 'to the ', '1-1', '?', '(', ', ']) {
      for (const kind of KINDS)
        expect(readEntry(part.repeat(longest).slice(0, longest), kind)).toBeDefined();
    }
  });
});
