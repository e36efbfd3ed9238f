import type { CorpusFile } from './file.ts';

const HEADER = ['1 header'];
const READ = 'gap=6.35; lvl=1219.2';

/** How posts are numbered. */
export const POSTS: readonly CorpusFile[] = [
  {
    is: 'with posts put in between, a letter before and noughts before',
    file: posts('7', '7A', 'P07', '007'),
    rows: rows('7', '7A', 'P07', '007'),
    over: HEADER,
  },
  {
    is: 'with one post number twice',
    file: posts('1', '2', '2'),
    rows: rows('1', '2', '2'),
    asks: ['3 post', '4 post'],
    over: HEADER,
  },
  {
    is: 'with a post number missing',
    file: posts('1', '', '3'),
    rows: `2: post=1; ${READ}\n3: ${READ}\n4: post=3; ${READ}`,
    asks: ['3 post'],
    over: HEADER,
  },
  {
    is: 'whose numbers leave some out',
    file: posts('1', '2', '5'),
    rows: rows('1', '2', '5'),
    over: HEADER,
  },
  { is: 'whose numbers fall', file: posts('9', '8', '7'), rows: rows('9', '8', '7'), over: HEADER },
  {
    is: 'whose posts have letters alone',
    file: posts('A', 'B', 'C'),
    rows: rows('A', 'B', 'C'),
    over: HEADER,
  },
  {
    is: 'whose posts are called by words',
    file: posts('Post 1', 'gate post, left', '#3'),
    rows: rows('Post 1', 'gate post\\, left', '#3').replace('\\,', ','),
    over: HEADER,
  },
  {
    is: 'whose stations fall',
    file: 'Post,Sta ft,Gap in,Level in\n1,16,1/4,48\n2,8,1/4,48\n3,0,1/4,48',
    rows: `2: post=1; sta=4876.8; ${READ}\n3: post=2; sta=2438.4; ${READ}\n4: post=3; sta=0; ${READ}`,
    over: HEADER,
  },
  {
    is: 'with surveyors’ stations',
    file: 'Post,Sta,Gap in,Level in\n1,0+00,1/4,48\n2,0+08,1/4,48\n3,1+20,1/4,48',
    // Hand-worked: 8 ft is 2438.4 mm, 120 ft 36576 mm.
    rows: `2: post=1; sta=0; ${READ}\n3: post=2; sta=2438.4; ${READ}\n4: post=3; sta=36576; ${READ}`,
    over: HEADER,
  },
  {
    is: 'with a count of lines beside the posts',
    file: 'Row,Post,Gap in,Level in\n1,11,1/4,48\n2,12,1/4,48',
    rows: `2: post=11; ${READ}; +Row=1\n3: post=12; ${READ}; +Row=2`,
    over: HEADER,
  },
];

function posts(...numbers: readonly string[]): string {
  const lines = numbers.map((number) => `${number.includes(',') ? `"${number}"` : number},1/4,48`);
  return `Post,Gap in,Level in\n${lines.join('\n')}`;
}

function rows(...numbers: readonly string[]): string {
  return numbers.map((number, at) => `${String(at + 2)}: post=${number}; ${READ}`).join('\n');
}
