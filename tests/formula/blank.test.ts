import { describe, expect, it } from 'vitest';
import { FLAG, LENGTH, PLAIN, choiceOf, quantity } from '../../src/units/index.ts';
import { ASKED, Desk, NOTHING, noValue } from './reckon.ts';

const DESK = new Desk({
  job: {
    x: [PLAIN, [NOTHING]],
    y: [PLAIN, [NOTHING]],
    unread: [PLAIN, [ASKED]],
    five: [PLAIN, [5]],
    zero: [PLAIN, [0]],
    flag: [FLAG, [NOTHING]],
    other: [FLAG, [NOTHING]],
    yes: [FLAG, [true]],
    no: [FLAG, [false]],
    rock: [choiceOf(['firm', 'loose']), [NOTHING]],
    height: [quantity(LENGTH), [NOTHING]],
  },
});

describe('a blank', () => {
  it.each([
    ['x + five', ['job.x']],
    ['five * x', ['job.x']],
    ['0 * x', ['job.x']],
    ['x ^ 0', ['job.x']],
    ['1 ^ x', ['job.x']],
    ['-x', ['job.x']],
    ['x + y', ['job.x', 'job.y']],
    ['x > five', ['job.x']],
    ['rock == "firm"', ['job.rock']],
    ['not flag', ['job.flag']],
    ['max(five, x)', ['job.x']],
    ['sum([five, x, y])', ['job.x', 'job.y']],
    ['round_hole(1 ft, height)', ['job.height']],
    ['sqrt(x)', ['job.x']],
    ['unread + 1', ['job.unread']],
    ['x + unread', ['job.unread', 'job.x']],
  ])('is not zero: %s waits for %s', (formula, waits) => {
    expect(DESK.only(formula)).toEqual(waits);
  });

  it.each([
    ['yes or flag', true],
    ['flag or yes', true],
    ['no and flag', false],
    ['flag and no', false],
    ['not (flag and no)', true],
    ['flag or (no or yes)', true],
    ['five > 3 or x > 3', true],
    ['x > 3 and five < 3', false],
    ['any(flag, yes)', true],
    ['all(flag, no)', false],
    ['1/zero > 1 or yes', true],
    ['no and 1/zero > 1', false],
    ['unread > 1 or yes', true],
  ])('does not matter where the answer is sure: %s is %s', (formula, value) => {
    expect(DESK.only(formula)).toBe(value);
  });

  it.each([
    ['no or flag', ['job.flag']],
    ['flag or no', ['job.flag']],
    ['yes and flag', ['job.flag']],
    ['flag and yes', ['job.flag']],
    ['flag and other', ['job.flag', 'job.other']],
    ['(flag and no) or other', ['job.other']],
    ['any(no, flag)', ['job.flag']],
    ['all(flag, yes)', ['job.flag']],
    ['not (flag or no)', ['job.flag']],
  ])('matters where it decides: %s waits for %s', (formula, waits) => {
    expect(DESK.only(formula)).toEqual(waits);
  });

  it.each([
    ['yes ? five : x', 5],
    ['no ? x : five', 5],
    ['five > 3 ? five : 1/zero', 5],
    ['yes ? five : unread', 5],
    ['no and x > 1 ? x : five', 5],
  ])('in a branch not taken is not needed: %s is %s', (formula, value) => {
    expect(DESK.only(formula)).toBe(value);
  });

  it.each([
    ['flag ? x : y', ['job.flag']],
    ['yes ? x : y', ['job.x']],
    ['no ? x : y', ['job.y']],
  ])('is named only where it could change the answer: %s waits for %s', (formula, waits) => {
    expect(DESK.only(formula)).toEqual(waits);
  });
});

describe('given', () => {
  it.each([
    ['given(x, 7)', 7],
    ['given(five, 7)', 5],
    ['given(zero, 7)', 0],
    ['given(x + five, 7)', 7],
    ['given(flag, true)', true],
    ['given(no, true)', false],
    ['given(x, given(y, 3))', 3],
    ['given(five, 1/zero)', 5],
    ['given(five, x)', 5],
  ])('%s is %s', (formula, value) => {
    expect(DESK.only(formula)).toBe(value);
  });

  it('answers for a blank and for nothing else', () => {
    expect(DESK.only('given(unread, 7)')).toEqual(['job.unread']);
    expect(DESK.only('given(x + unread, 7)')).toEqual(['job.unread', 'job.x']);
    expect(DESK.only('given(1 / zero, 7)')).toEqual([expect.stringContaining('divides by zero')]);
    expect(DESK.only('given(x, y)')).toEqual(['job.x', 'job.y']);
  });
});

describe('what has no value is a message', () => {
  it.each([
    ['1 / 0', /divides by zero/],
    ['0 / 0', /divides by zero/],
    ['-1 / 0', /divides by zero/],
    ['0 ^ -1', /Zero has no such power/],
    ['(-1) ^ 0.5', /negative number has no such power/],
    ['2 ^ 1024', /too large/],
    ['1e308 * 1e308', /too large/],
    ['1e308 + 1e308', /too large/],
    ['-1e308 - 1e308', /too large/],
    ['1e308 / 1e-308', /too large/],
    ['sum(1e308, 1e308)', /too large/],
    ['sqrt(-1)', /negative number has no square root/],
    ['tan(90 deg)', /right angle/],
    ['atan2(0 ft, 0 ft)', /no direction/],
    ['up_to_step(5 ft, 0 ft)', /step/],
    ['up_to_step(5 ft, -1 ft)', /step/],
    ['whole_bags(1 ft^3, 0 ft^3)', /yield/],
    ['lean_angle(1 in, 0 in)', /level/],
    ['stock_length(13 ft, [8 ft, 10 ft, 12 ft])', /12 ft/],
    ['open_area_factor(0.6)', /0\.7/],
    ['dressed("abc")', /“abc”/],
  ])('%s', (formula, message) => {
    expect(noValue(formula)).toMatch(message);
    expect(noValue(formula).replace(/“[^”]*”/g, '')).not.toMatch(/NaN|Infinity|invalid|failed|!/);
  });

  it('flows on by name, not as a number', () => {
    expect(DESK.only('1 + 2 * (five / zero)')).toEqual([
      expect.stringContaining('divides by zero'),
    ]);
    expect(DESK.only('max(1, five / zero)')).toEqual([expect.stringContaining('divides by zero')]);
  });
});
