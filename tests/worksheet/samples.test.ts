import { describe, expect, it } from 'vitest';
import { expectNear } from '../trade/si.ts';
import { amount, cellOf, stopsOf, typeInto } from './site.ts';
import { bags, materials, sample, shown } from './take-off.ts';

// All figures here are hand-worked: a 4x4 is 3.5 in and a 6x6
// 5.5 in square (NDS 2018 Supplement, Table 1A), the post stands on the gravel, and
// concrete = (hole - post) x (depth - gravel - what is left below grade) + crown, waste 10%.

describe('the run beside a tree', () => {
  const book = sample('D1-tree-run');

  it('gets its angles', () => {
    // atan(gap / 48 in).
    expect(shown(book, 'posts', 'lean_angle')).toEqual([
      '0',
      '0.45',
      '2.24',
      '2.68',
      '0.75',
      '0.15',
      '0',
    ]);
  });

  it('is out at the top by 3 3/8 in at worst, under the 12 in line', () => {
    // 2.25 / 48 x 72 = 3.375.
    expect(shown(book, 'posts', 'top_offset')[3]).toBe('3 3/8');
    expect(stopsOf(book, 'posts', 'far_out')).toEqual([]);
  });

  it('keeps the typed remedy and shows the suggested one beside it', () => {
    expect(shown(book, 'posts', 'remedy')).toEqual([
      'leave',
      're-plumb',
      'replace',
      'replace',
      're-plumb',
      'leave',
      'leave',
    ]);
    expect(cellOf(book, 'posts', '3', 'remedy').suggested).toBe('re-plumb');
    expect(cellOf(book, 'posts', '2', 'remedy').suggested).toBeUndefined();
  });

  it('takes two holes of 1.799 ft^3', () => {
    // (pi/4 x 12^2 - 3.5^2) x 30 + crown 83.9 in^3 = 3109.4 in^3 = 1.7994 ft^3.
    expect(shown(book, 'holes', 'post')).toEqual(['3', '4']);
    expectNear(amount(book, 'holes', '3', 'concrete', 'ft^3'), 1.799, 0.0005);
    expectNear(amount(book, 'holes', '4', 'depth', 'in'), 36, 1e-9);
  });

  it.each([
    ['80 lb', '7/8'],
    ['60 lb', '9/10'],
    ['50 lb', '11/12'],
  ])('takes bags of %s, %s by job and by hole', (mix, count) => {
    // 2 x 1.7994 x 1.1 = 3.9587 ft^3: /0.60 = 6.60, /0.45 = 8.80, /0.375 = 10.56; each hole half.
    expect(bags(book, mix)).toBe(count);
  });

  it('takes 10 ft posts', () => {
    // 72 + 2 + 30 = 104 in.
    expectNear(amount(book, 'holes', '3', 'post_length', 'in'), 104, 1e-9);
    expect(materials(book)).toContain('2 each 4x4 post 10');
  });
});

describe('the run on rock', () => {
  const book = sample('D2-rock');

  it('stops at the holes on the ledge and says how short they are', () => {
    expect(shown(book, 'holes', 'shortfall')).toEqual(['0', '12', '11 1/2', '0', '0']);
    const stops = stopsOf(book, 'holes', 'short_hole');
    expect(stops.map(({ rowName, level }) => [rowName, level])).toEqual([
      ['hole 2', 'stop'],
      ['hole 3', 'stop'],
    ]);
    // At least three real choices.
    expect(stops[0]!.message).toMatch(/[Mm]ove the hole.*pin.*engineer/);
  });

  it('counts the three whole holes as 10 by job and 12 by hole', () => {
    // 3 x 1.7994 x 1.1 / 0.6 = 9.897; 1.7994 x 1.1 / 0.6 = 3.30, so 4 a hole.
    const whole = sample('D2-rock');
    for (const row of [1, 2]) {
      typeInto(whole, 'posts', whole.sheet('posts')!.rowId(row), { remedy: 'leave' });
    }
    expect(bags(whole, '80 lb')).toBe('10/12');
  });

  it('counts the two short ones as dug, without gravel, where the user insists on 18 in wide', () => {
    // (pi/4 x 18^2 - 12.25) x 18 + crown = 2.633 ft^3 a hole; 2 x 2.633 x 1.1 / 0.6 = 9.65, 4.83 a hole.
    const insisted = sample('D2-rock');
    for (const row of [0, 3, 4]) {
      typeInto(insisted, 'posts', insisted.sheet('posts')!.rowId(row), { remedy: 'leave' });
    }
    for (const row of [1, 2]) {
      const id = insisted.sheet('posts')!.rowId(row);
      typeInto(insisted, 'posts', id, { hole_width: '18 in', depth_reached: '18 in' });
    }
    expectNear(amount(insisted, 'holes', '2', 'concrete', 'ft^3'), 2.633, 0.0005);
    expect(bags(insisted, '80 lb')).toBe('10/10');
    expect(stopsOf(insisted, 'holes', 'short_hole')).toHaveLength(2);
  });

  it('fills the post list with the same numbers, to be replaced', () => {
    expect(shown(book, 'posts', 'remedy')).toEqual(Array(5).fill('replace'));
    expect(shown(book, 'posts', 'depth_reached')).toEqual(['36', '18', '18 1/2', '36', '36']);
    expect(shown(book, 'holes', 'embedment')).toEqual(Array(5).fill('30'));
    expect(shown(book, 'holes', 'gravel')).toEqual(['6', '0', '0', '6', '6']);
    expect(book.asks()).toEqual([]);
  });
});

