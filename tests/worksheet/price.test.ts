import { describe, expect, it } from 'vitest';
import { expectNear } from '../trade/si.ts';
import { addTyped, amount, expectPlainStops, siteOf, stopsOf, typeInto } from './site.ts';
import { materials, sample, shown } from './take-off.ts';
import type { Book } from '../../src/worksheet/index.ts';

// Figures are hand-worked unless a source is named beside them. Rates are inputs of the test.
const RATES = {
  crew_rate: '60',
  permit_fee: '0',
  travel_charge: '40',
  dump_charge: '85',
  treated_charge: '30',
  overhead: '10%',
  profit_way: 'margin of price',
  profit_rate: '20%',
  tax_rule: 'all',
  tax_rate: '8%',
  deposit_share: '10%',
};

function job(book: Book, column: string, unit = 'USD'): number {
  return amount(book, 'job', '', column, unit);
}

function mixPrice(book: Book, price: string): void {
  const bags = book.sheet('bags')!;
  typeInto(book, 'bags', bags.rowId(0), { price });
}

function snapped(inputs: Readonly<Record<string, string>> = {}): Book {
  const book = sample('D3-snapped', { ...RATES, ...inputs });
  mixPrice(book, '6.00');
  addTyped(book, 'prices', { item: 'post', size: '4x4', length: '10 ft', price: '22.50' });
  return book;
}

