import { describe, expect, it } from 'vitest';
import { withUnit } from '../../src/intake/index.ts';
import { bringIn, cells, millimetres, onlyRow } from './bring-in.ts';

describe('a lean cell', () => {
  it('that gives its level length fills the level’s blank', () => {
    const row = onlyRow(`Post,Gap,Level,To\n1,"3/8 out in 4'",,S`);
    expect(row.cells.get('lean_gap')).toBe('3/8 in');
    expect(row.cells.get('level_length')).toBe("4'");
    expect(row.assumed.get('lean_gap')).toContain("3/8 out in 4'");
  });

  it('that gives another level length than the level column leaves both to be asked about', () => {
    const row = onlyRow(`Post,Gap,Level,To\n1,"3/8"" out in 4'",24",S`);
    expect(row.cells.get('level_length')).toBe(`24" or 4'`);
    expect(millimetres(row.cells.get('level_length'))).toBe('problem');
    expect(onlyRow(`Post,Gap,Level\n1,"3/8"" out in 4'",48"`).cells.get('level_length')).toBe(
      '48"',
    );
  });

  // 1/8 in per ft is atan(0.125/12) = 0.597 deg and 2% is atan(0.02) = 1.146 deg, hand-worked.
  it.each([
    ['1/8 per ft', 0.597],
    ['2°', 2],
    ['2º', 2],
    ['2 deg', 2],
    ['2%', 1.146],
    ['5 mm/m', 0.286],
  ])('that is the slope %s is %s deg, whatever the level', (cell, degrees) => {
    const row = onlyRow(`Post,Gap,Level,To\n1,${cell},48",S`);
    const gap = Number(millimetres(row.cells.get('lean_gap')));
    const level = Number(millimetres(row.cells.get('level_length')));
    expect((Math.atan(gap / level) * 180) / Math.PI).toBeCloseTo(degrees, 3);
    expect([...row.kept.values()]).toContain('48"');
  });

  it('that gives a direction fills the direction’s blank, and speaks up where they differ', () => {
    expect(onlyRow('Post,Gap in,To\n1,3/8 E,').cells.get('lean_toward')).toBe('E');
    const both = onlyRow('Post,Gap in,To\n1,3/8 E,W');
    expect(both.cells.get('lean_toward')).toBe('W');
    expect(both.assumed.get('lean_toward')).toContain('“E”');
  });

  it('under a header with a level length takes that one', () => {
    expect(onlyRow('Post,Lean (in/ft)\n1,1/8').cells.get('level_length')).toBe('1 ft');
    expect(onlyRow(`Post,"Gap in 4' (in)"\n1,1/8`).cells.get('level_length')).toBe('4 ft');
    expect(onlyRow('Post,Gap mm over 1200\n1,8').cells.get('level_length')).toBe('1200 mm');
  });
});

describe('a footing cell', () => {
  it.each([
    ['10 dia x 24', '10 in', '24 in'],
    ['10x24', '10 in', '24 in'],
    ['24 deep x 10 dia', '10 in', '24 in'],
    ['12"ø x 30"', '12"', '30"'],
    ['300x300x450 mm', '300 mm', '450 mm'],
    ["10 x 3'", '10 in', '3 ft'],
    ['10 dia x 24"', '10 in', '24 in'],
  ])('%s is %s wide and %s deep', (cell, width, depth) => {
    const row = onlyRow(`Post;Gap (in);Footing\n1;1/4;"${cell.replaceAll('"', '""')}"`);
    expect(row.assumed.get('footing_width')).toContain(cell);
    expect([
      millimetres(row.cells.get('footing_width')),
      millimetres(row.cells.get('footing_depth')),
    ]).toEqual([millimetres(width), millimetres(depth)]);
  });

  it('that is no width and depth stays as it was typed', () => {
    const row = onlyRow('Post,Gap (in),Footing\n1,1/4,300x400x450');
    expect(millimetres(row.cells.get('footing_width'))).toBe('problem');
    expect(row.cells.has('footing_depth')).toBe(false);
  });
});