describe('the snapped post', () => {
  it('takes a new hole of 1.751 ft^3 and 4 bags', () => {
    // (113.097 - 12.25) x 30 / 1728 = 1.7508 ft^3; x 1.1 / 0.6 = 3.21.
    const book = sample('D3-snapped');
    expect(cellOf(book, 'posts', '6', 'remedy').text).toBe('replace');
    expect(cellOf(book, 'posts', '6', 'cause').text).toBe('snapped');
    expectNear(amount(book, 'holes', '6', 'concrete', 'ft^3'), 1.751, 0.0005);
    expect(bags(book, '80 lb')).toBe('4/4');
    expect(book.asks()).toEqual([]);
  });

  it('takes 7 bags where the old footing is broken out 16 in wide', () => {
    // (201.062 - 12.25) x 30 / 1728 = 3.278 ft^3; x 1.1 / 0.6 = 6.01.
    const book = sample('D3-snapped', { hole_width: '16 in' });
    expectNear(amount(book, 'holes', '6', 'concrete', 'ft^3'), 3.278, 0.0005);
    expect(bags(book, '80 lb')).toBe('7/7');
  });
});

describe('the run in the wind', () => {
  const book = sample('D4-wind');

  it('is worst at post 7', () => {
    // atan(3.5 / 48) = 4.17 deg; 3.5 / 48 x 72 = 5.25 in.
    expect(cellOf(book, 'posts', '7', 'lean_angle').text).toBe('4.17');
    expect(cellOf(book, 'posts', '7', 'top_offset').text).toBe('5 1/4');
  });

  it('takes thirteen holes of 1.769 ft^3', () => {
    // (113.097 - 30.25) x 36 + crown, 6x6: 1.769 ft^3.
    expect(book.sheet('holes')!.rowCount).toBe(13);
    expectNear(amount(book, 'holes', '7', 'concrete', 'ft^3'), 1.769, 0.0005);
    expectNear(amount(book, 'holes', '7', 'depth', 'in'), 42, 1e-9);
  });

  it.each([
    ['80 lb', '43/52'],
    ['60 lb', '57/65'],
  ])('takes bags of %s, %s by job and by hole', (mix, count) => {
    // 13 x 1.769 x 1.1 = 25.30 ft^3: /0.60 = 42.2, /0.45 = 56.2; a hole 3.24 and 4.32.
    expect(bags(book, mix)).toBe(count);
  });

  it('says that the whole run leans one way, and stops where it would only be plumbed', () => {
    expect(stopsOf(book, 'posts', 'run_leaned_one_way')).toHaveLength(1);
    const plumbed = sample('D4-wind');
    expect(plumbed.setFormula('posts', 'remedy', '"re-plumb"')).toBeUndefined();
    expect(stopsOf(plumbed, 'posts', 'run_leans_one_way').map(({ level }) => level)).toEqual([
      'stop',
    ]);
    // Old footings are 24 in deep, 36 wanted.
    expect(stopsOf(plumbed, 'posts', 'shallow_replumb')).toHaveLength(13);
  });
});

