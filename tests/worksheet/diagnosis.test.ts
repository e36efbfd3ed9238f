import { describe, expect, it } from 'vitest';
import { expectNear } from '../trade/si.ts';
import { amount, cellOf, expectPlainStops, siteOf, stopsOf, typeInto } from './site.ts';
import { sample, shown } from './take-off.ts';

const SOUND = { lean_gap: '1', level_length: '48', probe_depth: '0', rock_test: 'firm' };
const causeOf = (cells: Readonly<Record<string, string>>): string =>
  cellOf(siteOf({}, [{ ...SOUND, ...cells }]), 'posts', '1', 'cause').text;

// The signs are common practice, no source; their geometry is worked beside them.
describe('the likely cause', () => {
  it.each([
    // 7/8 less half of 1 is 3/8 in of bow; half of 1 is none.
    ['bowed or twisted', { gap_mid: '7/8' }],
    ['leans, footing firm', { gap_mid: '1/2' }],
    ['bowed or twisted', { twist: '6 deg' }],
    ['gate sag', { diagonal_long: '74.06', diagonal_short: '72.42', leaf_height: '60' }],
    ['soil against it', { grade_difference: '4' }],
    ['shallow footing', { rock_test: 'moves at grade', footing_depth: '24' }],
    ['footing turning', { rock_test: 'moves at grade', footing_depth: '30' }],
    ['heaved', { top_above_line: '1' }],
    ['wet ground', { standing_water: '3' }],
  ] as const)('is %s', (cause, cells) => {
    expect(causeOf(cells)).toBe(cause);
  });

  it('is the tree where the lean fades away from a trunk', () => {
    // A 14 in trunk at station 20: distances 20, 12, 4, 4, 12, 20, 28 ft; 18 trunk diameters are 21 ft.
    const book = sample('D1-tree-run', { tree_station: '20 ft', tree_trunk: '14 in' });
    expect(shown(book, 'posts', 'cause')).toEqual([
      'none seen', 'tree', 'tree', 'tree', 'tree', 'none seen', 'none seen',
    ]); // prettier-ignore
    expectNear(amount(book, 'posts', '6', 'tree_distance', 'ft'), 20, 1e-9);
    expect(stopsOf(book, 'posts', 'pushed_on').map(({ rowName }) => rowName)).toEqual([
      'post 2',
      'post 5',
    ]);
  });

  it('is the wind where the whole run leans one way', () => {
    const book = sample('D4-wind');
    const posts = book.sheet('posts')!;
    for (let row = 0; row < posts.rowCount; row++)
      typeInto(book, 'posts', posts.rowId(row), { rock_test: 'firm', probe_depth: '0' });
    expect(new Set(shown(book, 'posts', 'cause'))).toEqual(new Set(['wind over the run']));
    // 3 1/2 in at post 7 of 13 is the most, 48 ft from both ends.
    const middle = Array.from({ length: posts.rowCount }, (_, row) => posts.rowId(row)).filter(
      (row) =>
        book.pointers('posts', row, 'cause').some((words) => words.includes('leans most here')),
    );
    expect(middle).toEqual([posts.rowId(6)]);
  });

  it('looks for heave between the tops of two neighbors, not above the line alone', () => {
    // 1 1/4 less the mean of 1 and 1: 1/4 in, under the sign of 1/2.
    const tops = (...all: string[]) =>
      shown(
        siteOf(
          {},
          all.map((top_above_line) => ({ ...SOUND, top_above_line })),
        ),
        'posts',
        'cause',
      )[1];
    expect(tops('1', '1 1/4', '1')).not.toBe('heaved');
    expect(tops('0', '1 1/4', '0')).toBe('heaved');
  });

  it('gives way to the estimator’s, and keeps both', () => {
    const book = siteOf({}, [{ ...SOUND, cause: 'wet ground', why: 'pond after rain' }]);
    expect(cellOf(book, 'posts', '1', 'cause')).toMatchObject({
      text: 'wet ground',
      suggested: 'leans, footing firm',
    });
  });
});

