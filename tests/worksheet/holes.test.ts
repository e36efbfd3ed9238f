import { describe, expect, it } from 'vitest';
import { expectNear, si } from '../trade/si.ts';
import { amount, cellOf, siteOf, stopsOf, typeInto } from './site.ts';
import { bags, materials, shown } from './take-off.ts';

type Typed = Readonly<Record<string, string>>;
const hole = (inputs: Typed = {}, cells: Typed = {}) =>
  siteOf(inputs, [{ remedy: 'replace', ...cells }]);
const inches = (book: ReturnType<typeof hole>, column: string) =>
  amount(book, 'holes', '1', column, 'in');
const cubicFeet = (book: ReturnType<typeof hole>, column = 'concrete') =>
  amount(book, 'holes', '1', column, 'ft^3');

describe('the holes', () => {
  it('are a row for each post to be replaced', () => {
    const book = siteOf({}, [
      { remedy: 'replace' },
      { remedy: 'mend' },
      {},
      { rock_test: 'snapped' },
    ]);
    expect(shown(book, 'holes', 'post')).toEqual(['1', '4']);
    typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { remedy: 'leave' });
    expect(shown(book, 'holes', 'post')).toEqual(['4']);
  });

  it('keep what was typed for them with their post', () => {
    const book = siteOf({}, [{ remedy: 'replace' }, { remedy: 'replace' }]);
    typeInto(book, 'holes', book.sheet('holes')!.rowId(1), { width: '16 in' });
    typeInto(book, 'posts', book.sheet('posts')!.rowId(0), { remedy: 'leave' });
    expect(shown(book, 'holes', 'width')).toEqual(['16']);
    expect(cellOf(book, 'holes', '2', 'width').suggested).toBe('12');
  });
});

describe('the depth rule', () => {
  // 6 ft: F567 asks 24 + 2 x 3 = 30 in; 8 ft: 36 in. Frost 36 + 6 = 42 in.
  it.each<[string, Typed, number, string]>([
    ['greatest of nothing entered', {}, 30, 'local minimum'],
    ['greatest, with frost', { frost_depth: '36 in' }, 42, 'below frost'],
    ['greatest, with shallow frost', { frost_depth: '12 in' }, 30, 'local minimum'],
    ['greatest, for a high fence', { fence_height: '8 ft' }, 36, 'by height'],
    ['greatest, with no local least', { local_min_depth: '' }, 30, 'by height'],
    [
      'greatest, with no local least and frost',
      { local_min_depth: '', frost_depth: '36 in' },
      42,
      'below frost',
    ],
    ['local minimum', { depth_rule: 'local minimum', frost_depth: '36 in' }, 30, 'local minimum'],
    [
      'local minimum of its own',
      { depth_rule: 'local minimum', local_min_depth: '24 in' },
      24,
      'local minimum',
    ],
    ['by height', { depth_rule: 'by height', fence_height: '4 ft' }, 24, 'by height'],
    ['below frost', { depth_rule: 'below frost', frost_depth: '20 in' }, 26, 'below frost'],
    [
      'below frost with its own margin',
      { depth_rule: 'below frost', frost_depth: '20 in', frost_margin: '12 in' },
      32,
      'below frost',
    ],
  ])('%s', (_, inputs, depth, rule) => {
    const book = hole(inputs);
    expectNear(inches(book, 'embedment'), depth, 1e-9);
    expect(cellOf(book, 'holes', '1', 'governing_rule').text).toBe(rule);
    // The hole is that plus gravel.
    expectNear(inches(book, 'depth'), depth + 6, 1e-9);
  });

  it.each<[string, Typed, RegExp]>([
    ['below frost', { depth_rule: 'below frost' }, /waits for .*frost depth/],
    ['local minimum', { depth_rule: 'local minimum', local_min_depth: '' }, /waits for .*local/],
    [
      'ground and wind',
      { depth_rule: 'ground and wind' },
      /waits for .*(wind speed|lateral|exposure)/,
    ],
  ])('%s waits for what it needs', (_, inputs, note) => {
    expect(cellOf(hole(inputs), 'holes', '1', 'embedment')).toMatchObject({
      state: 'waiting',
      note: expect.stringMatching(note) as string,
    });
  });

  it('gives way to what is typed, and shows both', () => {
    const book = hole();
    typeInto(book, 'holes', book.sheet('holes')!.rowId(0), { embedment: '40 in' });
    expect(cellOf(book, 'holes', '1', 'embedment')).toMatchObject({ text: '40', suggested: '30' });
    expectNear(inches(book, 'depth'), 46, 1e-9);
    expect(cellOf(book, 'holes', '1', 'governing_rule').text).toBe('typed');
    typeInto(book, 'job', 'job', { depth_rule: 'below frost' });
    expect(cellOf(book, 'holes', '1', 'governing_rule').text).toBe('typed');
  });

  const windy = {
    depth_rule: 'ground and wind',
    wind_speed: '115 mph',
    exposure: 'B',
    soil: 'clay',
    stock_lengths: '8, 20 ft',
  };

  it('ground and wind takes a typed bearing over the soil, and doubles the table value only', () => {
    const used = (inputs: Typed) =>
      Number(siteOf(inputs).sheet('job')!.cell(0, 'ground_bearing').value) / si(1, 'psf/ft');
    // IBC 2012 Table 1806.2: clay 100 psf/ft.
    expectNear(used({ soil: 'clay' }), 100, 1e-9);
    expectNear(used({ soil: 'clay', motion_allowed: 'yes' }), 200, 1e-9);
    expectNear(used({ soil: 'clay', bearing: '130 psf/ft' }), 130, 1e-9);
    expectNear(used({ bearing: '130 psf/ft', motion_allowed: 'yes' }), 130, 1e-9);
  });

  it('ground and wind takes the diagonal of a square hole', () => {
    const run = (inputs: Typed) => {
      const posts = Array.from({ length: 13 }, (_, at) => ({
        station: `${at * 8} ft`,
        remedy: 'replace',
      }));
      return amount(siteOf({ ...windy, ...inputs }, posts), 'holes', '7', 'embedment', 'ft');
    };
    // A square of 12 / sqrt 2 in has a diagonal of 12 in.
    expectNear(run({ hole_shape: 'square', hole_width: `${12 / Math.SQRT2} in` }), run({}), 1e-6);
  });
});