describe('the snapped post, carried to its price', () => {
  const book = snapped();

  it('weighs the old footing, 210 lb, and gives the lever as a range', () => {
    // (113.10 - 12.25) in^2 x 24 in = 1.4006 ft^3 x 150; x 12/72 = 35 lb, soil grip 2 to 4, up to 5 lb.
    expectNear(amount(book, 'removal', '6', 'footing_weight', 'lb'), 210.1, 0.1);
    expectNear(amount(book, 'removal', '6', 'lever_alone', 'lbf'), 35.02, 0.01);
    expectNear(amount(book, 'removal', '6', 'lever_low', 'lbf'), 75, 1e-6);
    expectNear(amount(book, 'removal', '6', 'lever_high', 'lbf'), 145, 1e-6);
    expectNear(amount(book, 'removal', '6', 'loose', 'yd^3'), 0.0875, 0.0001);
  });

  it('takes 5 h 20 min over two visits', () => {
    // Pull 40, dig 2.5 ft at 20, set 45, prop 20, rehang 45 = 200 min; two visits an hour each.
    expect(job(book, 'visits', 'in/in')).toBe(2);
    expectNear(job(book, 'all_hours', 'min'), 320, 1e-6);
  });

  it('comes to its total to the cent', () => {
    // Materials 22.50 + 4 x 6.00 = 46.50; labor 320; one load 85 and treated wood 30; travel 80.
    expectNear(job(book, 'materials_cost'), 46.5, 1e-9);
    expectNear(job(book, 'labor_cost'), 320, 1e-9);
    expectNear(job(book, 'haul_cost'), 115, 1e-9);
    expectNear(job(book, 'direct_cost'), 561.5, 1e-9);
    // x 1.10 = 617.65; / 0.80 = 772.0625; tax 61.7648; deposit 83.382.
    expectNear(job(book, 'price_before_tax'), 772.06, 1e-9);
    expectNear(job(book, 'tax'), 61.76, 1e-9);
    expectNear(job(book, 'total_price'), 833.82, 1e-9);
    expectNear(job(book, 'deposit'), 83.38, 1e-9);
    expectNear(job(book, 'balance'), 750.44, 1e-9);
  });

  it.each([
    { rate: 'pull_hours', typed: '60 min', minutes: 340 },
    { rate: 'setting_hours', typed: '65 min', minutes: 340 },
    { rate: 'brace_hours', typed: '40 min', minutes: 340 },
    { rate: 'rehang_hours', typed: '65 min', minutes: 340 },
    // Once each visit.
    { rate: 'visit_hours', typed: '80 min', minutes: 360 },
  ])('takes $minutes min in place of 320 where $rate is $typed', ({ rate, typed, minutes }) => {
    expectNear(job(snapped({ [rate]: typed }), 'all_hours', 'min'), minutes, 1e-6);
  });

  it('digs by the ground, at its own rate for each', () => {
    // 2 1/2 ft at 20 min in clay is 50 min; at 10 in sand 25; at a rate of 30 typed for sand 75.
    expectNear(job(snapped({ soil: 'clay' }), 'all_hours', 'min'), 320, 1e-6);
    const sand = snapped({ soil: 'sand' });
    expectNear(job(sand, 'all_hours', 'min'), 295, 1e-6);
    const rates = sand.sheet('rates')!;
    const at = shown(sand, 'rates', 'ground').indexOf('sand');
    typeInto(sand, 'rates', rates.rowId(at), { dig_hours: '30 min' });
    expectNear(job(sand, 'all_hours', 'min'), 345, 1e-6);
  });

  it('comes a second time only where the wait of the cure sheet is longer than is waited out', () => {
    // Waited out on site up to 4 h: one visit is an hour and 40 of travel less.
    const fast = snapped({ set_hours: '4 h' });
    expect(job(fast, 'visits', 'in/in')).toBe(1);
    expectNear(job(fast, 'all_hours', 'min'), 260, 1e-6);
    expectNear(job(fast, 'travel_cost'), 40, 1e-9);
    const slow = snapped({ set_hours: '5 h' });
    expect([job(slow, 'visits', 'in/in'), job(slow, 'travel_cost')]).toEqual([2, 80]);
    expect(job(snapped({ set_hours: '5 h', same_day_wait: '6 h' }), 'visits', 'in/in')).toBe(1);
    // Setting and propping on the first, rehanging a bay on the second.
    expectNear(amount(slow, 'labor', '6', 'visit_one', 'min'), 65, 1e-6);
    expectNear(amount(slow, 'labor', '6', 'rehang', 'min'), 45, 1e-6);
  });

  it('adds the permit and what else it costs before overhead and profit', () => {
    // 561.50 + 90 + 10 = 661.50; x 1.1 / 0.8 = 909.5625.
    const more = snapped({ permit_fee: '90', other_cost: '10' });
    expectNear(job(more, 'direct_cost'), 661.5, 1e-9);
    expectNear(job(more, 'price_before_tax'), 909.56, 1e-9);
  });

  it('never takes a markup for a margin', () => {
    // 617.65 x 1.20 = 741.18.
    expectNear(job(snapped({ profit_way: 'markup on cost' }), 'price_before_tax'), 741.18, 1e-9);
  });

  it('taxes by the rule chosen', () => {
    // Materials at cost: 46.50 x 8% = 3.72; at price: 46.50 x 1.1 / 0.8 = 63.9373..., 5.115.
    expectNear(job(snapped({ tax_rule: 'materials at cost' }), 'tax'), 3.72, 1e-9);
    expectNear(job(snapped({ tax_rule: 'materials at price' }), 'tax'), 5.11, 1e-9);
    expect(job(snapped({ tax_rule: 'nothing' }), 'tax')).toBe(0);
  });

  it('caps the deposit, and holds to the least charge', () => {
    expectNear(job(snapped({ deposit_cap: '50' }), 'deposit'), 50, 1e-9);
    expectNear(job(snapped({ minimum_charge: '900' }), 'price_before_tax'), 900, 1e-9);
  });

  it('takes seven bags where the old footing is broken out', () => {
    // 12 in and 2 in on every side: (pi/4 x 16^2 - 12.25) x 30 in = 3.278 ft^3; x 1.1 / 0.6 = 6.01.
    const out = snapped({ old_footing_way: 'broken out' });
    expect(materials(out)).toContain('7 bag 80 lb concrete mix');
    expectNear(amount(out, 'removal', '6', 'out_hours', 'min'), 63.03, 0.01);
    expect(stopsOf(out, 'removal', 'breaking_dust')).toHaveLength(1);
  });

  it('widens the hole of the one post whose footing is broken out', () => {
    const posts = { remedy: 'replace', footing_width: '12 in', footing_depth: '24 in' };
    const two = siteOf({}, [posts, { ...posts, footing_way: 'broken out' }]);
    expect(shown(two, 'holes', 'width')).toEqual(['12', '16']);
    expect(shown(two, 'removal', 'way')).toEqual(['pulled whole', 'broken out']);
  });

  it('waits for what has no price, and says so', () => {
    const bare = sample('D3-snapped', RATES);
    expect(bare.sheet('job')!.cell(0, 'total_price').value).toBeUndefined();
    expect(job(bare, 'unpriced', 'in/in')).toBe(2);
    expect(stopsOf(bare, 'price', 'unpriced')).toHaveLength(1);
    const noRate = snapped({ crew_rate: '' });
    expect(noRate.sheet('job')!.cell(0, 'total_price').note).toMatch(/an hour of one person/i);
  });

  it('buys at the yard that is chosen', () => {
    const two = snapped({ buy_from: 'second yard' });
    const row = two.sheet('prices')!.rowId(0);
    typeInto(two, 'prices', row, { second_price: '19.00' });
    addTyped(two, 'prices', { item: 'concrete mix', size: '80 lb', price: '6', second_price: '7' });
    expectNear(job(two, 'materials_cost'), 47, 1e-9);
  });

  it('calls the yards by the names the job gives them', () => {
    const hints = (book: Book) =>
      book
        .sheet('materials')!
        .columns.flatMap(({ id, hint }) => (/^(first|second)_/.test(id) ? [hint] : []));
    const usual = ['first yard', 'second yard'];
    expect(hints(snapped())).toEqual([...usual, ...usual]);
    const names = ['Invented Lumber', 'Other Yard'];
    const named = snapped({ first_yard: 'Invented Lumber', second_yard: 'Other Yard' });
    expect(hints(named)).toEqual([...names, ...names]);
  });

  it('takes a price without a size for every size, and the exact one first', () => {
    // Gravel has no size in most lists; a 4x4 post of 10 ft has its own price.
    const book = sample('D3-snapped', { ...RATES, gravel_depth: '6 in' });
    addTyped(book, 'prices', { item: 'post', length: '10 ft', price: '99' });
    addTyped(book, 'prices', { item: 'post', size: '4x4', length: '10 ft', price: '22.50' });
    addTyped(book, 'prices', { item: 'gravel', price: '5' });
    addTyped(book, 'prices', { item: 'concrete mix', size: '80 lb', price: '6' });
    // 0.3927 ft^3 of gravel is one bag: 22.50 + 4 x 6 + 5.
    expectNear(job(book, 'materials_cost'), 51.5, 1e-9);
  });

  it('speaks plainly', () => {
    for (const sheet of ['removal', 'labor', 'price', 'materials']) expectPlainStops(book, sheet);
  });
});

