import { describe, expect, it } from 'vitest';
import { isFormula, reckon as written } from '../../src/formula/index.ts';
import {
  DATE,
  FLAG,
  LENGTH,
  PLAIN,
  TEMPERATURE_POINT,
  TEXT,
  VOLUME,
  choiceOf,
  quantity,
  type Kind,
} from '../../src/units/index.ts';
import { Desk, expectReckoned, reckon, refused } from './reckon.ts';

const DESK = new Desk({
  job: {
    height: [quantity(LENGTH), [2]],
    slope: [PLAIN, [0.1]],
    rock: [choiceOf(['firm', 'loose']), ['firm']],
    note: [TEXT, ['oak']],
    ok: [FLAG, [true]],
    poured: [DATE, [0]],
    air: [TEMPERATURE_POINT, [283.15]],
  },
});

describe('kinds that do not fit', () => {
  it.each([
    ['1 ft + 3 ft^3', '1 ft + 3 ft^3', /A length and a volume are not added/],
    ['height - 5', 'height - 5', /A length and a plain number are not subtracted/],
    ['5 lb + 3 lbf', '5 lb + 3 lbf', /A mass and a force are not added/],
    ['height > 5', 'height > 5', /A length and a plain number are not compared/],
    ['(height + 1 ft) == (2 ft^2)', '(height + 1 ft) == (2 ft^2)', /A length and an area/],
    ['1 deg > 0.1', '1 deg > 0.1', /An angle and a plain number are not compared/],
    ['atan(slope) > slope', 'atan(slope) > slope', /An angle and a plain number/],
    ['1 rad == slope', '1 rad == slope', /An angle and a plain number/],
    ['rock == "solid"', 'rock == "solid"', /“solid” is not one of firm, loose/],
    ['"solid" != rock', '"solid" != rock', /“solid” is not one of firm, loose/],
    ['rock == 5', 'rock == 5', /One of firm, loose and a plain number are not compared/],
    ['"a" < "b"', '"a" < "b"', /Texts have no order/],
    ['ok > false', 'ok > false', /Yes and no have no order/],
    ['note + "b"', 'note', /text; a number is wanted/],
    ['1 + ok', 'ok', /yes or no; a number is wanted/],
    ['height ? 1 : 2', 'height', /a length; a condition is wanted/],
    ['not 5', '5', /a plain number; a condition is wanted/],
    ['ok and 1', '1', /a plain number; a condition is wanted/],
    ['ok ? 1 : "a"', '"a"', /answers differ in kind: a plain number and/],
    ['ok ? 1 ft : 1 lb', '1 lb', /a length and a mass/],
    ['[1, 2 ft]', '2 ft', /one kind/],
    ['[]', '[]', /empty/],
    ['2 ^ height', 'height', /exponent is a plain number, not a length/],
    ['height ^ slope', 'slope', /written number/],
    ['round_hole(1 lb, 1 ft)', '1 lb', /round_hole, diameter: This is a mass; a length is wanted/],
    ['soil_bearing("mud")', '"mud"', /“mud” is not one of bedrock/],
    ['sin(0.5)', 'sin(0.5)', /plain number/],
    ['ceil(5 ft)', 'ceil(5 ft)', /a length/],
    ['atan2(1 ft, 1)', 'atan2(1 ft, 1)', /a length and a plain number/],
    ['max(1 ft, 2 lb)', 'max(1 ft, 2 lb)', /a length and a mass/],
    ['count_where(1)', 'count_where(1)', /plain number/],
    ['mean("a", "b")', 'mean("a", "b")', /mean was given/],
    ['given(height, 5)', 'given(height, 5)', /a length and a plain number/],
    ['poured + poured', 'poured + poured', /A date and a date are not added/],
    ['poured + 1 ft', 'poured + 1 ft', /A date and a length/],
    ['1 day - poured', '1 day - poured', /A duration and a date/],
    ['poured * 2', 'poured', /a date; a number is wanted/],
  ])('%s are refused under “%s”', (formula, under, found) => {
    const problem = refused(formula, DESK);
    expect(problem.under).toBe(under);
    expect(problem.found).toMatch(found);
  });

  it.each([
    '5 lb + 3 lbf',
    'lateral_embedment(680 lb, 7.79 ft, 1 ft, 150 psf/ft)',
    'lateral_embedment(680 lbf, 7.79 ft, 1 ft, 150 lb/ft^3)',
    'sand_capacity(3 ft, 3 ft, 1 ft, 110 pcf, 30 deg)',
    '5 kg > 5 N',
  ])('%s says that lb is a mass and lbf a force', (formula) => {
    expect(refused(formula).fix).toMatch(/lb and kg are masses, lbf and N forces/);
  });

  it.each<[string, Kind, RegExp]>([
    ['5 ft', quantity(VOLUME), /This is a length; a volume is wanted/],
    ['"a"', choiceOf(['leave', 'mend']), /“a” is not one of leave, mend/],
    ['5', FLAG, /plain number; yes or no is wanted/],
    ['1 deg', PLAIN, /an angle; a plain number is wanted/],
    ['atan(0.1)', PLAIN, /an angle/],
    ['20 degC - 10 degC', TEMPERATURE_POINT, /temperature difference/],
  ])('%s in a column of another kind is refused', (formula, kind, found) => {
    const read = DESK.read(formula, kind);
    expect(isFormula(read) ? 'read' : read.found).toMatch(found);
  });
});