describe('the concrete of a hole', () => {
  it('is hole less post above the gravel, and the crown', () => {
    // Hand-worked: (113.0973 - 12.25) x 30 = 3025.42; crown 83.87; 3109.3 in^3 = 1.7994 ft^3.
    expectNear(cubicFeet(hole()), 1.7994, 0.0001);
  });

  it.each<[string, Typed, number]>([
    // (144 - 12.25) x 30 + frustum 2/3 (144 + 12.25 + 42) - 24.5 = 3952.5 + 107.67 in^3.
    ['in a square hole', { hole_shape: 'square' }, 4060.17],
    // (113.0973 - 30.25) x 30 + 2/3 (113.0973 + 30.25 + 58.491) - 60.5.
    ['round a 6x6', { post_size: '6x6' }, 2485.42 + 74.06],
    // (113.0973 - 3.5 x 5.5) x 30 + 2/3 (113.0973 + 19.25 + 46.660) - 38.5.
    ['round a 4x6', { post_size: '4x6' }, 2815.42 + 80.84],
    // Area of a 2 3/8 in circle 4.4301: (113.0973 - 4.4301) x 30 + 2/3 (113.0973 + 4.4301 + 22.3838) - 8.8603.
    ['round a pipe', { post_size: '2 3/8 in round' }, 3260.02 + 84.41],
    // No crown: (113.0973 - 12.25) x 30.
    ['without a crown', { crown_height: '0 in' }, 3025.42],
    // Stopped 6 in below grade: x 24.
    ['stopped below grade', { top_of_concrete: '-6 in', crown_height: '0 in' }, 2420.34],
    // A collar 2 in above grade: x 32, no crown.
    ['with a collar above grade', { top_of_concrete: '2 in', crown_height: '0 in' }, 3227.11],
    // The crown stands on the collar.
    ['with a crown on a collar', { top_of_concrete: '2 in' }, 3227.11 + 83.87],
    // Without gravel the hole is 30 deep: the same concrete.
    ['without gravel', { gravel_depth: '0 in' }, 3109.29],
    ['in a wider hole', { hole_width: '16 in', crown_height: '0 in' }, (201.0619 - 12.25) * 30],
  ])('%s', (_, inputs, cubicInches) => {
    expectNear(cubicFeet(hole(inputs)) * 1728, cubicInches, 0.02);
  });

  it('has no crown where the concrete ends below grade: an error that says so', () => {
    const book = hole({ top_of_concrete: '-6 in' });
    expect(cellOf(book, 'holes', '1', 'concrete')).toMatchObject({
      state: 'wrong',
      note: expect.stringMatching(/below grade.*crown to 0/) as string,
    });
    expect(stopsOf(book, 'job', 'crown_below_grade')).toHaveLength(1);
    expect(cellOf(book, 'holes', '1', 'bags').state).toBe('wrong');
  });

  it('takes waste on what is ordered, and not on what is net', () => {
    const book = hole({ waste: '20%' });
    expectNear(cubicFeet(book), 1.7994, 0.0001);
    expectNear(cubicFeet(book, 'concrete_ordered'), 1.7994 * 1.2, 0.0001);
    expectNear(cubicFeet(hole({ waste: '0' }), 'concrete_ordered'), 1.7994, 0.0001);
  });

  it('takes the real size of the post, said beside its name', () => {
    expectNear(inches(hole(), 'post_width'), 3.5, 1e-9);
    expectNear(inches(hole({ post_size: '6x6' }), 'post_width'), 5.5, 1e-9);
    expectNear(amount(hole({ post_size: '100 mm' }), 'holes', '1', 'post_width', 'mm'), 100, 1e-9);
    expectNear(
      amount(hole({ post_size: '125 x 75 mm' }), 'holes', '1', 'post_width', 'mm'),
      75,
      1e-9,
    );
    expect(siteOf({ post_size: '4x6' }).sheet('job')!.cell(0, 'post_side').text).toBe('3 1/2');
    expect(cellOf(hole({}, { post_size: '6x6' }), 'holes', '1', 'post_size').text).toBe('6x6');
  });

  it('can not be for a post of no known size', () => {
    expect(cellOf(hole({ post_size: 'thick' }), 'holes', '1', 'concrete')).toMatchObject({
      state: 'wrong',
      note: expect.stringContaining('“thick”') as string,
    });
  });
});