describe('published prices', () => {
  const none = {
    ...RATES, crew_rate: '0', travel_charge: '0', dump_charge: '0', treated_charge: '0', overhead: '0',
  }; // prettier-ignore

  it.each([
    // OpenStax, Contemporary Mathematics 6.2; the first total is printed 464.87, an error in the book.
    { charge: '428.99', rate: '8.25%', tax: 35.39, total: 464.38 },
    { charge: '499', rate: '8.81%', tax: 43.96, total: 542.96 },
  ])('tax $charge at $rate', ({ charge, rate, tax, total }) => {
    const book = siteOf({ ...none, minimum_charge: charge, tax_rate: rate });
    expectNear(job(book, 'tax'), tax, 1e-9);
    expectNear(job(book, 'total_price'), total, 1e-9);
  });

  it.each([
    // OpenStax, Contemporary Mathematics 6.2: cost, markup, price.
    { cost: '62', way: 'markup on cost', rate: '15%', price: 71.3 },
    { cost: '250', way: 'markup on cost', rate: '40%', price: 350 },
    { cost: '115', way: 'markup on cost', rate: '225%', price: 373.75 },
    // Web article on margin: cost 80, price 100, margin 20%.
    { cost: '80', way: 'margin of price', rate: '20%', price: 100 },
  ])('$cost with $way $rate is $price', ({ cost, way, rate, price }) => {
    const book = siteOf({ ...none, other_cost: cost, profit_way: way, profit_rate: rate });
    expectNear(job(book, 'price_before_tax'), price, 1e-9);
  });
});

