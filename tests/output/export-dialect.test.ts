import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bringIn, intakeColumns, readSite } from '../../src/intake/index.ts';
import { Notebook, type Row } from '../../src/notebook/index.ts';
import {
  fileReports,
  holeTable,
  materialLines,
  materialTable,
  postTable,
  readMaterialList,
  tableCsv,
  writeOptions,
  type Dialect,
} from '../../src/output/index.ts';
import { isProblem, sentence } from '../../src/units/index.ts';
import { openBook, startDocument, type Book } from '../../src/worksheet/index.ts';

const dialect = fc.record<Dialect>({
  separator: fc.constantFrom(',', ';', '\t'),
  decimal: fc.constantFrom('.', ','),
  mark: fc.boolean(),
  lengths: fc.constantFrom('job', 'in', 'ft', 'mm', 'm'),
});

const COLUMNS = [
  'post',
  'lean_gap',
  'level_length',
  'lean_toward',
  'grade_shift',
  'station',
  'note',
];

// An open book costs far more than its rows: both are opened once, and every act is taken back.
const first = openBook(new Notebook(startDocument('first')));
const second = openBook(new Notebook(startDocument('second')));

describe('the post list in any dialect', () => {
  it('brings every entry back to the same value', () => {
    const gap = fc.oneof(
      fc.integer({ min: 0, max: 640 }).map((parts) => `${String(parts / 64)} in`),
      fc.integer({ min: -99_999, max: 99_999 }).map((parts) => `${String(parts / 1000)} mm`),
      fc.constantFrom('1.234 m', '5\' 3 1/2"', '-3/8 in', '0 in', '1200 mm', '1.2 m'),
    );
    const row = fc.record({
      gap,
      shift: gap,
      station: fc.integer({ min: 0, max: 9999 }).map((parts) => `${String(parts / 100)} ft`),
      note: fc.constantFrom('', '1.5 bags; wet, soft', '-3/8', '=1+1', '"', '1,5', 'x\ny'),
    });
    fc.assert(
      fc.property(dialect, fc.array(row, { minLength: 1, maxLength: 5 }), (how, readings) => {
        const rows = readings.map(({ gap: lean, shift, station, note }, at): Row => ({
          id: `p${String(at)}`,
          cells: new Map([
            ['post', `${String(at + 1)}A`],
            ['station', station],
            ['lean_gap', lean],
            ['level_length', '48 in'],
            ['lean_toward', 'S'],
            ['grade_shift', shift],
            ...(note === '' ? [] : [['note', note] as const]),
          ]),
        }));
        first.notebook.do('rows', [{ edit: 'add rows', sheet: 'posts', at: 0, rows }]);
        const written = tableCsv(postTable(first, how), writeOptions(how));
        take(second, written);
        const [before, after] = [first, second].map((book) => values(book));
        first.undo();
        second.undo();
        expect(after, written).toEqual(before);
      }),
      // Chance once found a tab-parted list with decimal commas and notes over two lines.
      {
        numRuns: 150,
        examples: [
          [
            { separator: '\t', decimal: ',', mark: false, lengths: 'mm' },
            [
              { gap: '-2.034 mm', shift: '0 mm', station: '0.01 ft', note: 'x\ny' },
              { gap: '0.015625 in', shift: '1.234 m', station: '0.01 ft', note: 'x\ny' },
              { gap: '-0.107 mm', shift: '1.234 m', station: '0.01 ft', note: '' },
            ],
          ],
        ],
      },
    );
  }, 60_000);

  it('leaves a length in millimeters as it was typed where inches have no end', () => {
    const cells = new Map([
      ['post', '1'],
      ['station', '3 m'],
      ['lean_gap', '4 mm'],
      ['level_length', '1200 mm'],
      ['probe_depth', '3/8 in'],
    ]);
    first.notebook.do('row', [
      { edit: 'add rows', sheet: 'posts', at: 0, rows: [{ id: 'a', cells }] },
    ]);
    const [, row = ''] = tableCsv(postTable(first)).split('\r\n');
    first.undo();
    expect(row).toMatch(/^1,3 m,4 mm,1200 mm,/);
    expect(row).toMatch(/,(?:0\.375|3\/8) in,/);
  });

  it('writes lengths in the unit and with the mark that was asked for', () => {
    const how: Dialect = { separator: ';', decimal: ',', mark: true, lengths: 'm' };
    const cells = new Map([
      ['post', '1'],
      ['station', '8 ft'],
      ['lean_gap', '1/2 in'],
      ['note', '1.5'],
    ]);
    first.notebook.do('row', [
      { edit: 'add rows', sheet: 'posts', at: 0, rows: [{ id: 'a', cells }] },
    ]);
    const [head = '', row = ''] = tableCsv(postTable(first, how), writeOptions(how)).split('\r\n');
    first.undo();
    expect(head).toMatch(/^\ufeffPost;Station;/);
    // 8 ft is 2.4384 m and 1/2 in 0.0127 m, by definition of the inch; a note is nobody's number.
    expect(row.split(';')).toEqual(expect.arrayContaining(['2,4384 m', '0,0127 m', '1.5']));
  });
});

