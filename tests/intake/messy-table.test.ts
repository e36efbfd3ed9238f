import { describe, expect, it } from 'vitest';
import { bringIn, intakeColumns, readSite } from '../../src/intake/index.ts';
import { Notebook } from '../../src/notebook/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { openBook, startDocument, type Ask, type CellView } from '../../src/worksheet/index.ts';

// What crews write in a cell, row by row, and what has to come of it on the sheets. Lengths are hand-worked from
// 1 in = 25.4 mm, by definition; angles are atan of gap over level. What a hand means by a mark that can be read in
// two ways is common practice, no source: it is asked.

describe('what crews write for a length, in a file in inches, is read:', () => {
  it.each([
    ['feet and inches', [`5'-3 1/2"`, `5' 3½"`, '5′-3½″', '5’3 1/2”'], 1612.9],
    ['feet and inches with accents or two single marks', ['5´3´´', `5'3''`], 1600.2],
    ['metric', ['450mm', '0.45 m', '0,45 m', '45 cm'], 450],
    ['a bare number under a header in inches', ['63.5'], 1612.9],
    ['a bare number and a fraction under a header in inches', ['5 3/4'], 146.05],
    [
      'a number and a fraction',
      ['1 1/4"', '1-1/4"', '1¼', '1 1 / 4', '1–1/4', '1\u20091/4'],
      31.75,
    ],
    ['a fraction below nought', ['-3/8', '−3/8', '–3/8'], -9.525],
    ['centers', ["8'oc"], 2438.4],
    ['nought', ['0'], 0],
  ])('%s, %j', (_, cells, expected) => {
    for (const cell of cells) expect([cell, gapOf(cell).gap]).toEqual([cell, expected]);
  });

  it('a fraction with a direction, whose size is one and whose direction is kept', () => {
    for (const cell of ['3/8 E', 'E 3/8'])
      expect([cell, gapOf(cell).gap, gapOf(cell).toward]).toEqual([cell, 9.525, 'E']);
  });

  it('an about-sign, and is marked as approximate', () => {
    for (const cell of ['~3/8', 'abt 3/8']) {
      expect([cell, gapOf(cell).gap]).toEqual([cell, 9.525]);
      expect(gapOf(cell).cell('lean_gap').note).toContain('approximate');
    }
    expect(gapOf('3/8').cell('lean_gap').note).not.toContain('approximate');
  });

  it('a gap with its level length, “3/8 out in 4′”: 0.448 deg', () => {
    const read = sheetOf(`Post,Gap,Level\n1,3/8 out in 4',`);
    expect([read.mm('lean_gap'), read.mm('level_length')]).toEqual([9.525, 1219.2]);
    expect(degrees(read.cell('lean_angle'))).toBeCloseTo(0.448, 3);
  });

  it.each([
    ['1/8 per ft', 0.597],
    ['2°', 2],
    ['2º', 2],
    ['2 deg', 2],
    ['2%', 1.146],
  ])('a slope or an angle, “%s”: %s deg, whatever the level', (cell, expected) => {
    expect(degrees(gapOf(cell).cell('lean_angle'))).toBeCloseTo(expected, 3);
  });

  it('a surveyor’s station, “1+20”: 120 ft', () => {
    expect(sheetOf('Post,Sta,Gap (in)\n1,1+20,0').mm('station')).toBe(36576);
  });

  it.each([
    ['10x24', 254, 609.6],
    [`12"ø x 30"`, 304.8, 762],
    ['300x300x450 mm', 300, 450],
  ])('a footing, “%s”: width and depth', (cell, width, depth) => {
    const read = sheetOf(`Post;Gap (in);Footing\n1;0;"${cell.replaceAll('"', '""')}"`);
    expect([read.mm('footing_width'), read.mm('footing_depth')]).toEqual([width, depth]);
  });

  // NDS 2018 Supplement, Table 1A: a 4x4 is dressed to 3 1/2 in.
  it('a name of lumber, “4x4”: 88.9 mm, said beside it, and a rough one is typed as a size', () => {
    const holes = (size: string) => sheetOf(`Post,Size,Rock\n1,${size},snapped`, 'holes');
    expect(holes('4x4').cell('post_size').text).toBe('4x4');
    expect(holes('4x4').mm('post_width')).toBe(88.9);
    expect(holes('4 in x 4 in').mm('post_width')).toBe(101.6);
  });
});