describe('the other runs', () => {
  it('haul 1,795 lb and 0.75 yd^3 of the wind run’s old footings', () => {
    const book = sample('D4-wind');
    const weights = shown(book, 'removal', 'footing_weight');
    expect(weights).toEqual(Array(13).fill('138.1'));
    expect(book.sheet('removal')!.totals().get('weight')).toMatch(/^1,?79[56]/);
    expect(book.sheet('removal')!.totals().get('loose')).toMatch(/^0\.74[78]/);
    // 43 x 80 lb = 3,440 lb, and the gravel: over a half-ton truck.
    expect(stopsOf(book, 'materials', 'truck_load')).toHaveLength(1);
  });

  it('cut six 10 ft rails for the two bays that jog 9 in round the tree', () => {
    // sqrt(96^2 + 9^2) = 96.42 in, over 8 ft; the bay between both stays 96 in.
    const book = sample('D1-tree-run');
    const posts = book.sheet('posts')!;
    for (const row of [2, 3]) typeInto(book, 'posts', posts.rowId(row), { jog: '9 in' });
    expectNear(amount(book, 'posts', '2', 'rail_length', 'in'), 96.421, 0.001);
    expectNear(amount(book, 'posts', '3', 'rail_length', 'in'), 96, 1e-9);
    expect(materials(book)).toEqual(
      expect.arrayContaining(['6 each 2x4 rail 10', '3 each 2x4 rail 8']),
    );
  });

  it('flag the holes in the root zone of a 14 in trunk', () => {
    // 18 x 14 in = 21 ft; a trunk 4 ft off is inside, one 22 ft off is not.
    const book = siteOf({}, [
      { remedy: 'replace', tree_diameter: '14 in', tree_distance: '4 ft' },
      { remedy: 'replace', tree_diameter: '14 in', tree_distance: '22 ft' },
    ]);
    expect(stopsOf(book, 'posts', 'root_zone').map(({ rowName }) => rowName)).toEqual(['post 1']);
  });
});

describe('small things of the list', () => {
  it('are caps, flags, brackets, props, stakes and their screws, each where it is asked for', () => {
    const posts = [{ remedy: 'leave' }, { remedy: 'replace' }, { remedy: 'leave' }];
    const asked = {
      post_caps: 'yes', locate_flags: '2', brackets_per_rail_end: '1', buy_props: 'yes',
    }; // prettier-ignore
    // Two bays of three rails, two ends each: 12 brackets. A prop on either side, 48 in up and out is
    // 67.9 in, from 8 ft; three screws at either end of both: 12, one box.
    expect(materials(siteOf(asked, posts))).toEqual(
      expect.arrayContaining([
        '1 each 4x4 post cap',
        '2 each locate flag',
        '12 each 2x4 rail bracket',
        '2 each 2x4 prop 8',
        '2 each stake 2',
        '1 box prop screws',
      ]),
    );
    const bare = materials(siteOf({}, posts)).join();
    expect(bare).not.toMatch(/cap|flag|bracket|prop|stake/);
  });
});

describe('boards and screws', () => {
  const posts = [{}, { remedy: 'replace' }, {}];

  it('count boards by the bay, waste and all', () => {
    // 96 / 5.5 = 17.45, so 18 a bay; two bays 36, x 1.02 = 36.72, so 37 of 6 ft.
    const book = siteOf({ new_pickets: 'yes' }, posts);
    expect(materials(book)).toContain('37 each 1x6 board 6');
  });

  it('count screws by rail end and by crossing, in whole boxes', () => {
    // 2 bays x 3 rails x 2 ends x 3 = 36: one box. 36 boards x 3 x 2 = 216: three boxes.
    const book = siteOf({ new_pickets: 'yes' }, posts);
    expect(shown(book, 'materials', 'needed')).toEqual(expect.arrayContaining(['36', '216']));
    const lines = materials(book).filter((line) => line.includes('screws'));
    expect(lines.map((line) => line.split(' ', 1)[0])).toEqual(['1', '3']);
  });

  it('form a collar that stands above grade', () => {
    // 4 ft tube, 4 in above and 6 in below: four pieces a tube, so two tubes for five posts.
    const book = siteOf({ top_of_concrete: '4 in' }, Array(5).fill({ remedy: 'replace' }));
    expect(materials(book)).toContain('2 each form tube 4');
  });

  it('cut by cost once every stock length has a price', () => {
    // Two rails of 5 ft: one 10 ft at 9, or two of 8 ft at 3 each.
    const cheap = siteOf({ post_spacing: '5 ft', rails_per_bay: '1', kerf: '0 in' }, posts);
    expect(materials(cheap)).toContain('1 each 2x4 rail 10');
    for (const [length, price] of [['8', '3'], ['10', '9'], ['12', '12'], ['16', '20']] as const) {
      addTyped(cheap, 'prices', { item: 'rail', size: '2x4', length: `${length} ft`, price });
    } // prettier-ignore
    expect(materials(cheap)).toContain('2 each 2x4 rail 8');
    expect(cheap.cuts().find(({ item }) => item === 'rail')).toMatchObject({
      byPrice: true,
      total: 6,
      isLeast: true,
    });
  });
});
