import { describe, expect, it } from 'vitest';
import { isProblem } from '../../src/units/index.ts';
import { readSite } from '../../src/intake/index.ts';
import { COLUMNS, bringIn, cells, mapped } from './bring-in.ts';

/** Where a header goes in a file that has a post number and a note beside it. */
function goesTo(header: string, value = '1'): string | null | undefined {
  const quoted = `"${header.replaceAll('"', '""')}"`;
  return mapped(`Post,${quoted},Note\n1,${value},a\n2,${value},b`)[header];
}

describe('a header', () => {
  it.each([
    ['Post Type (line/end/corner/gate hinge/gate latch)', 'post_type'],
    ['Nominal Size', 'post_size'],
    ['Height Above Grade', 'post_top'],
    ['Fence Height', 'height'],
    ['Plumb Gap Across', 'lean_gap'],
    ['PLUMB GAP', 'lean_gap'],
    ['Out of plumb (in)', 'lean_gap'],
    ['gap, lean', 'lean_gap'],
    ['leanGap_mm', 'lean_gap'],
    ['Leans Toward', 'lean_toward'],
    ['Lean dir.', 'lean_toward'],
    ['Plumb Gap Along', 'lean_gap_along'],
    ['Level Length', 'level_length'],
    ['Over', 'level_length'],
    ['Top Height vs Line', 'top_above_line'],
    ['Probe Depth N/E/S/W', 'probe_depth'],
    ['Soundness At Grade (sound/soft/rotten/snapped)', 'soundness'],
    ['Rock Test (firm/moves in collar/moves at grade)', 'rock_test'],
    ['Push test', 'rock_test'],
    ['Collar Condition', 'collar'],
    ['Top Of Concrete (+/-)', 'top_of_concrete_found'],
    ['Footing Dia', 'footing_width'],
    ['Old ftg depth', 'footing_depth'],
    ['Water', 'standing_water'],
    ['Drop From Last Post', 'drop'],
    ['Tree Dia', 'tree_diameter'],
    ['Tree Distance', 'tree_distance'],
    ['Trunk', 'tree_diameter'],
    ['Trunk off', 'tree_distance'],
    ['Stopped By', 'stopped_by'],
    ['Comments', 'note'],
    ['Notes', 'note'],
    ['Notizen', 'note'],
    ['Which way', 'lean_toward'],
    ['Leans which way', 'lean_toward'],
    ['Sta. [ft]', 'station'],
    ['Richtscheit (mm)', 'level_length'],
    ['Abweichung mm', 'lean_gap'],
    ['Gefälle', 'drop'],
    ['Stehendes Wasser mm', 'standing_water'],
    ['Höhe', 'height'],
    ['Estación', 'station'],
    ['Desplome mm', 'lean_gap'],
    ['Nivel', 'level_length'],
    ['Dirección', 'lean_toward'],
    ['Sondeo', 'probe_depth'],
  ])('“%s” goes to %s', (header, column) => {
    if (column === 'note') expect(mapped(`Post,Gap,${header}\n1,0,a`)[header]).toBe('note');
    else expect(goesTo(header)).toBe(column);
  });

  it.each([
    'Height Other Side',
    'Ground Gap',
    'Gap At Mid',
    'Gap After',
    'Twist',
    'Bay c/c',
    'Lean angle',
    'Utility Mark',
    'Soil',
    'Photo No',
    'Measured By',
    'Post height',
    'Depth',
  ])('“%s” is kept, and given to no column', (header) => {
    const intake = bringIn(`Post,Lean gap,${header}\n1,3/8",x7`);
    expect(intake.mapping.at(-1)).toMatchObject({ header, column: null });
    expect(intake.rows[0]?.kept.get(header)).toBe('x7');
  });

  it('is settled by a person before anything else', () => {
    const intake = bringIn('Post,Lean gap,Foo mm\n1,3,4', {
      'Lean gap': null,
      'foo mm': 'lean_gap',
    });
    expect(cells(intake, 'lean_gap')).toEqual(['4 mm']);
    expect(intake.rows[0]?.kept.get('Lean gap')).toBe('3');
  });

  it.each([
    [{ Levl: 'level_length' }, /no column headed “Levl”/, /“Level”/],
    [{ Level: 'level_lenth' }, /“level_lenth”/, /“level_length”/],
  ])('settled as %j is refused with the nearest name', (settled, found, fix) => {
    const read = readSite(new TextEncoder().encode('Post,Gap,Level\n1,2,3'), 'a.csv', {
      columns: COLUMNS,
      settled: new Map(Object.entries(settled)),
    });
    if (!isProblem(read)) throw new Error('was read');
    expect(read.where).toBe('a.csv');
    expect(read.found).toMatch(found);
    expect(read.fix).toMatch(fix);
  });

  it('that fits the same column as another is asked about, and neither is taken', () => {
    const intake = bringIn('Post,Gap,Lean\n1,1/4",1/8"');
    expect(intake.asks[0]).toMatchObject({ about: 'header', column: 'lean_gap' });
    expect(intake.asks[0]?.choices.map(({ entry }) => entry)).toEqual(['Gap', 'Lean']);
    expect([...intake.rows[0]!.kept]).toEqual([
      ['Gap', '1/4"'],
      ['Lean', '1/8"'],
    ]);
    expect(
      intake.asks.some(({ about, column }) => about === 'missing' && column === 'lean_gap'),
    ).toBe(false);
  });

  it('that only hints is decided by its values', () => {
    expect(mapped('Post,Gap,Lean\n1,1/4",E\n2,1/4",NE')['Lean']).toBe('lean_toward');
    expect(mapped('Post,Gap,Length\n1,1/4",48"\n2,1/8",48"')['Length']).toBe('level_length');
    expect(mapped('Post,Gap,Length\n1,1/4",46"\n2,1/8",48"')['Length']).toBe(null);
    expect(mapped('Post,Distance,Gap\n1,0,1\n2,8,1\n3,16,1')['Distance']).toBe('station');
    expect(mapped('Post,Distance,Gap\n1,0,1\n2,3,1\n3,16,1')['Distance']).toBe(null);
    expect(mapped('Post,Gap,Rock\n1,1,firm\n2,1,loose')['Rock']).toBe('rock_test');
    expect(mapped('Post,Gap,Rock\n1,1,ledge\n2,1,none')['Rock']).toBe(null);
  });

  it('of our own list comes back to its own column', () => {
    const header = COLUMNS.map(({ label, kind, unit }) =>
      kind.type === 'quantity' ? `${label} (${unit})` : label,
    );
    const intake = bringIn(`${header.join(',')}\n${header.map(() => '1').join(',')}`);
    expect(intake.mapping.map(({ column }) => column)).toEqual(COLUMNS.map(({ id }) => id));
  });
});