describe('kinds that fit', () => {
  it('let a date take a duration, and two dates leave one', () => {
    expect(DESK.only('poured + 3 day')).toBe(3 * 86400);
    expect(DESK.only('1 day + poured')).toBe(86400);
    expect(DESK.only('poured - 1 h')).toBe(-3600);
    expect(DESK.only('(poured + 2 day) - poured')).toBe(2 * 86400);
    expect(DESK.only('poured + 1 day > poured')).toBe(true);
  });

  it('let a pressure per depth be a force per volume', () => {
    expectReckoned('1 psf/ft to lbf/ft^3', 1, 1e-12);
  });

  it('let an angle be worked with through sin, cos and tan', () => {
    expectReckoned('6 ft * sin(90 deg) to ft', 6, 1e-12);
  });
});

describe('a temperature', () => {
  // 273.15 K is 0 degC, and 32 degF; SP 811.
  it.each([
    ['-15 degC', 258.15],
    ['50 degF', 283.15],
    ['20 degC - 15 degC', 5],
    ['20 degF - 2 degF', 10],
    ['20 degC + 5 K', 298.15],
    ['20 degC - 5 K', 288.15],
    ['5 K + 20 degC', 298.15],
    ['20 degC + (15 degC - 10 degC)', 298.15],
    ['mean([20 degC, 25 degC])', 295.65],
    ['max(20 degC, 25 degC)', 298.15],
    ['(20 degC - 15 degC) * 2', 10],
    ['540 degC*h', 540 * 3600],
    ['9 degF*h', 5 * 3600],
    ['(20 degC - 15 degC) * 3 h', 15 * 3600],
    ['abs(15 degC - 20 degC)', 5],
  ])('%s is %s in SI', (formula, value) => {
    expectReckoned(formula, value, 1e-9);
  });

  it.each([
    ['5 K - 2 K', '3 K'],
    ['2 * 5 K', '10 K'],
    ['20 degC - 15 degC', '5 K'],
    ['20 degC', '68 degF'],
    ['20 degC + 5 K', '77 degF'],
    ['32 degF to degC', '0 degC'],
    ['0 degC to degF', '32 degF'],
  ])('%s is written %s', (formula, text) => {
    expect(written(formula, { digits: 4 })).toBe(text);
  });

  it('is shown on the scale after to, and a difference as a difference', () => {
    expectReckoned('20 degC to degF', 68, 1e-9);
    expectReckoned('20 degC - 15 degC to degF', 9, 1e-9);
    expectReckoned('20 degC - 15 degC to degC', 5, 1e-9);
  });

  it('compares with a temperature', () => {
    expect(reckon('50 degF == 10 degC')).toBe(true);
    expect(DESK.only('air > 5 degC')).toBe(true);
    expect(DESK.only('air < 280 K')).toBe(false);
  });

  it.each([
    ['20 degC + 15 degC', /Two temperatures are not added/],
    ['air + air', /Two temperatures are not added/],
    ['sum([20 degC, 15 degC])', /temperatures are not added|sum was given/],
    ['20 degC * 2', /not multiplied or divided/],
    ['2 * air', /not multiplied or divided/],
    ['air / 2', /not multiplied or divided/],
    ['20 degC / 10 degC', /not multiplied or divided/],
    ['air * 3 h', /not multiplied or divided/],
    ['-air', /not negated/],
    ['-(15 degC)', /not negated/],
    ['air ^ 2', /no powers/],
    ['5 degC^2', /no powers/],
    ['5 degC^2*h', /no powers/],
    ['abs(air)', /abs was given a temperature/],
    ['sqrt(air)', /sqrt was given a temperature/],
    ['(20 degC - 15 degC) - 20 degC', /not taken from a difference/],
    ['air - 5 degC > 0 degC', /difference and a temperature are not compared/],
    ['true ? air : air - 5 degC', /differ in kind/],
  ])('%s is refused', (formula, found) => {
    const { found: said, fix } = refused(formula, DESK);
    expect(`${said} ${fix}`).toMatch(found);
  });
});
