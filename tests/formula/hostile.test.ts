import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isFormula } from '../../src/formula/index.ts';
import { FLAG, LENGTH, PLAIN, TEXT, choiceOf, quantity } from '../../src/units/index.ts';
import { Desk, NOTHING, refused } from './reckon.ts';

const DESK = new Desk({
  job: { width: [quantity(LENGTH), [1]], blank: [PLAIN, [NOTHING]], zero: [PLAIN, [0]] },
  here: {
    x: [PLAIN, [2, NOTHING, -1]],
    flag: [FLAG, [true, NOTHING, false]],
    rock: [choiceOf(['firm', 'loose']), ['firm', NOTHING, 'loose']],
  },
  posts: { y: [PLAIN, [1, NOTHING]], ok: [FLAG, [true, false]], key: [TEXT, ['a', 'b']] },
});

describe('a name of the language below', () => {
  it.each([
    '__proto__',
    'constructor',
    'prototype',
    'toString',
    'valueOf',
    'hasOwnProperty',
    'isPrototypeOf',
    '__defineGetter__',
  ])('%s stands for nothing', (name) => {
    expect(refused(name, DESK).found).toContain(`“${name}”`);
    expect(refused(`${name}()`, DESK).found).toContain(`“${name}”`);
    expect(refused(`${name}.x`, DESK).found).toContain(`“${name}”`);
    expect(refused(`job.${name}`, DESK).found).toContain(`“${name}”`);
    expect(refused(`posts.${name}`, DESK).found).toContain(`“${name}”`);
    expect(refused(`5 ${name}`, DESK).found).toContain(`“${name}”`);
    expect(refused(`1 ft to ${name}`, DESK).found).toContain(`“${name}”`);
  });

  it.each(['eval("1")', 'import("x")', 'parse("1")', 'evaluate("1")', 'unit("ft")', 'require(1)'])(
    '%s is no function',
    (formula) => {
      expect(refused(formula).found).toContain('no function');
    },
  );
});

describe('a formula without end', () => {
  it.each<[string, string, number]>([
    ['1,000 brackets', '('.repeat(1000) + '1', 40],
    ['100,000 brackets', '('.repeat(100_000), 2000],
    ['a name of 1 MB', 'a'.repeat(1_000_000), 2000],
    ['a number of 1 MB', '1'.repeat(1_000_000), 2000],
    ['a text of 1 MB', `"${'x'.repeat(1_000_000)}"`, 2000],
    ['1 MB of sums', '1+'.repeat(500_000) + '1', 2000],
  ])('%s is refused where it is too much', (_, formula, place) => {
    expect(refused(formula).span.start).toBe(place);
  });

  it.each<[string, string]>([
    ['minus signs', '-'.repeat(1990) + '1'],
    ['nots', 'not '.repeat(490) + 'true'],
    ['powers', '2^'.repeat(990) + '1'],
    ['conditions', 'true?1:'.repeat(280) + '1'],
    ['sums', '1+'.repeat(240) + '1'],
    ['too many sums', '1+'.repeat(990) + '1'],
    ['points', 'a' + '.a'.repeat(990)],
    ['calls', 'abs('.repeat(40) + '1' + ')'.repeat(40)],
    ['lists', '['.repeat(40) + '1' + ']'.repeat(40)],
    ['comparisons', '1<'.repeat(990) + '1'],
    ['products side by side', 'a '.repeat(990)],
  ])('of as many %s as fit is answered', (_, formula) => {
    const read = DESK.read(formula);
    if (isFormula(read)) expect(DESK.work(formula)).not.toEqual([]);
    else expect(read.found).not.toBe('');
  });
});

