import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bringIn, intakeColumns, readSite } from '../../src/intake/index.ts';
import { Notebook, fromText } from '../../src/notebook/index.ts';
import {
  accountFor,
  fileName,
  materialLines,
  materialTable,
  materialText,
  notebookFile,
  postTable,
  readMaterialList,
  tableCsv,
} from '../../src/output/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';
import { openBook, startDocument, type Book } from '../../src/worksheet/index.ts';
import { sample } from '../worksheet/take-off.ts';

function bookOf(csv: string): Book {
  const book = openBook(new Notebook(startDocument('Test run')));
  const bytes = new TextEncoder().encode(csv);
  const columns = book.sheet('posts')?.columns ?? [];
  const intake = readSite(bytes, 'site.csv', intakeColumns(columns, new Map()));
  if (isProblem(intake)) throw new Error(sentence(intake));
  bringIn(intake, { name: 'site.csv', bytes }, book.notebook);
  return book;
}

const LOOSE =
  'Post,Sta,Lean gap,Over,Probe,Rock test\n1,0,0,48",0,firm\n2,8\',1/2",48",1",loose\n3,16\',0,48",0,firm\n';

describe('the supplier’s list', () => {
  it('reads back from its CSV to the same lines', () => {
    const book = bookOf(LOOSE);
    const csv = tableCsv(materialTable(book));
    const lines = materialLines(book);
    expect(lines.length).toBeGreaterThan(2);
    expect(readMaterialList(new TextEncoder().encode(csv))).toEqual(lines);
  });

  it('says in each line how many of what', () => {
    expect(materialText(bookOf(LOOSE)).split('\n')[0]).toBe(
      '1 each  4x4 post 10 ft (UC4A ground contact; or 12 ft cut down)',
    );
  });

  it('never starts a cell with what another program would run', () => {
    const book = bookOf(LOOSE);
    book.type('job', 'job', 'post_size', '=2+5');
    book.type('job', 'job', 'rail_size', '@SUM(1)');
    const cells = tableCsv(materialTable(book)).split(/[,\r\n]+/);
    expect(cells.filter((cell) => /^[=+@]/.test(cell))).toEqual([]);
  });

  // Hand-worked: two holes of 1.799 ft3 x 1.1 / 0.45 = 8.80 bags, or 4.40 a hole; / 0.375 = 10.56. The wind run,
  // 13 of 1.769 x 1.1 / 0.45 = 56.2, or 4.32 a hole.
  it.each([
    { run: 'D1-tree-run', inputs: {}, instead: '9 of 60 lb' },
    { run: 'D1-tree-run', inputs: { bag_rounding: 'by hole' }, instead: '10 of 60 lb' },
    { run: 'D1-tree-run', inputs: { substitute_mix: '50 lb' }, instead: '11 of 50 lb' },
    { run: 'D4-wind', inputs: {}, instead: '57 of 60 lb' },
    { run: 'D4-wind', inputs: { bag_rounding: 'by hole' }, instead: '65 of 60 lb' },
    // No smaller bag is sold by the pound, so the smallest of the others.
    { run: 'D1-tree-run', inputs: { mix: '40 lb' }, instead: '11 of 50 lb' },
    // 3 x 0.04073 m3 x 1.1 x 86 = 11.56.
    { run: 'D5-clay-metric', inputs: {}, instead: '12 of 25 kg' },
    { run: 'D1-tree-run', inputs: { substitutes: 'no' }, instead: '' },
  ])('names another mix with its bags: $instead on $run $inputs', ({ run, inputs, instead }) => {
    const line = materialLines(sample(run, inputs)).find(({ item }) => item === 'concrete mix');
    expect(line?.instead).toBe(instead);
  });

  it('says what is cut down where the yard is out, and nothing where nothing else will do', () => {
    const feet = (book: Book) =>
      materialLines(book).map(({ item, longer }) => [item, longer && longer / 0.3048]);
    expect(feet(sample('D1-tree-run'))[0]).toEqual(['post', expect.closeTo(12, 9)]);
    expect(feet(sample('D1-tree-run', { substitutes: 'no' }))[0]).toEqual(['post', undefined]);
    expect(materialText(sample('D1-tree-run'))).toContain(
      '7 bag  80 lb concrete mix (whole bags for the job; or 9 of 60 lb)',
    );
  });

  it('is read from lists that were written before substitutes were on them', () => {
    const older = tableCsv(materialTable(sample('D1-tree-run')).map((cells) => cells.slice(0, 8)));
    const lines = readMaterialList(new TextEncoder().encode(older));
    expect(isProblem(lines) ? [] : lines.map(({ quantity }) => quantity)).toEqual([2, 9, 7, 2, 1]);
  });

  it('is refused with advice where its heads are others', () => {
    const read = readMaterialList(new TextEncoder().encode('a,b\n1,2\n'));
    expect(isProblem(read) && read.fix).toContain('Line, Item, Size');
  });
});

describe('the post list', () => {
  it('brings back every reading as it was, for any sixteenths', () => {
    const sixteenths = fc.integer({ min: 0, max: 160 });
    const rows = fc.array(
      fc.record({ gap: sixteenths, probe: sixteenths, along: fc.option(sixteenths) }),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(rows, (readings) => {
        const lines = readings.map(({ gap, probe, along }, at) =>
          [
            at + 1,
            `${String(at * 8)} ft`,
            `${String(gap / 16)} in`,
            '48 in',
            along === null ? '' : `${String(along / 16)} in`,
            `${String(probe / 16)} in`,
            'firm',
          ].join(','),
        );
        const first = bookOf(
          ['Post,Station,Lean gap,Level length,Gap along,Probe,Rock test', ...lines].join('\n'),
        );
        const again = bookOf(tableCsv(postTable(first)));
        for (const column of [
          'post',
          'station',
          'lean_gap',
          'level_length',
          'lean_gap_along',
          'probe_depth',
          'rock_test',
          'remedy',
        ]) {
          readings.forEach((_, row) => {
            expect(again.sheet('posts')?.cell(row, column).value).toEqual(
              first.sheet('posts')?.cell(row, column).value,
            );
          });
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe('the account of a file', () => {
  it('adds up, and asks about the whole file take no line', () => {
    const book = bookOf('Some title\nPost,Lean gap,Over\n1,8-May,48"\n1,1/4",48"\n2,1/4",48"\n');
    const [file] = book.notebook.document.files;
    const account = accountFor(file?.linesRead ?? 0, file?.passedOver ?? [], book.asks());
    expect(account).toEqual({ read: 5, imported: 1, asked: 2, passedOver: 2 });
    expect(book.asks().some(({ line }) => line === undefined)).toBe(true);
  });
});

describe('the notebook file', () => {
  it('opens to the same document', () => {
    const { document } = bookOf(LOOSE).notebook;
    expect(fromText(notebookFile(document))).toEqual(document);
  });

  it.each([0.1, 0.5, 0.9])('cut off at %s of its length is refused whole', (share) => {
    const text = notebookFile(bookOf(LOOSE).notebook.document);
    expect(isProblem(fromText(text.slice(0, text.length * share)))).toBe(true);
  });

  it('gets a name any system takes', () => {
    expect(fileName('Tannery Lane: “back” run/2', 'json')).toBe('tannery-lane-back-run-2.json');
  });
});