describe('a hole stopped short', () => {
  const short = (cells: Typed = {}) =>
    hole({}, { depth_reached: '18 in', stopped_by: 'rock', ...cells });

  it('gets no gravel, and its shortfall is what is wanted less what is reached', () => {
    expectNear(inches(short(), 'gravel'), 0, 1e-12);
    expectNear(inches(short(), 'depth'), 18, 1e-9);
    expectNear(inches(short(), 'shortfall'), 12, 1e-9);
    expectNear(cubicFeet(short()) * 1728, (113.0973 - 12.25) * 18 + 83.87, 0.02);
  });

  it('gets the gravel its row asks for, and is shorter by it', () => {
    expectNear(inches(short({ gravel: '4 in' }), 'gravel'), 4, 1e-9);
    expectNear(inches(short({ gravel: '4 in' }), 'shortfall'), 16, 1e-9);
  });

  it('has its stop, with the number, beside bags that count as dug', () => {
    const book = short();
    expect(stopsOf(book, 'holes', 'short_hole')).toMatchObject([
      {
        level: 'stop',
        rowName: 'hole 1',
        message: expect.stringMatching(/18 in.*12 in/) as string,
      },
    ]);
    // 1899.1 in^3 x 1.1 / 1036.8 = 2.02.
    expect(cellOf(book, 'holes', '1', 'bags').text).toBe('3');
    expect(bags(book, '80 lb')).toBe('3/3');
  });

  it('is not one that reached its depth', () => {
    const whole = hole({}, { depth_reached: '36 in' });
    expectNear(inches(whole, 'gravel'), 6, 1e-9);
    expectNear(inches(whole, 'shortfall'), 0, 1e-12);
    expect(stopsOf(whole, 'holes', 'short_hole')).toEqual([]);
  });
});

describe('the post stock', () => {
  it('is the shortest that serves', () => {
    // 72 + 2 + 30 = 104 in.
    expect(cellOf(hole(), 'holes', '1', 'post_stock').text).toBe('10');
  });

  it('that fits exactly is a stop', () => {
    // 72 + 2 + 22 = 96 in = 8 ft.
    const exact = hole({ depth_rule: 'local minimum', local_min_depth: '22 in' });
    expect(cellOf(exact, 'holes', '1', 'post_stock').text).toBe('8');
    expect(stopsOf(exact, 'holes', 'exact_stock')).toMatchObject([{ level: 'stop' }]);
    const under = hole({ depth_rule: 'local minimum', local_min_depth: '21 in' });
    expect(stopsOf(under, 'holes', 'exact_stock')).toEqual([]);
  });

  it('that is too short anywhere is a stop that names the longest', () => {
    // 72 + 2 + 78 = 152 in.
    const long = hole({ frost_depth: '72 in' });
    expect(cellOf(long, 'holes', '1', 'post_stock')).toMatchObject({
      state: 'wrong',
      note: expect.stringContaining('12 ft') as string,
    });
    expect(stopsOf(long, 'holes', 'post_stock')).toMatchObject([
      { level: 'stop', rowName: 'hole 1' },
    ]);
  });
});