describe('a reading more', () => {
  it('tells where the post turns', () => {
    // 0.4 in at 6 in and 1.9 at 60: 6 - 0.4 x 54 / 1.5 = -8.4 in.
    const moves = { move_low: '0.4', height_low: '6', move_high: '1.9', height_high: '60' };
    expectNear(amount(siteOf({}, [moves]), 'posts', '1', 'pivot', 'in'), -8.4, 1e-9);
  });

  it('tells how far a gate sags', () => {
    // (74.06^2 - 72.42^2) / 240 = 1.0 in.
    const gate = { diagonal_long: '74.06', diagonal_short: '72.42', leaf_height: '60' };
    expectNear(amount(siteOf({}, [gate]), 'posts', '1', 'sag', 'in'), 1, 0.005);
  });

  it('tells where a lean on two faces goes', () => {
    // 3/8 N and 1/2 E: 5/8 in, atan(4/3) = 53.13 deg.
    const book = siteOf({}, [
      { lean_gap: '3/8', lean_toward: 'N', lean_gap_along: '1/2', along_toward: 'E' },
    ]);
    expectNear(amount(book, 'posts', '1', 'lean_total', 'in'), 0.625, 1e-9);
    expectNear(amount(book, 'posts', '1', 'leans_to', 'deg'), 53.13, 0.005);
  });

  it('on the other face is asked for at a corner and a gate', () => {
    const faces = (cells: Readonly<Record<string, string>>) =>
      stopsOf(siteOf({}, [{ ...SOUND, ...cells }]), 'posts', 'one_face').length;
    expect(faces({ post_type: 'corner' })).toBe(1);
    expect(faces({ post_type: 'corner', lean_gap_along: '0' })).toBe(0);
    expect(faces({ post_type: 'line' })).toBe(0);
  });
});

describe('a remedy otherwise than suggested', () => {
  it('is asked for its reason once, gently, and keeps it', () => {
    const book = siteOf({}, [{ ...SOUND, remedy: 'replace' }, SOUND]);
    expect(stopsOf(book, 'posts', 'no_why').map(({ level }) => level)).toEqual(['caution']);
    expect(book.asks()).toEqual([]);
    typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { why: 'owner wants it new' });
    expect(stopsOf(book, 'posts', 'no_why')).toEqual([]);
    expect(stopsOf(siteOf({}, [SOUND]), 'posts', 'no_why')).toEqual([]);
  });
});

describe('a fence that guards something', () => {
  const open = (inputs: Readonly<Record<string, string>>) =>
    siteOf(inputs, [{ ...SOUND, remedy: 'replace' }])
      .stops()
      .map(({ rule }) => rule)
      .filter((rule) => /pool|dog/.test(rule));

  // 48 in least and 4 in gaps: US CPSC pool barrier guidelines.
  it.each([
    [[], {}],
    [['pool_open', 'pool_barrier'], { fence_guards: 'a pool' }],
    [['pool_barrier'], { fence_guards: 'a pool', gap_closed: 'yes' }],
    [['dog_loose'], { fence_guards: 'a dog' }],
    [[], { fence_guards: 'a dog', gap_closed: 'yes' }],
    [
      ['pool_too_low', 'pool_barrier'],
      { fence_guards: 'a pool', gap_closed: 'yes', fence_height: '47 in' },
    ],
    [['pool_barrier'], { fence_guards: 'a pool', gap_closed: 'yes', fence_height: '48 in' }],
    [
      ['pool_gap', 'pool_barrier'],
      { fence_guards: 'a pool', gap_closed: 'yes', ground_gap: '5 in' },
    ],
  ])('is made safe first: %j', (rules, inputs) => {
    expect(open(inputs as Record<string, string>)).toEqual(rules);
  });

  it('speaks plainly', () => {
    expectPlainStops(
      siteOf({ fence_guards: 'a pool' }, [{ ...SOUND, remedy: 'replace' }]),
      'posts',
    );
  });
});

describe('the return visit', () => {
  const book = siteOf({}, [
    { ...SOUND, lean_gap: '0' },
    { ...SOUND, lean_gap: '1' },
    { ...SOUND, lean_gap: '1/4' },
  ]);
  const view = book.sheet('return_visit')!;
  typeInto(book, 'return_visit', view.rowId(0), { gap_again: '1/4' });
  typeInto(book, 'return_visit', view.rowId(1), { gap_again: '1/2', level_again: '24' });

  it('reads the same gaps beside the first and says what changed', () => {
    // 1/2 in over 24 is 1 in over 48: no change; 1/4 in over 48 is within 1/16 in per ft, on the line.
    expect(shown(book, 'return_visit', 'first_gap')).toEqual(['0', '1', '1/4']);
    expect(shown(book, 'return_visit', 'change')).toEqual(['1/4', '0', '']);
    expect(shown(book, 'return_visit', 'proof')).toEqual(['plumb', 'out', 'not read']);
  });

  it('keeps what is out on the snag list until it is put right', () => {
    expect(stopsOf(book, 'return_visit', 'out_again').map(({ rowName }) => rowName)).toEqual([
      'post 2',
    ]);
    typeInto(book, 'return_visit', view.rowId(1), { put_right: 'yes' });
    expect(stopsOf(book, 'return_visit', 'out_again')).toEqual([]);
    expectPlainStops(book, 'return_visit');
  });
});
