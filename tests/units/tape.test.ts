import { describe, expect, it } from 'vitest';
import { LENGTH, quantity } from '../../src/units/index.ts';
import { doubtOf, millimetres, problemOf, readingOf } from './reads.ts';

const length = quantity(LENGTH);
const inches = { unit: 'in' };

// The inch is 25.4 mm and the foot 304.8 mm, both exactly: NIST SP 811 (2008), App. B.8.
// Twelve digits after the point of a millimetre are more than a double keeps of these.
describe('a length that can be read in one way', () => {
  it.each([
    [`5'-3 1/2"`, 1612.9],
    [`5' 3½"`, 1612.9],
    [`5′-3½″`, 1612.9],
    [`5’3 1/2”`, 1612.9],
    [`5' 3 1/2`, 1612.9],
    [`5'3.5"`, 1612.9],
    ['5 ft 3 1/2 in', 1612.9],
    ['5 feet 3-1/2 inches', 1612.9],
    ['5´3´´', 1600.2],
    [`5'3''`, 1600.2],
    [`5'–3"`, 1600.2],
    [`5\u2009'\u00a03\u202f"`, 1600.2],
    [`6'`, 1828.8],
    [`6'-0"`, 1828.8],
    ['6-ft', 1828.8],
    [`5.25'`, 1600.2],
    ['5.3 ft', 1615.44],
    [`1 1/4"`, 31.75],
    [`1-1/4"`, 31.75],
    ['450mm', 450],
    ['450 MM', 450],
    ['0.45 m', 450],
    ['0,45 m', 450],
    ['45 cm', 450],
    ['1,200.5 mm', 1200.5],
    ['1.200,5 mm', 1200.5],
    ['1 200 mm', 1200],
    [`12"ø`, 304.8],
    [`8'oc`, 2438.4],
    [`16" o.c.`, 406.4],
    [`-5' 3"`, -1600.2],
    [`3" below grade`, -76.2],
    [`2" above grade`, 50.8],
    [`2" proud`, 50.8],
    ['2 yd', 1828.8],
    ['0', 0],
    ['0.0', 0],
  ])('%s is %f mm', (text, expected) => {
    expect(millimetres(text)).toBeCloseTo(expected, 9);
  });

  it.each([
    ['63.5', 1612.9],
    ['5 3/4', 146.05],
    ['1¼', 31.75],
    ['1 ¼', 31.75],
    ['1 1 / 4', 31.75],
    ['3⁄8', 9.525],
    ['⅜', 9.525],
    ['-3/8', -9.525],
    ['−3/8', -9.525],
    ['- 3/8', -9.525],
    ['+3/8', 9.525],
    ['.5', 12.7],
    ['10 dia', 254],
  ])('%s in a column of inches is %f mm', (text, expected) => {
    expect(millimetres(text, inches)).toBeCloseTo(expected, 9);
    expect(readingOf(text, length, inches)).toMatchObject({ unit: 'in', unitAssumed: true });
  });

  it('takes its own unit before the one of the column', () => {
    expect(readingOf('450 mm', length, inches)).toEqual({ value: 0.45, unit: 'mm' });
  });

  it('takes a comma as the file does', () => {
    expect(millimetres('1,200', { unit: 'mm', decimal: '.' })).toBeCloseTo(1200, 9);
    expect(millimetres('1,200', { unit: 'm', decimal: ',' })).toBeCloseTo(1200, 9);
    expect(millimetres('1.200', { unit: 'mm', decimal: ',' })).toBeCloseTo(1200, 9);
    expect(millimetres('2,40', { unit: 'm', decimal: ',' })).toBeCloseTo(2400, 9);
  });

  it('is exact where the fraction is', () => {
    expect(readingOf('3/8 in', length).value).toBe(0.375 * 0.0254);
    expect(readingOf(`6'-0"`, length).value).toBe(readingOf(`6'`, length).value);
  });

  it.each([
    ['~3/8"', 9.525],
    ['abt 3/8"', 9.525],
    ['abt. 3/8"', 9.525],
    ['about 3/8 in', 9.525],
    ['approx 3/8 in', 9.525],
    ['3/8" +/-', 9.525],
  ])('%s is %f mm, more or less', (text, expected) => {
    expect(millimetres(text)).toBeCloseTo(expected, 9);
    expect(readingOf(text, length).approximate).toBe(true);
  });

  it.each([
    ['3/8 E', 'E'],
    ['E 3/8', 'E'],
    ['3/8E', 'E'],
    ['3/8" e', 'E'],
    ['3/8 in to the north', 'N'],
    ['3/8 northwest', 'NW'],
    ['1/8 downhill', 'downhill'],
    ['3/8 toward street', 'street'],
  ])('%s keeps its direction %s', (text, toward) => {
    expect(readingOf(text, length, inches).toward).toBe(toward);
  });

  // Stations of 100 ft are common practice on road and land surveys; no source.
  it('takes 1+20 as station 120 ft', () => {
    expect(readingOf('1+20', length)).toEqual({ value: 120 * 0.3048, unit: 'ft' });
    expect(millimetres('1+20', { unit: 'ft' })).toBeCloseTo(120 * 304.8, 9);
  });
});

