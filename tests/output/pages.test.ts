import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import {
  crewLines,
  crewTable,
  holeTable,
  materialTable,
  postTable,
  quoteLines,
  quoteTable,
  quoteWaits,
  tableCsv,
  writeOptions,
  type Dialect,
} from '../../src/output/index.ts';
import { addTyped, siteOf, typeInto } from '../worksheet/site.ts';
import { sample } from '../worksheet/take-off.ts';

describe('the crew sheet', () => {
  const lines = crewLines(sample('D3-snapped'));

  it('says at each post what to take out, dig, pour, cut and set', () => {
    // Hand-worked: 210 lb of old footing, 30 in hole, 1.7508 x 1.1 / 0.6 = 3.21 bags, post 72 + 2 + 30 in.
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatchObject({
      post: '6',
      action: 'replace',
      oldFooting: 'pulled whole, 210.1 lb',
      hole: '12 in x 30 in',
      bags: '3.3 of 80 lb',
      cut: '4x4, 104 in',
      setTo: 'top 74 in above grade',
    });
    expect(lines[0]!.hazards.join()).toContain('footing needs a lever');
  });

  it('gives whole bags where they are opened hole by hole', () => {
    expect(crewLines(sample('D3-snapped', { bag_rounding: 'by hole' }))[0]!.bags).toBe(
      '4 of 80 lb',
    );
  });

  it('says when rails may go up, from the pour and the wait', () => {
    const book = sample('D3-snapped', { pour_time: '2026-10-14 09:00' });
    expect(crewLines(book)[0]!.rehangAfter).toContain('2026-10-16 09:00');
  });

  it('leaves posts out that need nothing, and shows those not decided', () => {
    const book = siteOf({}, [{ remedy: 'leave' }, { remedy: 'replace' }, { lean_gap: '3/8 in' }]);
    expect(crewLines(book).map(({ post }) => post)).toEqual(['2', '3']);
    expect(crewLines(book)[1]!.action).toMatch(/^not decided/);
  });

  it('warns where a hole is short', () => {
    const [, second] = crewLines(sample('D2-rock'));
    expect(second!.hazards).toEqual(
      expect.arrayContaining(['hole short: do not set it before it is settled']),
    );
  });

  it('gives the reading to be read again, and what has to be settled at the post itself', () => {
    const [, , worst] = crewLines(sample('D1-tree-run'));
    expect(worst).toMatchObject({ post: '4', reads: '2 1/4 in over 48 in, toward S', stops: [] });
    const [, stopped] = crewLines(sample('D2-rock'));
    expect(stopped!.stops.join()).toMatch(
      /Stopped by rock at 18 in, short of the wanted embedment by 12 in/,
    );
  });

  it('tells a finer way, and how many holes it takes', () => {
    // One hole and 6 in of soil beside the old one: 12 in and 6 in (common practice, no source).
    const book = sample('D3-snapped');
    const [row] = [book.sheet('posts')!.rowId(0)];
    typeInto(book, 'posts', row, { method: 'two posts beside' });
    expect(crewLines(book)[0]).toMatchObject({
      way: 'two posts beside',
      hole: '2 of 12 in x 30 in, 18 in to either side',
    });
    expect(lines[0]).toMatchObject({ way: '', hole: '12 in x 30 in' });
  });

  it('tells how far off the old place a post is set, and what a mend takes', () => {
    // A 14 in trunk on the line: half of it, 7 in, and the 2 in it is to stay clear (common practice, no source).
    const book = sample('D1-tree-run');
    const posts = book.sheet('posts')!;
    const way = () => crewLines(book).find(({ post }) => post === '4')?.way;
    typeInto(book, 'posts', posts.rowId(3), { method: 'move the line', tree_diameter: '14 in' });
    expect(way()).toBe('move the line, 9 in off the old line');
    // A 12 in hole and 6 in of soil between (common practice, no source).
    typeInto(book, 'posts', posts.rowId(3), { method: 'new hole beside' });
    expect(way()).toBe('new hole beside, 18 in on along the run');
    typeInto(book, 'posts', posts.rowId(3), { method: 'mend at grade', remedy: 'mend' });
    expect(way()).toBe('2 menders at grade');
  });

  it('leaves columns to write in', () => {
    const [heads, row] = crewTable(sample('D3-snapped'));
    expect(heads!.slice(-3)).toEqual(['Done', 'Gap after', 'Initials']);
    expect(row!.slice(-3)).toEqual(['', '', '']);
    expect(row).toHaveLength(heads!.length);
  });
});