describe('what a crew’s cell can’t tell alone is asked, with the readings it may stand for:', () => {
  it.each([
    ['5-3', [1600.2]],
    ['5-8', [1727.2, 15.875]],
    ['11/4', [69.85, 31.75]],
    [`5.3'`, [1615.44, 1600.2]],
    ['1,200', [30480, 30.48]],
    ['plumb', [0, 'blank']],
    ['ok', [0, 'blank']],
    ['-', [0, 'blank']],
    ['n/a (shed)', ['blank']],
    ['?', ['blank']],
    ['8-May', [15.875]],
    ['May-08', [15.875]],
    ['5/8/2025', [15.875]],
    ['45785', [15.875, 1162939]],
  ])('“%s” may be %j', (cell, expected) => {
    const { asks, cell: cellOf, answered } = gapOf(cell);
    expect(cellOf('lean_gap').value).toBeUndefined();
    expect(cellOf('lean_angle').value).toBeUndefined();
    expect(asks.map(({ line, column }) => [line, column])).toEqual([[2, 'lean_gap']]);
    expect(asks[0]?.question).toContain(cell);
    expect(asks[0]?.choices.map((_, place) => answered(place))).toEqual(expected);
  });

  it('a ditto mark may be the entry above it', () => {
    const read = sheetOf('Post;Gap (in);Level (in)\n1;1/4;48\n2;"""";48', 'posts', 1);
    expect(read.asks.map(({ line, column }) => [line, column])).toEqual([[3, 'lean_gap']]);
    expect(read.answered(0)).toBe(6.35);
  });

  it('“63.5” with no unit anywhere is asked once for its column', () => {
    const { asks } = sheetOf('Post,Gap\n1,63.5\n2,12\n3,8');
    const units = asks.filter(({ column }) => column === 'lean_gap');
    expect(units.map(({ line, text }) => [line, text])).toEqual([[undefined, '63.5']]);
    expect(units[0]?.choices.map(({ entry }) => entry)).toEqual(['in', 'mm']);
  });

  it('“1,200” is not, where the file shows which mark parts the decimals', () => {
    expect(sheetOf('Post;Station m;Gap mm\n1;2.40;1,200').mm('lean_gap')).toBe(1200);
    expect(sheetOf('Post;Station m;Gap mm\n1;2,40;1,2').mm('lean_gap')).toBe(1.2);
  });

  it('a cell nobody can read stands as it was typed', () => {
    const { asks, cell } = gapOf('leaning a bit');
    expect(cell('lean_gap').typed).toBe('leaning a bit');
    expect(asks.map(({ line, column }) => [line, column])).toEqual([[2, 'lean_gap']]);
  });

  it('a blank one is blank and not nought', () => {
    const { asks, cell } = gapOf('');
    expect([cell('lean_gap').value, cell('lean_angle').value, asks]).toEqual([
      undefined,
      undefined,
      [],
    ]);
  });
});

interface Shown {
  readonly cell: (column: string) => CellView;
  readonly mm: (column: string) => number | undefined;
  readonly asks: readonly Ask[];
  /** What the first ask’s column comes to with the choice in a place. [mm] */
  readonly answered: (place: number) => number | 'blank' | undefined;
}

/** A lean cell in a file in inches, over a 48 in level. */
function gapOf(
  cell: string,
): Shown & { readonly gap: number | undefined; readonly toward: string } {
  const read = sheetOf(`Post;Gap (in);Level (in);To\n1;"${cell.replaceAll('"', '""')}";48;`);
  return { ...read, gap: read.mm('lean_gap'), toward: read.cell('lean_toward').text };
}

// One book for all: an open book costs far more than a file, and undo leaves it as it was.
const notebook = new Notebook(startDocument('messy'));
const book = openBook(notebook);

/** A row of a sheet once a file came in in place of the last, and what is asked beside probe readings and the rock test. */
function sheetOf(text: string, id = 'posts', row = 0): Shown {
  notebook.undo();
  const bytes = new TextEncoder().encode(text);
  const intake = readSite(
    bytes,
    'site.csv',
    intakeColumns(book.sheet('posts')!.columns, new Map()),
  );
  if (isProblem(intake)) throw new Error(intake.found);
  bringIn(intake, { name: 'site.csv', bytes }, notebook);
  const cell = (column: string): CellView => book.sheet(id)!.cell(row, column);
  const mm = (column: string): number | undefined => {
    const { value } = cell(column);
    return typeof value === 'number' ? Math.round(value * 1e7) / 1e4 : undefined;
  };
  const asks = book.asks().filter(({ column }) => !['probe_depth', 'rock_test'].includes(column));
  const answered = (place: number): number | 'blank' | undefined => {
    const [ask] = asks;
    const choice = ask?.choices[place];
    if (!ask || !choice) return undefined;
    book.answer(ask, choice.entry);
    const now = cell(ask.column).state === 'blank' ? 'blank' : mm(ask.column);
    book.undo();
    return now;
  };
  return { cell, mm, asks, answered };
}

function degrees({ value }: CellView): number {
  return (Number(value) * 180) / Math.PI;
}