describe('the bags', () => {
  const twice = (inputs: Typed = {}) =>
    siteOf(inputs, [{ remedy: 'replace' }, { remedy: 'replace' }]);

  it('are rounded up once for the job, or for each hole', () => {
    // 2 x 1.7994 x 1.1 = 3.9587 ft^3 / 0.6 = 6.6.
    expect(bags(twice(), '80 lb')).toBe('7/8');
    expect(materials(twice())).toContain('7 bag 80 lb concrete mix');
    expect(materials(twice({ bag_rounding: 'by hole' }))).toContain('8 bag 80 lb concrete mix');
    expect(materials(twice({ mix: '60 lb', bag_rounding: 'by hole' }))).toContain(
      '10 bag 60 lb concrete mix',
    );
  });

  it('of a mix of their own count as well', () => {
    const book = twice({ mix: 'fast 50' });
    expect(cellOf(book, 'holes', '1', 'bags')).toMatchObject({ state: 'wrong' });
    const id = book.addRow('bags');
    typeInto(book, 'bags', id, { mix: 'fast 50', yield: '0.4 ft^3', price: '9' });
    // 3.9587 / 0.4 = 9.9.
    expect(bags(book, 'fast 50')).toBe('10/10');
    expect(cellOf(book, 'holes', '1', 'bags').text).toBe('5');
    expect(cellOf(book, 'bags', 'fast 50', 'cost').text).toBe('90.00');
  });

  it('wait for a yield that is not known', () => {
    const book = twice();
    typeInto(book, 'bags', book.sheet('bags')!.rowId(0), { yield: '' });
    expect(cellOf(book, 'bags', '80 lb', 'by_job')).toMatchObject({ state: 'waiting' });
    expect(cellOf(book, 'bags', '60 lb', 'by_job').text).toBe('9');
  });

  it('are none where nothing is dug', () => {
    expect(bags(siteOf({}), '80 lb')).toBe('0/0');
    expect(materials(siteOf({}))).toEqual([]);
  });

  it('over 51 lb come with a caution', () => {
    expect(stopsOf(twice(), 'bags', 'lifting')).toMatchObject([{ level: 'caution' }]);
    expect(stopsOf(twice({ mix: '50 lb' }), 'bags', 'lifting')).toEqual([]);
  });
});

describe('the material list', () => {
  it('groups posts by size and length, largest first', () => {
    const book = siteOf({}, [
      { remedy: 'replace' },
      { remedy: 'replace', post_size: '6x6' },
      { remedy: 'replace', post_top: '100 in' },
      { remedy: 'replace' },
    ]);
    expect(materials(book).filter((line) => line.includes('post'))).toEqual([
      '1 each 4x4 post 12',
      '1 each 6x6 post 10',
      '2 each 4x4 post 10',
    ]);
  });

  it('stands in the same order whatever was typed first', () => {
    const typed = (...sizes: string[]) =>
      materials(
        siteOf(
          {},
          sizes.map((post_size) => ({ remedy: 'replace', post_size })),
        ),
      ).slice(0, 3);
    expect(typed('6x6', '100 mm', '8x8')).toEqual(typed('8x8', '6x6', '100 mm'));
    expect(typed('4x4', '6x6').slice(0, 2)).toEqual(['1 each 6x6 post 10', '1 each 4x4 post 10']);
  });

  it('rails go with the bays beside new posts, all bays, or none', () => {
    const run = (new_rails: string) =>
      materials(siteOf({ new_rails }, [{}, { remedy: 'replace' }, {}, {}])).find((line) =>
        line.includes('rail'),
      );
    expect(run('bays beside new posts')).toBe('6 each 2x4 rail 8');
    expect(run('all bays')).toBe('9 each 2x4 rail 8');
    expect(run('no bay')).toBeUndefined();
  });
});
