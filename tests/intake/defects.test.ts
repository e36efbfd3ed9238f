import { describe, expect, it } from 'vitest';
import { isProblem } from '../../src/units/index.ts';
import { readSite } from '../../src/intake/index.ts';
import { COLUMNS, bringIn, cells, mapped, onlyRow } from './bring-in.ts';

const HEADER = 'Post,Sta ft,Gap in,Level in,Note';
const passed = (text: string): (readonly [number, string])[] =>
  bringIn(text).passedOver.map(({ line, why }) => [line, why]);

describe('a file', () => {
  it.each([
    ['semicolons', `${HEADER}\n1,0,1/4,48,a`.replaceAll(',', ';')],
    ['tabs', `${HEADER}\n1,0,1/4,48,a`.replaceAll(',', '\t')],
    ['pipes', `${HEADER}\n1,0,1/4,48,a`.replaceAll(',', '|')],
    ['CRLF', `${HEADER}\r\n1,0,1/4,48,a\r\n`],
    ['CR alone', `${HEADER}\r1,0,1/4,48,a\r`],
    ['a byte order mark', `\ufeff${HEADER}\n1,0,1/4,48,a`],
    ['trailing empty columns', `${HEADER},,,\n1,0,1/4,48,a,,,`],
    ['blank lines', `\n\n${HEADER}\n\n,,,,\n1,0,1/4,48,a\n\n`],
    ['a row of units', 'Post,Sta,Gap,Level,Note\n,(ft),(in),in,\n1,0,1/4,48,a'],
    ['two header rows', 'Post,Sta,Plumb,,Note\nno.,ft,Gap in,Level in,\n1,0,1/4,48,a'],
    ['merged headers', 'Fence,,Plumb,,Note\nPost,Sta ft,Gap (in),Level (in),\n1,0,1/4,48,a'],
    ['titles above', `Oak Street fence,,,,\nDate: 5/8/2025,By: JS\n${HEADER}\n1,0,1/4,48,a`],
  ])('with %s gives the same row', (_, text) => {
    expect(Object.fromEntries(onlyRow(text).cells)).toMatchObject({
      post: '1',
      lean_gap: '1/4 in',
      level_length: '48 in',
      note: 'a',
    });
  });

  it('in UTF-16, or in Windows-1252 bytes, gives the same row', () => {
    const text = 'Post,Lean gap (in),Note\n1,1½,Höhe';
    const wide = new Uint8Array(
      new Uint16Array(Array.from(`\ufeff${text}`, (letter) => letter.charCodeAt(0))).buffer,
    );
    const narrow = Uint8Array.from(Array.from(text, (letter) => letter.charCodeAt(0)));
    for (const bytes of [wide, narrow]) {
      const [row] = bringIn(bytes).rows;
      expect(Object.fromEntries(row!.cells)).toEqual({
        post: '1',
        lean_gap: '1½ in',
        note: 'Höhe',
      });
    }
  });

  it('says why each line that is no row was passed over', () => {
    expect(
      passed(
        [
          'sep=,',
          'Oak Street',
          HEADER,
          '1,0,1/4,48,',
          HEADER,
          'Subtotal,,1/4,,',
          '-----,,,,',
          '2,8,1/4,48,total loss',
          'Run B,,,,',
          ',,,,a note on its own',
          'Total 2 posts,16,1/2,,',
          ',,1/2,,Checked by JS: total',
        ].join('\n'),
      ),
    ).toEqual([
      [1, 'it names the separator'],
      [2, 'a line above the header'],
      [3, 'the header'],
      [5, 'the header, repeated'],
      [6, 'a total or subtotal'],
      [7, 'a ruled line'],
      [9, 'a line of its own; it names the run, Run B'],
      [10, 'a remark: it has no post number and no reading'],
      [11, 'a total or subtotal'],
    ]);
  });

  it('keeps post numbers as they are written, doubled or missing ones too', () => {
    const intake = bringIn(
      `${HEADER}\n7A,0,1/4,48,\nP07,8,1/4,48,\n007,16,1/4,48,\n007,24,1/4,48,\n,32,1/4,48,`,
    );
    expect(cells(intake, 'post')).toEqual(['7A', 'P07', '007', '007', undefined]);
  });

  it('keeps what stands beyond its header, and takes short rows', () => {
    const intake = bringIn(`${HEADER}\n1,0,1/4,48,a,extra\n2,8`);
    expect([...intake.rows[0]!.kept]).toEqual([['column 6', 'extra']]);
    expect(Object.fromEntries(intake.rows[1]!.cells)).toEqual({ post: '2', station: '8 ft' });
  });

  it('keeps notes with commas, line ends and quotes', () => {
    const intake = bringIn(`${HEADER}\n1,0,1/4,48,"bark, ""soft""\nand wet"\n2,8,1/4,48,b`);
    expect(cells(intake, 'note')).toEqual(['bark, "soft"\nand wet', 'b']);
    expect(intake.rows.map(({ line }) => line)).toEqual([2, 4]);
    expect(intake.linesRead).toBe(3);
  });

  it('keeps the quote mark that a quoted note begins with', () => {
    const intake = bringIn(`${HEADER}\n1,0,1/4,48,"""'>left, then up"\n2,8,1/4,48,"""soft"" bark"`);
    expect(cells(intake, 'note')).toEqual([`"'>left, then up`, '"soft" bark']);
  });

  it('with an unclosed quote loses no row, and notes the line', () => {
    const intake = bringIn(`${HEADER}\n1,0,1/4,48,a\n2,8,"3/8,48,b\n3,16,1/4,48,c`);
    expect(cells(intake, 'post')).toEqual(['1', '2', '3']);
    expect(cells(intake, 'lean_gap')[1]).toBe('"3/8');
    expect(intake.notes.join()).toContain('line 3');
  });

  it.each([
    'Level: 48 in',
    'Level length = 48 in',
    '4 ft level',
    'All gaps over a 48" level',
    'Level,48 in',
    'Wasserwaage: 1200 mm',
  ])('that says “%s” once gives it to every row that lacks one', (line) => {
    const intake = bringIn(`${line}\nPost,Sta ft,Gap in\n1,0,1/4\n2,8,1/4`);
    const [first, second] = cells(intake, 'level_length');
    expect(first).toBe(second);
    expect(line.replace('=', '').replace(/.*?(?=\d)/, '')).toContain(first);
    expect(intake.rows[0]?.assumed.get('level_length')).toContain('stated once');
    expect(intake.asks.some(({ column }) => column === 'level_length')).toBe(false);
  });

  it('that states a level length leaves a row’s own alone', () => {
    const intake = bringIn('Level: 48 in\nPost,Sta ft,Gap in,Level in\n1,0,1/4,24\n2,8,1/4,');
    expect(cells(intake, 'level_length')).toEqual(['24 in', '48 in']);
  });

  it('of two tables reads each under its own header', () => {
    const intake = bringIn(
      'Post,Sta ft,Gap in,Level in\n1,0,1/4,48\nPost,Gap mm,Level mm,Toward\n2,5,1200,E',
    );
    expect(cells(intake, 'lean_gap')).toEqual(['1/4 in', '5 mm']);
    expect(cells(intake, 'lean_toward')).toEqual([undefined, 'E']);
  });

  it('asks once for each column that a remedy needs and it lacks', () => {
    const asks = bringIn("Post,Sta\n1,0'\n2,8'").asks;
    expect(asks.map(({ about, column, header }) => [about, column, header])).toEqual([
      ['missing', 'lean_gap', ''],
      ['missing', 'probe_depth', ''],
      ['missing', 'rock_test', ''],
    ]);
    expect(bringIn('Post,Gap in\n1,1/4').asks.map(({ column }) => column)).toContain(
      'level_length',
    );
  });

  it('with more cells in a line than headers keeps them, and says at which line', () => {
    const { rows, notes } = bringIn(`${HEADER}\n1,0,1/4,48,ok\n2,8,1/4,48,soft, all round\n`);
    expect([...rows[1]!.kept.values()]).toEqual(['all round']);
    expect(notes.join(' ')).toMatch(/More cells than headers at line 3: .*a comma split a note/);
  });

  it('with headers that repeat keeps them apart', () => {
    expect(mapped('Post,Gap in,Photo,Photo\n1,1/4,a,b')).toEqual({
      Post: 'post',
      'Gap in': 'lean_gap',
      Photo: null,
      'Photo (2)': null,
    });
  });

  it('with a column called __proto__ keeps it', () => {
    expect([...onlyRow('Post,Gap in,__proto__\n1,1/4,a').kept]).toEqual([['__proto__', 'a']]);
  });

  it.each([
    ['no header', '1,0,1/4\n2,8,1/4', /names its columns/],
    ['nothing on it', '\n,,\n', /no line with anything/],
    ['too many columns', `Post,Gap${',x'.repeat(600)}\n1,2`, /602 columns/],
  ])('with %s is refused by name, with what to do', (_, text, found) => {
    const read = readSite(new TextEncoder().encode(text), 'site.csv', {
      columns: COLUMNS,
      settled: new Map(),
    });
    if (!isProblem(read)) throw new Error('was read');
    expect(read.where).toContain('site.csv');
    expect(read.found).toMatch(found);
    expect(read.fix).not.toBe('');
  });
});
