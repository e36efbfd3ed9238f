import { describe, expect, it } from 'vitest';
import { functionNames } from '../../src/formula/index.ts';
import { LENGTH, PLAIN, TEXT, quantity } from '../../src/units/index.ts';
import { Desk, expectReckoned, reckon, refused } from './reckon.ts';

describe('a formula', () => {
  // Arithmetic and SP 811 factors, worked by hand.
  it.each([
    ['7.79 ft to m', 2.374392],
    ['1/2 in to mm', 12.7],
    ['-1/2 in to mm', -12.7],
    ['+1/2 in to mm', 12.7],
    ['3 yd^3 to ft^3', 81],
    ['1/2 in^2 to in^2', 0.5],
    ['3 * 1/2 in to in', 1.5],
    ['2 ft/3 in', 8],
    ['5 ft - -1/2 in to in', 60.5],
    ['5 ft + 6 in to in', 66],
    ['5 ft - 6 in to in', 54],
    ['6 ft to in', 72],
    ['1 m^3/108 to L', 1000 / 108],
    ['1/108 m^3 to L', 1000 / 108],
    ['80 lb/ft^3 to pcf', 80],
    ['6 USD / 3 USD', 2],
    ['in^2 to mm^2', 645.16],
    ['3 * in to in', 3],
    ['150 psf/ft * 2 ft to psf', 300],
    ['1 lb * 9.80665 m/s^2 to lbf', 1],
    ['1 gal to in^3', 231],
    ['60 mph to m/s', 26.8224],
    ['180 deg to rad', Math.PI],
    ['1 day to min', 1440],
    ['1 kN to lbf', 1000 / 4.4482216152605],
    ['1 kPa to psi', 0.14503773773],
    ['-2^2', -4],
    ['2^3^2', 512],
    ['2^-1', 0.5],
    ['8/2/2', 2],
    ['1 - 2 - 3', -4],
    ['1 > 2 ? 1 : 2 > 1 ? 5 : 6', 5],
    ['true ? 5 ft : 3 ft to in', 60],
    ['(4 ft^2)^(1/2) to ft', 2],
    ['sqrt(4 ft^2) to ft', 2],
    ['abs(-3 ft) to ft', 3],
    ['round(2.5)', 3],
    ['round(-2.5)', -3],
    ['up_to_step(5.2 ft, 6 in) to in', 66],
    ['sin(30 deg)', 0.5],
    ['cos(60 deg)', 0.5],
    ['tan(45 deg)', 1],
    ['atan(1) to deg', 45],
    ['atan2(1 ft, 1 ft) to deg', 45],
    ['pi', Math.PI],
    ['max(1 ft, 30 in) to in', 30],
    ['max([1 ft, 30 in]) to in', 30],
    ['mean(1 ft, 2 ft) to in', 18],
    ['sum([1, 2, 3])', 6],
    ['count_where(true, false, true)', 2],
  ] as const)('%s is %s', (formula, value) => {
    expectReckoned(formula, value, 1e-9 * Math.abs(value));
  });

  it.each([
    ['true or false and false', true],
    ['not true and false', false],
    ['not (true and false)', true],
    ['"a" == \'a\'', true],
    ['"3/8\\"" == "3/8\\""', true],
    ['"a" != "b"', true],
    ['5 ft == 60 in', true],
    ['any(false, true)', true],
    ['all(true, false)', false],
  ])('%s is %s', (formula, value) => {
    expect(reckon(formula)).toBe(value);
  });

  it('may run over several lines', () => {
    expectReckoned('(5 ft +\n  6 in) to in', 66, 1e-9);
    expectReckoned('5 ft +\n6 in to in', 66, 1e-9);
    expect(refused('5 ft +\n\n6 lb').span.start).toBe(0);
    expect(refused('5 ft +\n\nnothing').span).toEqual({ start: 8, end: 15 });
  });

  it('takes in for inches and for nothing else', () => {
    expectReckoned('1/4 in / 48 in', 0.25 / 48, 1e-15);
    expectReckoned('2in to mm', 50.8, 1e-9);
    expect(reckon('"5 ft in a row"')).toBe('5 ft in a row');
    expect(refused('5 ft in').found).toContain('side by side');
    const desk = new Desk({ posts: { in: [PLAIN, [1]] }, here: { y: [PLAIN, [1]] } });
    expect(desk.only('sum(posts.in)')).toBe(1);
  });

  it('shows the unit after to and keeps the kind', () => {
    const read = new Desk().read('5 ft to in', quantity(LENGTH));
    expect(read).toMatchObject({ shownIn: { symbol: 'in' }, kind: quantity(LENGTH) });
    expect(new Desk().only('5 ft to in')).toBe(1.524);
  });
});

describe('a bare name', () => {
  const sheets = {
    job: { width: [quantity(LENGTH), [1]], deep: [quantity(LENGTH), [2]] },
    here: { width: [quantity(LENGTH), [7]] },
    other: { width: [quantity(LENGTH), [3, 4]] },
  } as const;

  it('is a column of the same row, else a job input, else a unit', () => {
    const desk = new Desk(sheets);
    expect(desk.only('width')).toBe(7);
    expect(desk.only('deep')).toBe(2);
    expect(desk.only('ft')).toBe(0.3048);
    expect(desk.only('job.width')).toBe(1);
  });

  it('must be one that stands somewhere', () => {
    expect(refused('depth', new Desk(sheets)).found).toContain('“depth”');
  });
});

describe('a column of another sheet', () => {
  const sheets = {
    posts: {
      lean: [quantity(LENGTH), [1, 2, 3]],
      chosen: [{ type: 'flag' }, [true, false, true]],
    },
    bags: { mix: [TEXT, ['a', 'b']], yield: [PLAIN, [4, 5]] },
  } as const;

  it('is the same row where this row follows that sheet', () => {
    const desk = new Desk(sheets, 'holes', { sheet: 'posts', where: 'chosen' });
    expect(desk.work('posts.lean * 2')).toEqual([{ value: 2 }, { value: 6 }]);
  });

  it('is a whole column elsewhere, and must meet an aggregate', () => {
    const problem = refused('1 + bags.yield', new Desk(sheets));
    expect(problem.under).toBe('bags.yield');
    expect(problem.found).toContain('whole column');
    expect(problem.fix).toMatch(/sum\(bags\.yield\).*value_for/);
  });

  it.each(['sum', 'min', 'max', 'mean', 'count', 'first'])('may meet %s', (name) => {
    expect(typeof new Desk(sheets).only(`${name}(bags.yield)`)).toBe('number');
  });
});

describe('the functions of the language', () => {
  // The names that outside users rely on.
  const PROMISED =
    'lean_angle top_offset combined_gap lean_bearing post_bow pivot_height strength_left gate_sag depth_by_height hole_width_by_post square_width lateral_embedment lateral_embedment_restrained lateral_capacity width_for_capacity soil_bearing sand_capacity clay_capacity frost_grip velocity_pressure wall_force_coefficient open_area_factor fence_wind round_hole square_hole tapered_hole crown whole_bags strength_fraction age_for_strength maturity equivalent_age screw_lateral nail_lateral screw_withdrawal nail_withdrawal dressed stock_length price_at_markup price_at_margin markup_of_margin margin_of_markup sum min max mean count count_where first any all pick value_for given abs sqrt ceil floor round up_to_step sin cos tan atan atan2';

  it.each(PROMISED.split(' '))('include %s', (name) => {
    expect(functionNames()).toContain(name);
  });
});