const tree = fc.letrec<{ any: string; leaf: string }>((tie) => ({
  leaf: fc.constantFrom(
    ...'0 1 2 -1 0.5 1e308 1e-300 3 x blank zero flag true false rock width pi'.split(' '),
    '5 ft',
    '-15 degC',
    '1/2 in',
    '3 lb',
    '2 USD',
    '"firm"',
    '"a"',
    '30 deg',
    '48 h',
    'posts.y',
    'posts.ok',
    'job.width',
  ),
  any: fc.oneof(
    { maxDepth: 5, depthIdentifier: 'tree' },
    tie('leaf'),
    fc
      .tuple(
        tie('any'),
        fc.constantFrom('+', '-', '*', '/', '^', '<', '<=', '==', '!=', '>', 'and', 'or'),
        tie('any'),
      )
      .map(([a, sign, b]) => `(${a} ${sign} ${b})`),
    fc.tuple(tie('any'), tie('any'), tie('any')).map(([a, b, c]) => `(${a} ? ${b} : ${c})`),
    tie('any').map((a) => `(-${a})`),
    tie('any').map((a) => `(not ${a})`),
    fc
      .tuple(
        fc.constantFrom(
          ...'abs sqrt ceil floor round sin cos tan atan sum min max mean count first any all count_where'.split(
            ' ',
          ),
        ),
        tie('any'),
      )
      .map(([name, a]) => `${name}(${a})`),
    fc
      .tuple(
        fc.constantFrom(
          ...'given max min sum atan2 up_to_step pick round_hole square_hole whole_bags lean_angle price_at_margin'.split(
            ' ',
          ),
        ),
        tie('any'),
        tie('any'),
      )
      .map(([name, a, b]) => `${name}(${a}, ${b})`),
  ),
}));

// Plain numbers only, so that most trees can be read.
const sums = fc.letrec<{ number: string }>((tie) => ({
  number: fc.oneof(
    { maxDepth: 6, depthIdentifier: 'sums' },
    fc.constantFrom(...'0 1 2 -1 0.5 1e308 -1e308 1e-300 x blank zero pi'.split(' ')),
    fc
      .tuple(tie('number'), fc.constantFrom('+', '-', '*', '/', '^'), tie('number'))
      .map(([a, sign, b]) => `(${a} ${sign} ${b})`),
    fc
      .tuple(tie('number'), fc.constantFrom('<', '>=', '=='), tie('number'), tie('number'))
      .map(([a, sign, b, c]) => `(${a} ${sign} ${b} ? ${b} : ${c})`),
    fc
      .tuple(fc.constantFrom('abs', 'sqrt', 'ceil', 'floor', 'round'), tie('number'))
      .map(([name, a]) => `${name}(${a})`),
    fc
      .tuple(
        fc.constantFrom('given', 'max', 'sum', 'mean', 'up_to_step'),
        tie('number'),
        tie('number'),
      )
      .map(([name, a, b]) => `${name}(${a}, ${b})`),
  ),
}));

/** Every row comes to a value, to names it waits for, or to a message; anything else throws. */
function expectAnswers(formula: string): void {
  const read = DESK.read(formula);
  if (!isFormula(read)) {
    expect(read.found).not.toBe('');
    expect(read.span.start).toBeGreaterThanOrEqual(0);
    expect(read.span.end).toBeLessThanOrEqual(formula.length);
    expect(read.span.end).toBeGreaterThanOrEqual(read.span.start);
    return;
  }
  for (const outcome of DESK.work(formula)) {
    if ('value' in outcome && typeof outcome.value === 'number')
      expect(Number.isFinite(outcome.value)).toBe(true);
    if ('waits' in outcome) expect(outcome.waits).not.toEqual([]);
    if ('message' in outcome) expect(outcome.message).not.toMatch(/NaN|Infinity/);
  }
}

describe('whatever is typed', () => {
  it('is a value, a wait or a message, never NaN, Infinity or a throw', () => {
    fc.assert(fc.property(tree.any, expectAnswers), { numRuns: 1500 });
  });

  it('is so for deep arithmetic on the edge of numbers', () => {
    fc.assert(fc.property(sums.number, expectAnswers), { numRuns: 1500 });
  });

  it('is so for any pieces of the language in any order', () => {
    const pieces = fc.constantFrom(
      ...'1 0 2.5 x ft in degC to ( ) [ ] , + - * / ^ < == != > ? : . and or not true "a" \' " sum( given( posts . y job % ; = & 1e400 ½ 5\' null'.split(
        ' ',
      ),
    );
    const glue = fc.constantFrom('', ' ', '\n');
    fc.assert(
      fc.property(fc.array(fc.tuple(pieces, glue), { maxLength: 14 }), (parts) => {
        expectAnswers(parts.flat().join(''));
      }),
      { numRuns: 3000 },
    );
  });

  it('is so for any characters', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 60 }), expectAnswers), {
      numRuns: 2000,
    });
  });
});
