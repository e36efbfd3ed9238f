import type { CorpusFile } from './file.ts';

/** What crews write in a cell for a gap, in a file in inches over a 48 in level. */
export const CELLS: readonly CorpusFile[] = [
  // 1 in is 25.4 mm by definition; the rest is hand-worked from it.
  gap(`5'-3 1/2"`, 1612.9),
  gap(`5' 3½"`, 1612.9),
  gap('5′-3½″', 1612.9),
  gap('5’3 1/2”', 1612.9),
  gap('5´3´´', 1600.2),
  gap("5'3''", 1600.2),
  gap('63.5', 1612.9),
  gap('5 3/4', 146.05),
  gap('1 1/4"', 31.75),
  gap('1-1/4"', 31.75),
  gap('1¼', 31.75),
  gap('1–1/4', 31.75),
  gap('1 1 / 4', 31.75),
  gap('1\u20091/4', 31.75),
  gap('1\u00a01⁄4', 31.75),
  gap('450mm', 450),
  gap('0.45 m', 450),
  gap('0,45 m', 450),
  gap('45 cm', 450),
  gap('-3/8', -9.525),
  gap('−3/8', -9.525),
  gap('–3/8', -9.525),
  gap('~3/8', 9.525),
  gap('abt 3/8', 9.525),
  gap("8'oc", 2438.4),
  gap('0', 0),
  gap('3/8 E', 9.525, 'E'),
  gap('E 3/8', 9.525, 'E'),
  asked('5-3'),
  asked('5-8'),
  asked('11/4'),
  asked("5.3'"),
  asked('1,200'),
  asked('plumb'),
  asked('ok'),
  asked('-'),
  asked('n/a (shed)'),
  asked('?'),
  asked('"'),
  asked('ditto'),
  asked('8-May'),
  asked('May-08'),
  asked('5/8/2025'),
  asked('2025-05-08'),
  asked('45785'),
  asked('leaning a bit', '!'),
  asked('#REF!', '!'),
  {
    is: 'with a gap and its level in one cell',
    file: `Post,Gap\n1,3/8 out in 4'\n2,"1/4"" over 48"""`,
    rows: '2: post=1; gap=9.525; lvl=1219.2\n3: post=2; gap=6.35; lvl=1219.2',
    over: ['1 header'],
  },
  {
    // 1/8 in per ft is 3.175 mm in 304.8 mm.
    is: 'with a lean as a slope',
    file: 'Post,Gap\n1,1/8 per ft\n2,5 mm/m',
    rows: '2: post=1; gap=3.175; lvl=304.8\n3: post=2; gap=5; lvl=1000',
    over: ['1 header'],
  },
  {
    is: 'with footings as width by depth',
    file: 'Post,Gap in,Level in,Footing\n1,1/4,48,10x24\n2,1/4,48,"12""ø x 30"""\n3,1/4,48,24 deep x 10 dia',
    rows: `2: post=1; gap=6.35; lvl=1219.2; fw=254; fd=609.6
3: post=2; gap=6.35; lvl=1219.2; fw=304.8; fd=762
4: post=3; gap=6.35; lvl=1219.2; fw=254; fd=609.6`,
    over: ['1 header'],
  },
  {
    is: 'with square footings as width by width by depth',
    file: 'Post,Gap mm,Level mm,Footing\n1,6,1200,300x300x450\n2,6,1200,300 x 300 x 450 mm\n3,6,1200,300x400x450',
    rows: '2: post=1; gap=6; lvl=1200; fw=300; fd=450\n3: post=2; gap=6; lvl=1200; fw=300; fd=450\n4: post=3; gap=6; lvl=1200; fw=!300x400x450',
    asks: ['4 footing_width'],
    over: ['1 header'],
  },
  {
    is: 'with footings in inches where the rest is in both',
    file: 'Post,Gap in,Level mm,Footing\n1,1/4,1200,10x24',
    rows: '2: post=1; gap=6.35; lvl=1200; fw=?10; fd=?24',
    asks: ['file footing_depth', 'file footing_width'],
    over: ['1 header'],
  },
  {
    is: 'with inches and millimeters in one column',
    file: 'Post,Gap,Level\n1,"1/4""","48"""\n2,6 mm,1200 mm\n3,0,"48"""',
    rows: '2: post=1; gap=6.35; lvl=1219.2\n3: post=2; gap=6; lvl=1200\n4: post=3; gap=0; lvl=1219.2',
    over: ['1 header'],
  },
  {
    is: 'with inches and millimeters and a number that is neither',
    file: 'Post,Gap,Level\n1,"1/4""","48"""\n2,6 mm,1200 mm\n3,5,"48"""',
    rows: '2: post=1; gap=6.35; lvl=1219.2\n3: post=2; gap=6; lvl=1200\n4: post=3; gap=?5; lvl=1219.2',
    asks: ['file lean_gap'],
    over: ['1 header'],
  },
  {
    is: 'with no unit anywhere',
    file: 'Post,Gap,Level\n1,63.5,1200\n2,12,1200',
    rows: '2: post=1; gap=?63.5; lvl=?1200\n3: post=2; gap=?12; lvl=?1200',
    asks: ['file lean_gap', 'file level_length'],
    over: ['1 header'],
  },
  {
    is: 'with bare numbers and one small unit elsewhere',
    file: 'Post,Gap,Level,Probe\n1,1/4,"48""",0\n2,3/8,"48""",1/8',
    rows: '2: post=1; gap=6.35; lvl=1219.2; prb=0\n3: post=2; gap=9.525; lvl=1219.2; prb=3.175',
    over: ['1 header'],
  },
  {
    is: 'with ditto marks',
    file: 'Post,Gap in,Level in,To\n1,1/4,48,S\n2,3/8,do,〃',
    rows: '2: post=1; gap=6.35; lvl=1219.2; to=S\n3: post=2; gap=9.525; lvl=?do; to=〃',
    asks: ['3 lean_toward', '3 level_length'],
    over: ['1 header'],
  },
  {
    is: 'with post sizes in several hands',
    file: 'Post,Size,Gap in,Level in\n1,4x4,1/4,48\n2,6 x 6,1/4,48\n3,100 mm,1/4,48',
    rows: '2: post=1; size=4x4; gap=6.35; lvl=1219.2\n3: post=2; size=6 x 6; gap=6.35; lvl=1219.2\n4: post=3; size=100 mm; gap=6.35; lvl=1219.2',
    over: ['1 header'],
  },
];

function gap(cell: string, millimetres: number, toward = ''): CorpusFile {
  const to = toward === '' ? '' : `; to=${toward}`;
  return {
    is: `with a gap written ${cell}`,
    file: oneGap(cell),
    rows: `2: post=1; gap=${String(millimetres)}; lvl=1219.2${to}\n3: post=2; gap=6.35; lvl=1219.2`,
    over: ['1 header'],
  };
}

function asked(cell: string, how = '?'): CorpusFile {
  return {
    is: `with a gap written ${cell}`,
    file: oneGap(cell),
    rows: `2: post=1; gap=${how}${cell}; lvl=1219.2\n3: post=2; gap=6.35; lvl=1219.2`,
    asks: ['2 lean_gap'],
    over: ['1 header'],
  };
}

function oneGap(cell: string): string {
  return `Post;Gap in;Level in\n1;"${cell.replaceAll('"', '""')}";48\n2;1/4;48`;
}
