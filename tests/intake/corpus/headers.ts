import type { CorpusFile } from './file.ts';

const HEADER = ['1 header'];

/** What headers say, and what the values below them say. */
export const HEADERS: readonly CorpusFile[] = [
  {
    is: 'with German headers',
    file: 'Pfosten;Station m;Abweichung mm;Richtscheit mm;Richtung;Bemerkung\n1;0,00;4;1200;N;\n2;2,40;9;1200;N;nass',
    rows: '2: post=1; sta=0; gap=4; lvl=1200; to=N\n3: post=2; sta=2400; gap=9; lvl=1200; to=N; note=nass',
    over: HEADER,
  },
  {
    is: 'with Spanish headers',
    file: 'Poste;Estación m;Desplome mm;Nivel mm;Dirección;Observaciones\n1;0,00;4;1200;N;\n2;2,40;9;1200;N;mojado',
    rows: '2: post=1; sta=0; gap=4; lvl=1200; to=N\n3: post=2; sta=2400; gap=9; lvl=1200; to=N; note=mojado',
    over: HEADER,
  },
  {
    is: 'with shortened headers',
    file: "Pst #,Sta.,Out of plumb (in),Lvl (in),Dir.,Prod (in),Rmk\n1,0',1/4,48,S,1/8,ok\n2,8',1/4,48,S,1/8,ok",
    rows: '2: post=1; sta=0; gap=6.35; lvl=1219.2; to=S; prb=3.175; +Rmk=ok\n3: post=2; sta=2438.4; gap=6.35; lvl=1219.2; to=S; prb=3.175; +Rmk=ok',
    over: HEADER,
  },
  {
    is: 'with headers in code',
    file: 'post_no,station_ft,leanGap_mm,level_length_mm,leans_toward\n1,8,6,1200,S',
    rows: '2: post=1; sta=2438.4; gap=6; lvl=1200; to=S',
    over: HEADER,
  },
  {
    is: 'with the level in a header',
    file: 'Post,Gap mm over 1200\n1,6\n2,8',
    rows: '2: post=1; gap=6; lvl=1200\n3: post=2; gap=8; lvl=1200',
    over: HEADER,
  },
  {
    is: 'with a slope in a header',
    file: 'Post,Lean (in/ft)\n1,1/8',
    rows: '2: post=1; gap=3.175; lvl=304.8',
    over: HEADER,
  },
  {
    is: 'with a column of directions under a header for a lean',
    file: 'Post,Gap in,Level in,Lean\n1,1/4,48,E\n2,1/4,48,NE',
    rows: '2: post=1; gap=6.35; lvl=1219.2; to=E\n3: post=2; gap=6.35; lvl=1219.2; to=NE',
    over: HEADER,
  },
  {
    is: 'with a column of 48s that only hints at the level',
    file: 'Post,Gap in,Length in\n1,1/4,48\n2,3/8,48',
    rows: '2: post=1; gap=6.35; lvl=1219.2\n3: post=2; gap=9.525; lvl=1219.2',
    over: HEADER,
  },
  {
    is: 'with a column of 48s that has no header',
    file: 'Post,Gap in,,To\n1,1/4,"48""",S\n2,3/8,"48""",S\n3,1/4,"48""",S',
    rows: '2: post=1; gap=6.35; lvl=1219.2; to=S\n3: post=2; gap=9.525; lvl=1219.2; to=S\n4: post=3; gap=6.35; lvl=1219.2; to=S',
    over: HEADER,
  },
  {
    is: 'with a column of 48s under a word nobody knows',
    file: 'Post,Gap in,Bubble\n1,1/4,"48"""\n2,3/8,"48"""\n3,1/4,"48"""',
    rows: '2: post=1; gap=6.35; +Bubble=48"\n3: post=2; gap=9.525; +Bubble=48"\n4: post=3; gap=6.35; +Bubble=48"',
    asks: ['file level_length', 'header level_length'],
    over: HEADER,
  },
  {
    is: 'with a column of even steps that only hints at stations',
    file: 'Post,Distance ft,Gap in,Level in\n1,0,1/4,48\n2,8,1/4,48\n3,16,1/4,48',
    rows: '2: post=1; sta=0; gap=6.35; lvl=1219.2\n3: post=2; sta=2438.4; gap=6.35; lvl=1219.2\n4: post=3; sta=4876.8; gap=6.35; lvl=1219.2',
    over: HEADER,
  },
  {
    is: 'with a column of even steps that has no header',
    file: "Post,,Gap in,Level in\n1,0',1/4,48\n2,8',1/4,48\n3,16',1/4,48",
    rows: '2: post=1; sta=0; gap=6.35; lvl=1219.2\n3: post=2; sta=2438.4; gap=6.35; lvl=1219.2\n4: post=3; sta=4876.8; gap=6.35; lvl=1219.2',
    over: HEADER,
  },
  {
    is: 'whose first column has no header',
    file: ',Gap in,Level in\n1,1/4,48\n2,3/8,48',
    rows: '2: post=1; gap=6.35; lvl=1219.2\n3: post=2; gap=9.525; lvl=1219.2',
    over: HEADER,
  },
  {
    is: 'with two headers for the same reading',
    file: 'Post,Gap in,Lean in,Level in\n1,1/4,3/8,48\n2,1/4,1/2,48',
    rows: '2: post=1; +Gap in=1/4; +Lean in=3/8; lvl=1219.2\n3: post=2; +Gap in=1/4; +Lean in=1/2; lvl=1219.2',
    asks: ['header lean_gap'],
    over: HEADER,
  },
  {
    is: 'with a height that could be two things',
    file: "Post,Gap in,Level in,Post height\n1,1/4,48,6'",
    rows: "2: post=1; gap=6.35; lvl=1219.2; +Post height=6'",
    over: HEADER,
  },
  {
    is: 'with four faces probed',
    file: 'Post,Gap in,Level in,Probe N (in),Probe E (in),Probe S (in),Probe W (in)\n1,1/4,48,0,3/8,1/4,1/8',
    rows: '2: post=1; gap=6.35; lvl=1219.2; prb=9.525; +Probe N (in)=0; +Probe E (in)=3/8; +Probe S (in)=1/4; +Probe W (in)=1/8',
    over: HEADER,
  },
  {
    is: 'with concrete measured downward',
    file: 'Post,Gap in,Level in,Concrete below grade (in)\n1,1/4,48,2',
    rows: '2: post=1; gap=6.35; lvl=1219.2; tod=-50.8',
    over: HEADER,
  },
  {
    is: 'in centimeters',
    file: 'Post,Gap cm,Level cm\n1,0.6,120',
    rows: '2: post=1; gap=6; lvl=1200',
    over: HEADER,
  },
  {
    is: 'with columns that no sheet has',
    file: 'Post,Gap in,Level in,Photo No,Measured By\n1,1/4,48,11,JS',
    rows: '2: post=1; gap=6.35; lvl=1219.2; +Photo No=11; +Measured By=JS',
    over: HEADER,
  },
  {
    is: 'with a column named like a part of the program',
    file: 'Post,Gap in,Level in,__proto__,constructor\n1,1/4,48,a,b',
    rows: '2: post=1; gap=6.35; lvl=1219.2; +__proto__=a; +constructor=b',
    over: HEADER,
  },
  {
    is: 'of holes to dig',
    file: 'Hole,Dia (in),Depth wanted (in),Depth got (in),Stopped by,Gravel (in)\n1,12,30,18,rock,6',
    rows: '2: post=1; hw=304.8; want=762; got=457.2; stop=rock; grv=152.4',
    over: HEADER,
  },
  {
    is: 'of snapped posts',
    file: 'Post,Soundness,Break at\n1,snapped,3" below grade',
    rows: '2: post=1; snd=snapped; rock=snapped; brk=-76.2',
    over: HEADER,
  },
  {
    is: 'of readings without a lean',
    file: "Post,Sta,Probe in,Rock test\n1,0',1/8,firm\n2,8',1/8,loose",
    rows: '2: post=1; sta=0; prb=3.175; rock=firm\n3: post=2; sta=2438.4; prb=3.175; rock=loose',
    asks: ['file lean_gap'],
    over: HEADER,
  },
  {
    is: 'without probe readings and without a rock test',
    file: 'Post,Gap in,Level in\n1,1/4,48\n2,3/8,48',
    rows: '2: post=1; gap=6.35; lvl=1219.2\n3: post=2; gap=9.525; lvl=1219.2',
    asks: ['file probe_depth', 'file rock_test'],
    over: HEADER,
  },
  {
    is: 'with rock tests in other words',
    file: 'Post,Gap in,Level in,Push test\n1,1/4,48,solid\n2,1/4,48,wobbly\n3,1/4,48,loose at ground\n4,1/4,48,broken off',
    rows: '2: post=1; gap=6.35; lvl=1219.2; rock=firm\n3: post=2; gap=6.35; lvl=1219.2; rock=loose\n4: post=3; gap=6.35; lvl=1219.2; rock=moves at grade\n5: post=4; gap=6.35; lvl=1219.2; rock=snapped',
    over: HEADER,
  },
];