describe('a gap with its level length', () => {
  const degrees = (text: string): number => {
    const { value, over } = readingOf(text, length);
    return (Math.atan(Number(value) / (over ?? NaN)) * 180) / Math.PI;
  };

  it.each([
    ["3/8 out in 4'", 9.525, 1219.2],
    ["3/8 in 4'", 9.525, 1219.2],
    ['3/8" out of plumb over 48"', 9.525, 1219.2],
    ['1/4 in in 4 ft', 6.35, 1219.2],
    ['1/8 per ft', 3.175, 304.8],
    ['1/8"/ft', 3.175, 304.8],
    ['5 mm/m', 5, 1000],
    ['5 per m', 5, 1000],
  ])('%s is %f mm over %f mm', (text, gap, over) => {
    const read = readingOf(text, length);
    expect(Number(read.value) * 1000).toBeCloseTo(gap, 9);
    expect(Number(read.over) * 1000).toBeCloseTo(over, 9);
  });

  // Hand-worked: atan(0.375 / 48) = 0.4476 deg, atan(0.125 / 12) = 0.5968 deg,
  // atan(0.02) = 1.1458 deg. Three digits are printed in the trade's table of slopes.
  it.each([
    ["3/8 out in 4'", 0.448],
    ['1/8 per ft', 0.597],
    ['2%', 1.146],
    ['2°', 2],
    ['2º', 2],
    ['2 deg', 2],
  ])('%s leans %f degrees', (text, expected) => {
    expect(degrees(text)).toBeCloseTo(expected, 3);
  });

  it('is a gap over 1 m where only an angle was read', () => {
    expect(readingOf('2%', length)).toMatchObject({ over: 1, unit: '%' });
    expect(readingOf('2°', length)).toMatchObject({ over: 1, unit: 'deg' });
  });

  it('does not take the bottom of a fraction for a level length', () => {
    expect(millimetres('1/8 ft')).toBeCloseTo(304.8 / 8, 9);
    expect(readingOf('1/8 ft', length).over).toBeUndefined();
  });
});