describe('the run in wet clay', () => {
  const book = sample('D5-clay-metric');

  it('is out by 1.67 deg and 52.5 mm at worst', () => {
    // atan(35 / 1200) = 1.671 deg; 35 / 1200 x 1800 = 52.5 mm.
    expect(cellOf(book, 'posts', '6', 'lean_angle').text).toBe('1.67');
    expect(cellOf(book, 'posts', '6', 'top_offset').text).toBe('52.5');
  });

  it('takes three holes of 0.04073 m^3', () => {
    // (pi/4 x 300^2 - 100^2) x 650 + crown 50 high.
    expect(shown(book, 'holes', 'post')).toEqual(['4', '5', '6']);
    expectNear(amount(book, 'holes', '4', 'concrete', 'm^3'), 0.04073, 0.000005);
    expectNear(amount(book, 'holes', '4', 'depth', 'mm'), 750, 1e-9);
  });

  it('takes 15 bags of 20 kg, or 14 and 15 where a bag makes 1/100 m^3', () => {
    // 3 x 0.04073 x 1.1 x 108 = 14.52; x 100 = 13.44, and 4.48 a hole.
    expect(bags(book, '20 kg')).toBe('15/15');
    const richer = sample('D5-clay-metric');
    const row = richer.sheet('bags')!;
    const at = shown(richer, 'bags', 'mix').indexOf('20 kg');
    typeInto(richer, 'bags', row.rowId(at), { yield: '1/100 m^3' });
    expect(bags(richer, '20 kg')).toBe('14/15');
  });

  it('takes 2.7 m posts', () => {
    // 1800 + 50 + 650 = 2500 mm; stock 2.4, 2.7, 3.0 m.
    expectNear(amount(book, 'holes', '5', 'post_length', 'mm'), 2500, 1e-9);
    expect(materials(book)).toContain('3 each 100 mm post 2.7');
  });

  it('asks once for the probe and once for the rock test, and waits', () => {
    expect(book.asks().map(({ column, row, line }) => [column, row, line])).toEqual([
      ['probe_depth', undefined, undefined],
      ['rock_test', undefined, undefined],
    ]);
    expect(cellOf(book, 'posts', '3', 'remedy').state).toBe('waiting');
  });
});

describe('the stepped slope', () => {
  // Posts above ground: fence 72 + gap 2 + the fall of the uphill bay 0, 3, 4.5, 6, 8.25, 7.5, 6.25, 5, 3.5.
  const above = [74, 77, 78.5, 80, 82.25, 81.5, 80.25, 79, 77.5];
  const stepped = (depth: string) => {
    const book = sample('D6-stepped', { local_min_depth: depth });
    above.forEach((top, row) => {
      const id = book.sheet('posts')!.rowId(row);
      typeInto(book, 'posts', id, { remedy: 'replace', post_top: `${top} in` });
    });
    return book;
  };

  it('falls 44 in over 64 ft', () => {
    const book = sample('D6-stepped');
    const drops = shown(book, 'posts', 'drop').map((_, row) =>
      Number(book.sheet('posts')!.cell(row, 'drop').value),
    );
    expectNear(drops.reduce((a, b) => a + b, 0) / 0.0254, 44, 1e-9);
    expectNear(amountOfJob(book, 'run_length') / 0.3048, 64, 1e-9);
  });

  it('fits 10 ft posts with 30 in embedded', () => {
    const book = stepped('30 in');
    // Most: 82.25 + 30.
    expectNear(amount(book, 'holes', '5', 'post_length', 'in'), 112.25, 1e-9);
    expect(shown(book, 'holes', 'post_stock')).toEqual(Array(9).fill('10'));
  });

  it('takes 12 ft for posts 3 to 8 with 42 in embedded', () => {
    // 78.5 + 42 = 120.5 to 82.25 + 42 = 124.25; 77 + 42 = 119.
    const book = stepped('42 in');
    expect(shown(book, 'holes', 'post_stock')).toEqual([
      '10',
      '10',
      '12',
      '12',
      '12',
      '12',
      '12',
      '12',
      '10',
    ]);
    expect(materials(book)).toEqual(
      expect.arrayContaining(['6 each 4x4 post 12', '3 each 4x4 post 10']),
    );
  });
});

function amountOfJob(book: ReturnType<typeof sample>, column: string): number {
  return Number(book.sheet('job')!.cell(0, column).value);
}