describe('the quote', () => {
  it('says in the owner’s words what was found', () => {
    const lines = quoteLines(sample('D1-tree-run'));
    expect(lines.map(({ post }) => post)).toEqual(['2', '3', '4', '5']);
    expect(lines[2]).toMatchObject({
      finding: '3 3/8 in out of plumb at the top; its footing turns in the ground',
      remedy: 'new post in new concrete',
    });
  });

  it('promises at each post what is done there and nothing else', () => {
    const rocky = sample('D2-rock');
    const holes = rocky.sheet('holes')!;
    const choose = (at: number, rock_choice: string) => {
      typeInto(rocky, 'holes', holes.rowId(at), { rock_choice });
    };
    choose(1, 'pin to rock');
    choose(2, 'engineer');
    const posts = rocky.sheet('posts')!;
    typeInto(rocky, 'posts', posts.rowId(3), { method: 'new hole beside' });
    expect(quoteLines(rocky).map(({ remedy, included }) => `${remedy}: ${included}`)).toEqual([
      'new post in new concrete: old footing out, hole, post, concrete, props, rails rehung after the wait',
      'new steel post, pinned to rock: old footing out, hole, post, pins, props, rails rehung after the wait',
      'held until an engineer has answered: nothing until then',
      'new post in new concrete beside the old place: old post out, its footing left in the ground, hole, post, concrete, props, rails rehung after the wait',
      'new post in new concrete: old footing out, hole, post, concrete, props, rails rehung after the wait',
    ]);
  });

  it('has no sum while prices are missing, and says what it waits for', () => {
    const book = sample('D3-snapped');
    expect(quoteWaits(book)).toContain('2 lines of the materials list have no price');
    expect(
      quoteTable(book)
        .find(([, name]) => name === 'Total')!
        .at(-1),
    ).toBe('');
  });

  it('gives its total to the cent, and what is left out', () => {
    // Hand-worked beside the price sheet's own test.
    const book = sample('D3-snapped', {
      crew_rate: '60', permit_fee: '0', travel_charge: '40', dump_charge: '85', treated_charge: '30',
      overhead: '10%', profit_way: 'margin of price', profit_rate: '20%', tax_rule: 'all', tax_rate: '8%',
      deposit_share: '10%', exclusions: 'painting',
    }); // prettier-ignore
    typeInto(book, 'bags', book.sheet('bags')!.rowId(0), { price: '6' });
    addTyped(book, 'prices', { item: 'post', size: '4x4', length: '10 ft', price: '22.50' });
    const table = quoteTable(book);
    expect(quoteWaits(book)).toBe('');
    expect(table.find(([, name]) => name === 'Total')!.at(-1)).toBe('833.82 USD');
    expect(table.at(-1)).toEqual(['', 'Not included', 'painting', '', '']);
  });
});

describe('the crew sheet and the quote in a dialect', () => {
  const how: Dialect = { separator: ';', decimal: ',', mark: true, lengths: 'mm' };

  it('give every length in the unit asked for, and no other number a unit', () => {
    // By definition of the inch: 12 x 25.4 = 304.8, 30 x 25.4 = 762, 104 x 25.4 = 2641.6 mm.
    const [line] = crewLines(sample('D3-snapped'), how);
    expect(line).toMatchObject({
      oldFooting: 'pulled whole, 210,1 lb',
      hole: '304,8 mm x 762 mm',
      bags: '3,3 of 80 lb',
      cut: '4x4, 2641,6 mm',
      setTo: 'top 1879,6 mm above grade',
    });
    // 3 3/8 in is the rounded 85.7 mm of the sheet.
    expect(quoteLines(sample('D1-tree-run'), how)[2]!.finding).toMatch(
      /^85,7 mm out of plumb at the top/,
    );
  });

  it('are parted and marked as asked', () => {
    const csv = tableCsv(crewTable(sample('D3-snapped'), how), writeOptions(how));
    expect(csv).toMatch(/^\ufeffPost;Action;/);
    expect(csv).toContain(';304,8 mm x 762 mm;');
  });
});

describe('every list', () => {
  it('holds no cell that another program would run, whatever was typed', () => {
    const note = fc.string({
      unit: fc.constantFrom(
        '=',
        '+',
        '-',
        '@',
        '\t',
        '\r',
        '\n',
        ' ',
        '1',
        '/',
        '"',
        "'",
        'x',
        '\u00a0',
      ),
    });
    const book = siteOf({}, [{ remedy: 'replace', rock_test: 'loose' }]);
    const row = book.sheet('posts')!.rowId(0);
    fc.assert(
      fc.property(note, fc.constantFrom(',', ';', '\t'), (text, separator) => {
        typeInto(book, 'posts', row, { note: text, lean_toward: text });
        const how: Dialect = { separator, decimal: '.', mark: false, lengths: 'job' };
        for (const table of [postTable, crewTable, quoteTable, materialTable, holeTable]) {
          const csv = tableCsv(table(book, how), writeOptions(how));
          const { data } = Papa.parse<string[]>(csv, { delimiter: separator });
          for (const cell of data.flat()) expect(isRun(cell), JSON.stringify(cell)).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** Whether a cell begins as a command does (OWASP, CSV Injection) and is no plain number or tape reading. */
function isRun(cell: string): boolean {
  return (
    /^[\s\u00a0]*[=+\-@\t\r\n]/.test(cell) &&
    !/^[-+][\d\s./'"-]*\d[\d\s./'"]*( ?(?:in|mm|ft|m))?$/.test(cell)
  );
}

describe('a yard’s prices', () => {
  it('may hold one item in many lengths', () => {
    const book = siteOf({});
    for (const length of ['8 ft', '10 ft'])
      addTyped(book, 'prices', { item: 'post', size: '4x4', length, price: '20' });
    expect(book.asks()).toEqual([]);
  });
});