describe('a number without a unit', () => {
  it('takes the one small unit the file uses, and says so', () => {
    const inches = bringIn('Post,Gap,Level\n1,3/8,48"');
    expect(cells(inches, 'lean_gap')).toEqual(['3/8 in']);
    expect(inches.rows[0]?.assumed.get('lean_gap')).toMatch(/in/);
    expect(cells(bringIn('Post,Gap,Level\n1,4,1200 mm'), 'lean_gap')).toEqual(['4 mm']);
    expect(cells(bringIn('All readings in mm\nPost,Gap,Level\n1,4,1200'), 'lean_gap')).toEqual([
      '4 mm',
    ]);
  });

  it.each([
    ['both', 'Post,Gap,Level,Probe\n1,0,48",3 mm\n2,63.5,48",0\n3,12,48",0'],
    ['neither', "Post,Gap,Height\n1,0,6'\n2,63.5,6'\n3,12,6'"],
    ['only centimeters', 'Post,Gap,Level\n1,0,120 cm\n2,63.5,120 cm\n3,12,120 cm'],
  ])('is asked about once a column where the file uses %s', (_, text) => {
    const intake = bringIn(text);
    expect(cells(intake, 'lean_gap')).toEqual(['0', '63.5 ?', '12 ?']);
    const asks = intake.asks.filter(({ about }) => about === 'unit');
    expect(asks.map(({ column, header }) => [column, header])).toEqual([['lean_gap', 'Gap']]);
    expect(asks[0]?.choices.map(({ entry }) => entry)).toContain('mm');
    expect(millimetres(cells(intake, 'lean_gap')[1])).toBe('doubt');
  });

  it('is asked about where it is a station or a height, though inches are used elsewhere', () => {
    const intake = bringIn('Post,Station,Height,Gap in\n1,0,6,1/4\n2,8,6,3/8');
    expect(cells(intake, 'station')).toEqual(['0', '8 ?']);
    expect(intake.asks.filter(({ about }) => about === 'unit').map(({ column }) => column)).toEqual(
      ['height', 'station'],
    );
  });

  it('is a reading once its unit is given', () => {
    expect(millimetres(withUnit('63.5 ?', 'in'))).toBe(1612.9);
    expect(withUnit('8-May', 'in')).toBe('8-May');
  });

  it('that is a fraction is never millimeters', () => {
    expect(cells(bringIn('Post,Gap,Level\n1,3/8,1200 mm'), 'lean_gap')).toEqual(['3/8 ?']);
  });
});

describe('a comma', () => {
  it('is the decimal mark where the file shows it to be', () => {
    const intake = bringIn('Post;Station m;Gap mm\n1;2,40;1.200\n2;4,80;3');
    expect(cells(intake, 'station')).toEqual(['2.40 m', '4.80 m']);
    expect(cells(intake, 'lean_gap')).toEqual(['1200 mm', '3 mm']);
  });

  it('parts thousands where the file’s decimal mark is a point', () => {
    expect(cells(bringIn('Post;Station m;Gap mm\n1;2.40;1,200'), 'lean_gap')).toEqual(['1200 mm']);
  });

  it('is left open where the file shows neither', () => {
    expect(millimetres(cells(bringIn('Post;Station ft;Gap mm\n1;8;1,200'), 'lean_gap')[0])).toBe(
      'doubt',
    );
  });
});

describe('four probe faces', () => {
  it('give the deepest, and are kept', () => {
    const row = onlyRow('Post,Probe N (in),Probe E (in),Probe S (in),Probe W (in)\n1,0,3/8,1/4,');
    expect(row.cells.get('probe_depth')).toBe('3/8 in');
    expect(row.assumed.get('probe_depth')).toContain('deepest');
    expect([...row.kept.values()]).toEqual(['0', '3/8', '1/4']);
  });

  it('are asked about where one of them can’t be read', () => {
    const row = onlyRow(
      'Post,Probe N (in),Probe E (in),Probe S (in),Probe W (in)\n1,0,deep,1/4,1/8',
    );
    expect(row.cells.get('probe_depth')).toBe('deep');
    expect([...row.kept.values()]).toEqual(['0', 'deep', '1/4', '1/8']);
  });
});

describe('a rock test', () => {
  it.each([
    ['Firm', 'firm'],
    ['solid', 'firm'],
    ['tight', 'firm'],
    ['wobbly', 'loose'],
    ['Moves at ground', 'moves at grade'],
    ['rocks in collar', 'moves in collar'],
    ['moves in the concrete', 'moves in collar'],
    ['broken', 'snapped'],
    ['locker', 'loose'],
    ['see photo', 'see photo'],
  ])('of “%s” is %s', (cell, outcome) => {
    expect(onlyRow(`Post,Rock test\n1,${cell}`).cells.get('rock_test')).toBe(outcome);
  });

  it('that is blank is snapped where the wood is', () => {
    const intake = bringIn('Post,Soundness,Rock test\n1,snapped,\n2,rotten,\n3,Snapped,loose');
    expect(cells(intake, 'rock_test')).toEqual(['snapped', undefined, 'loose or snapped']);
    expect(cells(intake, 'soundness')).toEqual(['snapped', 'rotten', 'Snapped']);
  });
});
