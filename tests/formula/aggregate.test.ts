import { describe, expect, it } from 'vitest';
import { FLAG, LENGTH, PLAIN, TEXT, choiceOf, quantity } from '../../src/units/index.ts';
import { ASKED, Desk, NOTHING, refused } from './reckon.ts';

const HOLES = {
  width: [quantity(LENGTH), [0.3, 0.4, 0.25]],
  concrete: [PLAIN, [1, 2, 4]],
  mix: [TEXT, ['a', 'b', 'c']],
  rock: [FLAG, [false, true, false]],
} as const;

describe('an aggregate', () => {
  const desk = new Desk({ holes: HOLES, job: { limit: [quantity(LENGTH), [0.28]] } });

  it.each([
    ['sum(holes.concrete)', 7],
    ['min(holes.concrete)', 1],
    ['max(holes.concrete)', 4],
    ['mean(holes.concrete)', 7 / 3],
    ['count(holes.concrete)', 3],
    ['first(holes.concrete)', 1],
    ['count_where(holes.rock)', 1],
    ['count_where(holes.width > 0.28 m)', 2],
    ['any(holes.rock)', true],
    ['all(holes.rock)', false],
    ['pick(holes.concrete, holes.rock)', 2],
    ['pick(holes.mix, holes.width == 0.25 m)', 'c'],
    ['value_for("b", holes.mix, holes.concrete)', 2],
    ['sum(holes.width > 1 ft ? holes.concrete : 0)', 2],
    ['sum(holes.width > limit ? holes.concrete : 0)', 3],
    ['sum(holes.concrete * (holes.rock ? 10 : 1))', 25],
    ['max(sum(holes.concrete), 10)', 10],
    ['sum(holes.concrete > mean(holes.concrete) ? 1 : 0)', 1],
    ['sum(whole_bags(holes.concrete * 1 ft^3, 0.6 ft^3))', 2 + 4 + 7],
    ['count(holes.concrete) * 2', 6],
  ])('goes over the rows of another sheet: %s is %s', (formula, value) => {
    expect(desk.only(formula)).toBe(value);
  });

  it('meets the values of the row it stands on', () => {
    const bags = new Desk({
      holes: HOLES,
      here: { share: [PLAIN, [1, 2]], key: [TEXT, ['c', 'a']] },
    });
    expect(bags.work('sum(holes.concrete * share)')).toEqual([{ value: 7 }, { value: 14 }]);
    expect(bags.work('sum(ceil(holes.concrete / share))')).toEqual([{ value: 7 }, { value: 4 }]);
    expect(bags.work('value_for(key, holes.mix, holes.concrete)')).toEqual([
      { value: 4 },
      { value: 1 },
    ]);
    expect(bags.work('count_where(holes.concrete > share) + share')).toEqual([
      { value: 3 },
      { value: 3 },
    ]);
  });

  it('goes over the rows of its own sheet', () => {
    const own = new Desk({ here: { share: [PLAIN, [1, 2, 5]] } });
    expect(own.work('sum(here.share)')).toEqual([{ value: 8 }, { value: 8 }, { value: 8 }]);
    expect(own.work('share / sum(here.share)')).toEqual([
      { value: 1 / 8 },
      { value: 2 / 8 },
      { value: 5 / 8 },
    ]);
    expect(own.work('count_where(here.share > share)')).toEqual([
      { value: 2 },
      { value: 1 },
      { value: 0 },
    ]);
  });

  it('goes over more rows than are worked out at a time', () => {
    const values = Array.from({ length: 1300 }, (_, at) => at + 1);
    const many = new Desk({ holes: { x: [PLAIN, values] } });
    expect(many.only('sum(holes.x)')).toBe((1300 * 1301) / 2);
    expect(many.only('max(holes.x) + min(holes.x)')).toBe(1301);
    const own = new Desk({ here: { x: [PLAIN, values] } });
    expect(own.work('count_where(here.x <= x)').at(-1)).toEqual({ value: 1300 });
  });

  it('hands a whole column to a rule that takes a list', () => {
    const yard = new Desk({ stock: { length: [quantity(LENGTH), [2.4, 3, 3.6]] } });
    expect(yard.only('stock_length(2.5 m, stock.length)')).toBe(3);
  });
});