describe('the hole schedule in any dialect', () => {
  it('brings the depths that were reached back to the same values', () => {
    const depth = fc.integer({ min: 1, max: 900 });
    const entry = fc.oneof(
      depth.map((parts) => `${String(parts / 16)} in`),
      depth.map((millimetres) => `${String(millimetres)} mm`),
    );
    fc.assert(
      fc.property(dialect, fc.array(entry, { minLength: 1, maxLength: 5 }), (how, depths) => {
        const rows = depths.map((reached, at): Row => ({
          id: `p${String(at)}`,
          cells: new Map([
            ['post', `${String(at + 1)}A`],
            ['remedy', 'replace'],
            ['depth_reached', reached],
          ]),
        }));
        first.notebook.do('rows', [{ edit: 'add rows', sheet: 'posts', at: 0, rows }]);
        const written = tableCsv(holeTable(first, how), writeOptions(how));
        take(second, written);
        const [before, after] = [first, second].map((book) =>
          values(book, ['post', 'remedy', 'depth_reached']),
        );
        first.undo();
        second.undo();
        expect(after, written).toEqual(before);
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});

describe('the supplier’s list in any dialect', () => {
  it('brings every length and quantity back to the same value', () => {
    const columns = new Map([['probe_depth', '2 in']]);
    const rows = [1, 2, 3].map((at): Row => ({
      id: `p${String(at)}`,
      cells: new Map([['post', String(at)], ...columns, ['rock_test', 'firm']]),
    }));
    first.notebook.do('rows', [{ edit: 'add rows', sheet: 'posts', at: 0, rows }]);
    const lines = materialLines(first);
    expect(lines.some(({ length }) => length !== undefined)).toBe(true);
    fc.assert(
      fc.property(dialect, (how) => {
        const text = tableCsv(materialTable(first, how), writeOptions(how));
        expect(readMaterialList(new TextEncoder().encode(text))).toEqual(lines);
      }),
    );
    first.undo();
  });
});

describe('the report of a file', () => {
  it('keeps count of its lines, and of those still asked about', () => {
    const probes = 'Post,Lean gap,Over,Probe,Rock test\n';
    take(second, `Title\n${probes}1,8-May,48",0,firm\n2,1/4",48",0,firm\n`);
    const reports = () => fileReports(second.notebook.document, second.asks());
    expect(reports()).toMatchObject([
      {
        name: 'list.csv',
        account: { read: 4, imported: 1, asked: 1, passedOver: 2 },
        words: '4 lines read = 1 imported + 1 asked about + 2 passed over.',
        asked: [{ line: 3 }],
      },
    ]);
    const [ask] = second.asks().filter(({ column }) => column === 'lean_gap');
    second.answer(ask!, '5/8 in');
    expect(reports()[0]?.account).toEqual({ read: 4, imported: 2, asked: 0, passedOver: 2 });
  });
});

function take(book: Book, text: string): void {
  const bytes = new TextEncoder().encode(text);
  const columns = book.sheet('posts')?.columns ?? [];
  const intake = readSite(bytes, 'list.csv', intakeColumns(columns, new Map()));
  if (isProblem(intake)) throw new Error(sentence(intake));
  bringIn(intake, { name: 'list.csv', bytes }, book.notebook);
}

function values(book: Book, columns: readonly string[] = COLUMNS): unknown[][] {
  const sheet = book.sheet('posts')!;
  return Array.from({ length: sheet.rowCount }, (_, row) =>
    columns.map((column) => {
      const { value, typed } = sheet.cell(row, column);
      return value ?? typed;
    }),
  );
}
