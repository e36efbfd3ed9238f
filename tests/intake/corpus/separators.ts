import { PLAIN, plain, type CorpusFile } from './file.ts';

const HEADER = ['1 header'];
const QUARTER = 'gap=6.35; lvl=1219.2';

/** What parts the cells, and what goes wrong with quotes. */
export const SEPARATORS: readonly CorpusFile[] = [
  { is: 'parted by semicolons', file: parted(';'), rows: plain(2), over: HEADER },
  { is: 'parted by tabs', file: parted('\t'), rows: plain(2), over: HEADER },
  { is: 'parted by pipes', file: parted('|'), rows: plain(2), over: HEADER },
  {
    is: 'that names its separator',
    file: `sep=;\n${parted(';')}`,
    rows: plain(3),
    over: ['1 separator', '2 header'],
  },
  {
    is: 'with decimal commas between semicolons',
    file: 'Post;Sta m;Gap mm;Level mm\n1;0,00;4,5;1200\n2;2,40;9;1200',
    rows: '2: post=1; sta=0; gap=4.5; lvl=1200\n3: post=2; sta=2400; gap=9; lvl=1200',
    over: HEADER,
    says: 'comma is the decimal mark',
  },
  {
    is: 'with decimal commas in quotes between commas',
    file: 'Post,Sta m,Gap mm,Level mm\n1,"0,00","4,5",1200\n2,"2,40","9,0",1200',
    rows: '2: post=1; sta=0; gap=4.5; lvl=1200\n3: post=2; sta=2400; gap=9; lvl=1200',
    over: HEADER,
  },
  {
    is: 'with thousands parted by points',
    file: 'Post;Sta m;Gap mm;Level mm\n1;0,5;4;1.200',
    rows: '2: post=1; sta=500; gap=4; lvl=1200',
    over: HEADER,
  },
  {
    is: 'with thousands parted by commas',
    file: 'Post;Sta m;Gap mm;Level mm\n1;0.5;4;1,200',
    rows: '2: post=1; sta=500; gap=4; lvl=1200',
    over: HEADER,
  },
  {
    is: 'with every cell in quotes',
    file: '"Post","Sta ft","Gap in","Level in","To","Note"\n"1","0","1/4","48","S","gate"\n"2","8","3/8","48","S",""\n"3","16","1 1/2","48","N","bark, wet"',
    rows: plain(2),
    over: HEADER,
  },
  {
    is: 'with inch marks doubled in quotes',
    file: 'Post,Gap,Over\n1,"1/4""","48"""\n2,"1 1/2""","48"""',
    rows: `2: post=1; ${QUARTER}\n3: post=2; gap=38.1; lvl=1219.2`,
    over: HEADER,
  },
  {
    is: 'with bare inch marks',
    file: `Post,Gap,Over,Height\n1,1/4",48",6'-0"\n2,1 1/2",48",5' 6"`,
    rows: `2: post=1; ${QUARTER}; hgt=1828.8\n3: post=2; gap=38.1; lvl=1219.2; hgt=1676.4`,
    over: HEADER,
  },
  {
    is: 'with a quote that opens a reading and is never closed',
    file: 'Post,Gap in,Level in,To\n1,1/4,48,S\n2,"3/8,48,S\n3,1/4,48,S',
    rows: `2: post=1; ${QUARTER}; to=S\n3: post=2; gap=!"3/8; lvl=1219.2; to=S\n4: post=3; ${QUARTER}; to=S`,
    asks: ['3 lean_gap'],
    over: HEADER,
    says: 'line 3',
  },
  {
    is: 'with a note whose quote is never closed, so that it swallows the rest',
    file: 'Post,Gap in,Level in,Note\n1,1/4,48,"soft\n2,1/4,48,ok\n3,1/4,48,ok\n4,1/4,48,ok',
    rows: `2: post=1; ${QUARTER}; note=soft\n3: post=2; ${QUARTER}; note=ok\n4: post=3; ${QUARTER}; note=ok\n5: post=4; ${QUARTER}; note=ok`,
    over: HEADER,
    says: 'line 2',
  },
  {
    is: 'with an unclosed quote on its last line',
    file: 'Post,Gap in,Level in,Note\n1,1/4,48,ok\n2,1/4,48,"end',
    rows: `2: post=1; ${QUARTER}; note=ok\n3: post=2; ${QUARTER}; note=end`,
    over: HEADER,
    says: 'line 3',
  },
  {
    is: 'with a quote that closes early',
    file: `Post,Gap,Over,To\n1,1/4",48",S\n2,"3/8" out in 4'",,N`,
    rows: `2: post=1; ${QUARTER}; to=S\n3: post=2; gap=9.525; lvl=1219.2; to=N`,
    over: HEADER,
  },
  {
    is: 'with quotes that run two readings together',
    file: 'Post,Gap in,Over,To\n1,1/4,48",S\n2,"3/8,48",S',
    rows: `2: post=1; ${QUARTER}; to=S\n3: post=2; gap=!"3/8; lvl=1219.2; to=S`,
    asks: ['3 lean_gap'],
    over: HEADER,
    says: 'run two cells together',
  },
  {
    is: 'with quotes inside a note',
    file: 'Post,Gap in,Level in,Note\n1,1/4,48,"the ""soft"" one"\n2,1/4,48,a "bad" post',
    rows: `2: post=1; ${QUARTER}; note=the "soft" one\n3: post=2; ${QUARTER}; note=a "bad" post`,
    over: HEADER,
  },
  {
    is: 'with a note over two lines',
    file: 'Post,Gap in,Level in,Note\n1,1/4,48,"bark\nloose"\n2,1/4,48,ok',
    rows: `2: post=1; ${QUARTER}; note=bark\\nloose\n4: post=2; ${QUARTER}; note=ok`,
    over: HEADER,
  },
  {
    is: 'with a note over two lines and a blank one between',
    file: 'Post,Gap in,Level in,Note\n1,1/4,48,"bark\n\nloose"\n2,1/4,48,ok',
    rows: `2: post=1; ${QUARTER}; note=bark\\n\\nloose\n5: post=2; ${QUARTER}; note=ok`,
    over: HEADER,
  },
  {
    is: 'with semicolons in the notes',
    file: 'Post,Gap in,Level in,Note\n1,1/4,48,a; b; c\n2,1/4,48,d; e; f',
    rows: `2: post=1; ${QUARTER}; note=a\\; b\\; c\n3: post=2; ${QUARTER}; note=d\\; e\\; f`,
    over: HEADER,
  },
  {
    is: 'with a comma in a note that nobody quoted',
    file: 'Post,Gap in,Level in,Note\n1,1/4,48,bark, wet\n2,1/4,48,ok',
    rows: `2: post=1; ${QUARTER}; note=bark; +column 5=wet\n3: post=2; ${QUARTER}; note=ok`,
    over: HEADER,
  },
  {
    is: 'with spaces round its separators',
    file: 'Post , Gap in , Level in , Note\n1 , 1/4 , 48 , ok\n2 , 1/4 , 48 , ok',
    rows: `2: post=1; ${QUARTER}; note=ok\n3: post=2; ${QUARTER}; note=ok`,
    over: HEADER,
  },
  {
    is: 'with trailing separators',
    file: 'Post,Gap in,Level in,,,\n1,1/4,48,,,\n2,1/4,48,,,',
    rows: `2: post=1; ${QUARTER}\n3: post=2; ${QUARTER}`,
    over: HEADER,
  },
  {
    is: 'with lines of separators alone',
    file: 'Post;Gap in;Level in\n;;\n1;1/4;48\n;;;;\n2;1/4;48',
    rows: `3: post=1; ${QUARTER}\n5: post=2; ${QUARTER}`,
    over: HEADER,
  },
  {
    is: 'with short rows',
    file: 'Post,Gap in,Level in,To,Note\n1,1/4,48\n2,1/4,48,S,ok\n3',
    rows: `2: post=1; ${QUARTER}\n3: post=2; ${QUARTER}; to=S; note=ok\n4: post=3`,
    over: HEADER,
  },
  {
    is: 'with rows longer than its header',
    file: 'Post,Gap in,Level in\n1,1/4,48\n2,1/4,48,see photo,12',
    rows: `2: post=1; ${QUARTER}\n3: post=2; ${QUARTER}; +column 4=see photo; +column 5=12`,
    over: HEADER,
  },
  {
    is: 'where another program put apostrophes before signs',
    file: "Post,Gap in,Level in,Note\n1,'-1/4,48,'=as above",
    rows: '2: post=1; gap=-6.35; lvl=1219.2; note==as above',
    over: HEADER,
  },
  {
    is: 'whose title has more semicolons than the table has commas',
    file: `Oak St; rear; run A; crew 2; 3 May; wet; cold\n${PLAIN}`,
    rows: plain(3),
    over: ['1 above the header', '2 header'],
  },
  {
    is: 'with each whole line in quotes',
    file: '"Post,Gap in,Level in,Note"\n"1,1/4,48,ok"\n"2,1/4,48,""bark, wet"""',
    rows: `2: post=1; ${QUARTER}; note=ok\n3: post=2; ${QUARTER}; note=bark, wet`,
    over: HEADER,
    says: 'each line',
  },
];

function parted(by: string): string {
  return `Post,Sta ft,Gap in,Level in,To,Note
1,0,1/4,48,S,gate
2,8,3/8,48,S,
3,16,1 1/2,48,N,bark~ wet`
    .replaceAll(',', by)
    .replace('~', ',');
}