describe('blanks in an aggregate', () => {
  const desk = new Desk({
    holes: {
      x: [PLAIN, [1, NOTHING, 3]],
      y: [PLAIN, [NOTHING, NOTHING, 7]],
      unread: [PLAIN, [1, ASKED, 3]],
      flag: [FLAG, [true, NOTHING, false]],
      no: [FLAG, [false, NOTHING, false]],
      yes: [FLAG, [true, NOTHING, true]],
      one: [FLAG, [true, false, false]],
      key: [TEXT, ['a', NOTHING, 'b']],
    },
  });

  it.each([
    ['sum(holes.x)', ['holes.x 2']],
    ['max(holes.x)', ['holes.x 2']],
    ['mean(holes.y)', ['holes.y 1', 'holes.y 2']],
    ['first(holes.y)', ['holes.y 1']],
    ['count_where(holes.flag)', ['holes.flag 2']],
    ['any(holes.no)', ['holes.no 2']],
    ['all(holes.yes)', ['holes.yes 2']],
    ['pick(holes.x, holes.flag)', ['holes.flag 2']],
    ['pick(holes.y, holes.one)', ['holes.y 1']],
    ['value_for("a", holes.key, holes.y)', ['holes.y 1']],
    ['count(holes.unread)', ['holes.unread 2']],
  ])('are named: %s waits for %s', (formula, waits) => {
    expect(desk.only(formula)).toEqual(waits);
  });

  it.each([
    ['count(holes.x)', 2],
    ['count(holes.y)', 1],
    ['count(holes.key)', 2],
    ['first(holes.x)', 1],
    ['any(holes.flag)', true],
    ['all(holes.flag)', false],
    ['pick(holes.x, holes.one)', 1],
    ['value_for("b", holes.key, holes.x)', 3],
    ['sum(given(holes.x, 0))', 4],
    ['max(given(holes.y, 0))', 7],
  ])('do not matter where the answer is sure: %s is %s', (formula, value) => {
    expect(desk.only(formula)).toBe(value);
  });
});

describe('value_for, asked by many rows', () => {
  const lookedIn = {
    key: [TEXT, ['a', 'b', 'c', 'c', NOTHING, 'd']],
    x: [PLAIN, [1, NOTHING, 3, 4, 5, ASKED]],
  } as const;
  const asking = ['a', 'b', 'c', 'd', 'e', NOTHING] as const;

  it('says of each row what it says where only that row asks', () => {
    const many = new Desk({ holes: lookedIn, here: { key: [TEXT, asking] } });
    const together = many.work('value_for(key, holes.key, holes.x)');
    const oneByOne = asking.map((key) => {
      const one = new Desk({ holes: lookedIn, job: { key: [TEXT, [key]] } });
      return one.only('value_for(job.key, holes.key, holes.x)');
    });
    expect(together.map((outcome) => ('message' in outcome ? [outcome.message] : outcome))).toEqual(
      [
        { value: 1 },
        { waits: ['holes.x 2'] },
        [expect.stringMatching(/2 rows have this key/)],
        { waits: ['holes.x 6'] },
        [expect.stringMatching(/No row has this key/)],
        { waits: ['here.key 6'] },
      ],
    );
    expect(oneByOne).toEqual([
      1,
      ['holes.x 2'],
      [expect.stringMatching(/2 rows have this key/)],
      ['holes.x 6'],
      [expect.stringMatching(/No row has this key/)],
      ['job.key'],
    ]);
  });
});

describe('an aggregate over no rows', () => {
  const desk = new Desk({ holes: { x: [PLAIN, []], flag: [FLAG, []], key: [TEXT, []] } });

  it.each([
    ['sum(holes.x)', 0],
    ['count(holes.x)', 0],
    ['count_where(holes.flag)', 0],
    ['any(holes.flag)', false],
    ['all(holes.flag)', true],
  ])('%s is %s', (formula, value) => {
    expect(desk.only(formula)).toBe(value);
  });

  it.each([
    ['min(holes.x)', /no rows/],
    ['max(holes.x)', /no rows/],
    ['mean(holes.x)', /no rows/],
    ['first(holes.x)', /no rows/],
    ['pick(holes.x, holes.flag)', /No row is picked/],
    ['value_for("a", holes.key, holes.x)', /No row has this key/],
  ])('%s has no value, and says so', (formula, message) => {
    expect(desk.only(formula)).toEqual([expect.stringMatching(message)]);
  });
});

describe('an aggregate that finds too many', () => {
  const desk = new Desk({
    holes: { x: [PLAIN, [1, 2]], flag: [FLAG, [true, true]], key: [TEXT, ['a', 'a']] },
  });

  it.each([
    ['pick(holes.x, holes.flag)', /2 rows are picked/],
    ['value_for("a", holes.key, holes.x)', /2 rows have this key/],
  ])('%s says so', (formula, message) => {
    expect(desk.only(formula)).toEqual([expect.stringMatching(message)]);
  });
});

describe('an aggregate that can not be', () => {
  const desk = new Desk({
    holes: { x: [PLAIN, [1]], mix: [choiceOf(['a']), ['a']] },
    posts: { y: [PLAIN, [1]] },
  });

  it.each([
    ['sum(holes.x * posts.y)', /holes and posts; their rows do not go together/],
    ['sum(holes.mix)', /sum was given/],
    ['count_where(holes.x)', /count_where was given/],
    ['any(holes.x)', /any was given/],
    ['pick(holes.x, holes.x)', /pick was given/],
    ['pick(1, true)', /pick looks through a sheet/],
    ['value_for(1, holes.mix, holes.x)', /value_for was given/],
    ['value_for("a", holes.mix)', /3 values, not 2/],
    ['sum(holes.x, holes.x)', /1 value, not 2/],
    ['sqrt(holes.x)', /whole column/],
    ['holes.x + 1', /whole column/],
    ['round_hole(holes.x * 1 ft, 1 ft)', /whole column/],
  ])('%s is refused', (formula, found) => {
    expect(refused(formula, desk).found).toMatch(found);
  });
});
