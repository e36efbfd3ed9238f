import { describe, expect, it } from 'vitest';
import { amount, cellOf, expectPlainStops, siteOf, stopsOf, typeInto } from './site.ts';
import { expectNear } from '../trade/si.ts';
import { holeTable } from '../../src/output/index.ts';
import { bags, materials, sample } from './take-off.ts';

// The force stands 3 ft up: 3 in of gap and 0.55 of 5 ft. 12 x 30 wanted; the second hole meets rock.
const JOB = { fence_height: '5 ft', ground_gap: '3 in', depth_rule: 'local minimum' };
const rocky = (cells: Record<string, string> = {}, inputs: Record<string, string> = {}) =>
  siteOf({ ...JOB, ...inputs }, [
    { remedy: 'replace' },
    { remedy: 'replace', depth_reached: '18 in', stopped_by: 'rock', ...cells },
  ]);
const rockRow = (book: ReturnType<typeof rocky>) => book.sheet('holes')!.rowId(1);

describe('a hole stopped by rock', () => {
  // Hand-worked from IBC 1807.3.2.1 at 3 ft: 18 in deep, 18 in wide holds 39% of 12 x 30, 24 in 52%;
  // as much takes about 46 in of width.
  it.each([
    { width: '18 in', share: 0.39 },
    { width: '24 in', share: 0.52 },
  ])('holds $share of what was wanted at $width wide', ({ width, share }) => {
    const book = rocky({ hole_width: width });
    expectNear(amount(book, 'holes', '2', 'capacity_left'), share, 0.005);
    expectNear(amount(book, 'holes', '2', 'equal_width', 'in'), 46, 0.5);
  });

  it('shows what that width would cost in concrete', () => {
    // Hand-worked: a 46.1 in cylinder 18 in deep is 17.4 ft3; less a 4x4, 0.128; the crown 2 in high, 0.66.
    const book = rocky();
    expectNear(amount(book, 'holes', '2', 'equal_concrete', 'ft^3'), 17.9, 0.3);
    expect(amount(book, 'holes', '2', 'concrete', 'ft^3')).toBeLessThan(1.4);
  });

  it('stops the work until somebody chooses, then says what was chosen', () => {
    const book = rocky();
    const [stop, ...others] = stopsOf(book, 'holes', 'short_hole');
    expect(others).toEqual([]);
    expect(stop?.level).toBe('stop');
    expect(stop?.rowName).toBe('hole 2');
    expect(stop?.message).toMatch(/12 in.*26%.*45 15\/16 in.*engineer/);
    // It leads to the cell where the choice is made, which is in sight only while a hole is short.
    expect(stop?.settle).toEqual({ sheet: 'holes', row: rockRow(book), column: 'rock_choice' });
    expect(book.sheet('holes')!.isFilled?.('rock_choice', 9)).toBe(true);
    expect(rocky({ depth_reached: '' }).sheet('holes')!.isFilled?.('rock_choice', 9)).toBe(false);
    typeInto(book, 'holes', rockRow(book), { rock_choice: 'pin to rock' });
    expect(stopsOf(book, 'holes', 'short_hole')).toEqual([]);
    const [caution] = stopsOf(book, 'holes', 'short_hole_settled');
    expect(caution?.level).toBe('caution');
    expect(caution?.message).toContain('pin to rock');
    expect(caution?.message).toContain('engineer');
    book.undo();
    expect(stopsOf(book, 'holes', 'short_hole')).toHaveLength(1);
    expectPlainStops(book, 'holes');
  });

  it('offers real choices, and widening is none of them', () => {
    const column = rocky()
      .sheet('holes')!
      .columns.find(({ id }) => id === 'rock_choice');
    expect(column?.choices).toEqual([
      'not chosen',
      'dig on',
      'move the hole',
      'pin to rock',
      'driven post',
      'tie to the next footing',
      'engineer',
    ]);
  });

  it('asks nothing of a hole that reached its depth', () => {
    const book = rocky();
    for (const column of ['rock_choice', 'capacity_left', 'equal_width', 'equal_concrete']) {
      expect(cellOf(book, 'holes', '1', column).state).toBe('blank');
    }
  });

  it('weighs the hole as dug against the wind', () => {
    const book = rocky({}, { wind_speed: '115 mph', exposure: 'B', soil: 'sand' });
    const [holds, asks] = ['capacity', 'wind_force'].map((column) =>
      amount(book, 'holes', '2', column, 'lbf'),
    );
    expect(holds).toBeLessThan(asks!);
    expectNear(amount(book, 'holes', '2', 'used'), asks! / holds!, 1e-9);
  });
});