describe('a length that could mean more than one thing', () => {
  it.each([
    ['11/4', ['2 3/4 in', '1 1/4 in']],
    ['15/8', ['1 7/8 in', '1 5/8 in']],
    ['9/8', ['1 1/8 in']],
    ['1 9/8', ['2 1/8 in']],
    ["5.3'", ['5.3 ft', `5' 3"`]],
    ['5-3', [`5' 3"`]],
    ['5-8', [`5' 8"`, '5/8 in']],
    ['5 3', [`5' 3"`]],
    [`5' 14"`, ['74 in']],
    ['1,200', ['1200 in', '1.2 in']],
    ['8-May', ['5/8 in']],
    ['May-08', ['5/8 in']],
    ['5/8/2025', ['5/8 in']],
    ['2025-05-08', ['5/8 in']],
    ['45785', ['5/8 in', '45785 in']],
    ['-3/8 E', ['3/8 in E', '3/8 in W']],
    ['-3" below grade', ['-3 in', '3 in']],
    ["11/4 out in 4'", ['2 3/4 in over 4 ft', '1 1/4 in over 4 ft']],
    ['~11/4 E', ['~2 3/4 in E', '~1 1/4 in E']],
    ['63.5?', ['63.5']],
  ])('%s is asked about: %j', (text, entries) => {
    const doubt = doubtOf(text, length, inches);
    expect(doubt.doubt).toBe('reading');
    expect(doubt.choices.map(({ entry }) => entry)).toEqual(entries);
    for (const entry of entries) expect(readingOf(entry, length, inches)).toBeDefined();
  });

  // A grid program keeps 8 May 2025 as 45785, counting days from 1899-12-30.
  it('takes a count of days for a date only where the unit is small', () => {
    expect(millimetres('45785', { unit: 'ft' })).toBeCloseTo(45785 * 304.8, 6);
    expect(millimetres('45785 mm')).toBeCloseTo(45785, 9);
    expect(millimetres('39999', { unit: 'mm' })).toBeCloseTo(39999, 9);
  });

  it('says each choice in both systems', () => {
    expect(doubtOf("5.3'", length).choices.map(({ label }) => label)).toEqual([
      '5.3 ft (1615.4 mm)',
      `5' 3" (1600.2 mm)`,
    ]);
    expect(doubtOf('63.5', length).choices.map(({ label }) => label)).toEqual([
      '63.5 in (1612.9 mm)',
      '63.5 mm (2 1/2")',
    ]);
  });

  it('asks for the unit of a bare number', () => {
    expect(doubtOf('63.5', length)).toMatchObject({ doubt: 'unit' });
    expect(doubtOf('8', length).choices.map(({ entry }) => entry)).toEqual([
      '8 in',
      '8 mm',
      '8 ft',
      '8 m',
    ]);
  });

  it('asks for the unit of a number with a question mark after a space, whatever the column says', () => {
    const entries = ['63.5 in', '63.5 mm'];
    const doubt = doubtOf('63.5 ?', length, inches);
    expect(doubt.doubt).toBe('unit');
    expect(doubt.choices.map(({ entry }) => entry)).toEqual(entries);
    expect(doubtOf('3/8 ?', length, inches).doubt).toBe('unit');
    expect(doubtOf('0 ?', length, inches).doubt).toBe('unit');
  });

  it('asks about a fraction in a metric column, and about a station there', () => {
    expect(doubtOf('3/8', length, { unit: 'mm' }).choices.map(({ entry }) => entry)).toEqual([
      '3/8 in',
      '3/8 mm',
    ]);
    expect(doubtOf('1+20', length, { unit: 'm' }).choices.map(({ entry }) => entry)).toEqual([
      '120 ft',
      '120 m',
    ]);
  });

  it.each(['plumb', 'Plumb', 'ok', 'OK', '-', '–', 'level'])('asks whether %s means 0', (text) => {
    const doubt = doubtOf(text, length, inches);
    expect(doubt.doubt).toBe('reading');
    expect(doubt.choices).toEqual([
      { label: '0 in', entry: '0 in' },
      { label: 'not read', entry: '' },
    ]);
  });

  it.each(['?', '??', 'n/a', 'N/A', 'n/a (shed)', 'not taken', 'skip', 'tbd', 'na - vines'])(
    'takes %s as not taken',
    (text) => {
      expect(doubtOf(text, length, inches).doubt).toBe('not taken');
    },
  );

  it.each(['"', "''", '”', '〃', 'do.', 'ditto'])('takes %s as a ditto mark', (text) => {
    expect(doubtOf(text, length, inches).doubt).toBe('ditto');
  });
});

describe('what is not a length', () => {
  it('is quoted, with examples of what is', () => {
    expect(problemOf('3 ft-ish', length)).toEqual({
      where: '',
      found: '“3 ft-ish” is not a length I can read.',
      fix: `Write it like 36 in, 3 ft or 3' 0".`,
    });
  });

  it.each([
    '3/8 (loose)',
    '3 in or so',
    '10x24',
    '4x4',
    '1e3',
    '3/0',
    '5" 3\'',
    "5'-",
    '3 in 4',
    '1 in mm',
    "1 in '",
    '3 over in',
    '8/mm',
    'E',
    '9 parsecs',
    '3//8',
    '1.2.3',
    '',
  ])('%s is a problem', (text) => {
    expect(problemOf(text, length, inches).found).toContain('is not a length I can read.');
  });

  it('names both dimensions where the unit measures something else', () => {
    expect(problemOf('3 kg', length).found).toBe('“3 kg” is a mass; a length is needed here.');
    expect(problemOf('10 ft2', length).found).toBe('“10 ft2” is an area; a length is needed here.');
  });

  it('is anything longer than 500 characters', () => {
    expect(problemOf(`${'9'.repeat(501)} in`, length).fix).toContain('note');
  });
});
