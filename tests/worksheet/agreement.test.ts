import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Notebook, fromText, toJson } from '../../src/notebook/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { openBook, type Ask, type Book } from '../../src/worksheet/index.ts';
import { siteOf } from './site.ts';

const JOB: Record<string, readonly string[]> = {
  units: ['inch', 'metric', ''],
  fence_height: ['6 ft', '4 ft', '', 'tall'],
  hole_width: ['12', '16 in', '', '?'],
  hole_shape: ['round', 'square'],
  gravel_depth: ['6', '0', ''],
  depth_rule: ['greatest', 'local minimum', 'below frost', 'ground and wind'],
  frost_depth: ['36 in', '', 'deep'],
  soil: ['clay', 'sand', ''],
  wind_speed: ['115 mph', ''],
  exposure: ['B', ''],
  mix: ['80 lb', '60 lb', 'nowhere'],
  bag_rounding: ['by job', 'by hole'],
  top_of_concrete: ['0', '-6 in'],
  crown_height: ['0', '2 in'],
  new_rails: ['all bays', 'no bay'],
  air_temperature: ['50 degF', ''],
};
const POST: Record<string, readonly string[]> = {
  post: ['1', '2', '3', ''],
  station: ['0', '8 ft', '16 ft', ''],
  lean_gap: ['3/8', '0', '2 1/4 in', '', '11/4'],
  level_length: ['48', ''],
  lean_toward: ['S', 'N', ''],
  probe_depth: ['1/8', '1 in', '', '?'],
  rock_test: ['firm', 'loose', 'snapped', ''],
  soundness: ['sound', 'soft', 'snapped', ''],
  post_size: ['6x6', '2 3/8 in round', '100 mm', '', 'odd'],
  depth_reached: ['18 in', ''],
  footing_depth: ['24 in', ''],
  remedy: ['replace', 'leave', ''],
  note: ['x', ''],
};
const HOLE: Record<string, readonly string[]> = {
  embedment: ['40 in', ''],
  width: ['18 in', ''],
  gravel: ['0', ''],
};
const FORMULAS: Record<string, readonly (string | undefined)[]> = {
  'posts.remedy': ['"replace"', undefined],
  'posts.height': ['fence_height + 1 ft', undefined],
  'holes.embedment': ['local_min_depth', 'max(36 in, posts.depth_needed)', undefined],
  'bags.count': ['by_hole', undefined],
};

// As a file without the column raises it.
const ASK: Omit<Ask, 'column'> = {
  id: '',
  sheet: 'posts',
  row: undefined,
  rowName: '',
  columnLabel: '',
  line: undefined,
  text: '',
  question: '',
  choices: [],
};

type Act = (book: Book) => void;

function typed(sheet: string, columns: Record<string, readonly string[]>): fc.Arbitrary<Act> {
  const cell = fc
    .constantFrom(...Object.keys(columns))
    .chain((column) => fc.tuple(fc.constant(column), fc.constantFrom(...columns[column]!)));
  return fc.tuple(fc.nat(20), cell).map(([at, [column, text]]) => (book) => {
    const view = book.sheet(sheet)!;
    if (view.rowCount === 0) return;
    book.type(sheet, view.rowId(at % view.rowCount), column, text);
  });
}

const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 5, arbitrary: typed('job', JOB) },
  { weight: 9, arbitrary: typed('posts', POST) },
  { weight: 2, arbitrary: typed('holes', HOLE) },
  {
    weight: 1,
    arbitrary: typed('bags', {
      mix: ['80 lb', 'own'],
      yield: ['0.5 ft^3', ''],
      set_hours: ['4 h', ''],
    }),
  },
  { weight: 3, arbitrary: fc.constant((book: Book) => void book.addRow('posts')) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom('posts', 'bags'), fc.nat(20))
      .map(([sheet, at]): Act => (book) => {
        const view = book.sheet(sheet)!;
        if (view.rowCount > 0) book.removeRow(sheet, view.rowId(at % view.rowCount));
      }),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom(...Object.keys(FORMULAS))
      .chain((name) => fc.tuple(fc.constant(name), fc.constantFrom(...FORMULAS[name]!)))
      .map(([name, formula]): Act => {
        const [sheet = '', column = ''] = name.split('.');
        return (book) => void book.setFormula(sheet, column, formula);
      }),
  },
  {
    weight: 1,
    arbitrary: fc
      .constantFrom<[string, string]>(['probe_depth', '0 in'], ['rock_test', 'firm'])
      .map(
        ([column, entry]): Act =>
          (book) =>
            book.answer({ ...ASK, column }, entry),
      ),
  },
  { weight: 3, arbitrary: fc.constant((book: Book) => book.undo()) },
  { weight: 2, arbitrary: fc.constant((book: Book) => book.redo()) },
);

/** All that a book shows: cells, totals, asks and stops. */
function all(book: Book): unknown {
  return {
    sheets: book.sheets.map((sheet) => ({
      id: sheet.id,
      rows: Array.from({ length: sheet.rowCount }, (_, row) => ({
        name: sheet.rowName(row),
        cells: Object.fromEntries(
          sheet.columns.map(({ id }) => {
            const { state, text, note, suggested } = sheet.cell(row, id);
            return [id, [state, text, note, suggested].join(' | ')];
          }),
        ),
      })),
      totals: [...sheet.totals()],
    })),
    asks: book.asks(),
    stops: book.stops(),
  };
}

function reopened(book: Book): Book {
  const read = fromText(JSON.stringify(toJson(book.notebook.document)));
  if (isProblem(read)) throw new Error(read.found);
  return openBook(new Notebook(read));
}

const START = [
  { station: '0', lean_gap: '3/8', level_length: '48', probe_depth: '1/8', rock_test: 'firm' },
  { station: '8 ft', lean_gap: '2', level_length: '48', probe_depth: '1', rock_test: 'firm' },
  { station: '16 ft', rock_test: 'snapped' },
];

describe('a book after any acts', () => {
  it('shows what a book freshly opened on the same notebook shows', () => {
    fc.assert(
      fc.property(fc.array(act, { minLength: 1, maxLength: 14 }), (acts) => {
        const book = siteOf({}, START);
        for (const each of acts) each(book);
        expect(all(book)).toEqual(all(reopened(book)));
      }),
      { numRuns: 80 },
    );
  }, 60_000);

  it('is back at its start once all is undone, and at its end once all is redone', () => {
    fc.assert(
      fc.property(fc.array(act, { minLength: 1, maxLength: 14 }), (acts) => {
        const book = siteOf({}, START);
        undoAll(book);
        const empty = all(book);
        redoAll(book);
        for (const each of acts) each(book);
        redoAll(book);
        const end = all(book);
        undoAll(book);
        expect(all(book)).toEqual(empty);
        redoAll(book);
        expect(all(book)).toEqual(end);
      }),
      { numRuns: 30 },
    );
  }, 60_000);
});

function undoAll(book: Book): void {
  while (book.undoLabel !== undefined) book.undo();
}

function redoAll(book: Book): void {
  while (book.redoLabel !== undefined) book.redo();
}