// D2: three holes reach their depth, two stop on a ledge at 18 and 18 1/2 in. Hand-worked: a whole hole
// is 1.7994 ft3; 12 x 18 is 1.0990 and 12 x 18 1/2 is 1.1282, post out and crown in; all x 1.1 / 0.60.
describe('what is chosen for a hole on the ledge', () => {
  const chosen = (choice: string) => {
    const book = sample('D2-rock');
    const holes = book.sheet('holes')!;
    for (const row of [1, 2]) typeInto(book, 'holes', holes.rowId(row), { rock_choice: choice });
    return book;
  };
  const list = (choice: string) =>
    materials(chosen(choice)).filter((line) => !/rail|screws/.test(line));

  it('digs as deep as wanted where the hole moves', () => {
    // 5 x 1.7994 = 8.997 -> 16.49 and 3.30 a hole; gravel 5 x 0.3927 ft3 from 0.5 ft3 bags.
    expect(bags(chosen('move the hole'), '80 lb')).toBe('17/20');
    expect(list('move the hole')).toEqual(
      expect.arrayContaining(['5 each 4x4 post 10', '4 bag 3/4 in clean stone gravel']),
    );
  });

  it('takes steel posts and pins where they are pinned to the rock', () => {
    // 74 + 18 = 92 in, from 8 ft; concrete as dug, 5.398 + 2.227 = 7.625 -> 13.98.
    expect(list('pin to rock')).toEqual(
      expect.arrayContaining([
        '3 each 4x4 post 10',
        '2 each 2 3/8 in round steel post 8',
        '8 each rock pin',
      ]),
    );
    expect(bags(chosen('pin to rock'), '80 lb')).toBe('14/18');
  });

  it('takes no concrete where steel posts are driven', () => {
    // 74 + 42 = 116 in, from 10 ft; three whole holes 9.90.
    expect(list('driven post')).toEqual(
      expect.arrayContaining(['3 each 4x4 post 10', '2 each 2 3/8 in round steel post 10']),
    );
    expect(bags(chosen('driven post'), '80 lb')).toBe('10/12');
  });

  it('adds a strip of concrete and its bars where footings are tied', () => {
    // 96 - 12 = 84 in x 8 x 8 = 3.111 ft3 each; 7.625 + 6.222 -> 25.39. Bars 2 x 2 x 84 / 240 = 1.4.
    expect(bags(chosen('tie to the next footing'), '80 lb').split('/')[0]).toBe('26');
    expect(list('tie to the next footing')).toContain('2 each reinforcing bar 20');
  });

  it('orders nothing before the engineer has answered', () => {
    expect(bags(chosen('engineer'), '80 lb')).toBe('10/12');
    expect(list('engineer')).toContain('3 each 4x4 post 10');
  });

  it('stands on the hole schedule beside what stopped it', () => {
    const [heads, , second] = holeTable(chosen('pin to rock'));
    const said = (head: string) => second![heads!.findIndex((each) => each.startsWith(head))];
    expect(said('Stopped by')).toBe('rock');
    expect(said('Stopped: what now')).toBe('pin to rock');
  });
});

describe('frost', () => {
  it('is a warning with a number beside each hole, and only where it is given', () => {
    // Hand-worked: 65 kPa on 12 in x 36 in, about 12,800 lbf.
    const deep = { frost_depth: '36 in', depth_rule: 'below frost' };
    const book = rocky({}, deep);
    expectNear(amount(book, 'holes', '1', 'frost_grip_force', 'lbf'), 12800, 20);
    const [warning] = stopsOf(book, 'holes', 'frost_grip');
    expect(warning?.level).toBe('caution');
    expect(warning?.message).toMatch(/straight and smooth.*bell/);
    expect(stopsOf(rocky(), 'holes', 'frost_grip')).toEqual([]);
  });

  it('grips no deeper than the footing reaches', () => {
    const book = rocky({}, { frost_depth: '36 in', depth_rule: 'below frost' });
    const [full, short] = ['1', '2'].map((post) =>
      amount(book, 'holes', post, 'frost_grip_force', 'lbf'),
    );
    expectNear(short! / full!, 0.5, 1e-9);
  });
});
