import fc from 'fast-check';
import { expect, it } from 'vitest';
import { isSettled } from '../../src/ui/row-freshness.ts';
import { openBook, type Book, type BookChange } from '../../src/worksheet/index.ts';
import { runOfPosts } from '../worksheet/run-of-posts.ts';

const POSTS = 4;
type Shown = ReadonlyMap<string, { readonly looks: string; readonly isSettled: boolean }>;

const edits = fc.array(
  fc.oneof(
    fc.record({
      sheet: fc.constant('posts'),
      row: fc.nat(POSTS - 1).map((row) => `r${String(row)}`),
      column: fc.constantFrom('post', 'lean_gap', 'probe_depth', 'rock_test', 'remedy', 'station'),
      text: fc.constantFrom('', '1 1/8', '28 mm', '0', '0 in', 'firm', 'snapped', 'replace', '?'),
    }),
    fc.record({
      sheet: fc.constant('holes'),
      row: fc.constantFrom('r0', 'r3'),
      column: fc.constantFrom('depth_reached', 'width'),
      text: fc.constantFrom('', '20 in', '14 in'),
    }),
    fc.record({
      sheet: fc.constant('job'),
      row: fc.constant('job'),
      column: fc.constantFrom('soil', 'frost_depth', 'fence_height', 'mix', 'waste', 'units'),
      text: fc.constantFrom('', 'clay', '40 in', '8 ft', '60 lb', '5%', 'mm', 'inch'),
    }),
  ),
  { minLength: 1, maxLength: 5 },
);

// A screen draws again only the rows it is told of: one left out would go on showing what no longer holds.
it('a change tells of every row that shows something else after it', () => {
  let settled = 0;
  fc.assert(
    fc.property(edits, fc.boolean(), (acts, takesBack) => {
      const book = openBook(runOfPosts(POSTS));
      let told: (BookChange['rows'] | 'anything')[] = [];
      book.subscribe(({ rows }) => told.push(rows ?? 'anything'));
      for (const { sheet, row, column, text } of acts) {
        for (const act of [
          () => {
            book.type(sheet, row, column, text);
          },
          ...(takesBack ? [() => { book.undo(); }] : []), // prettier-ignore
        ]) {
          told = [];
          const before = shown(book);
          act();
          book.stops();
          const after = shown(book);
          for (const [name, { looks }] of after) {
            // A row where something waits is drawn again at every change.
            const was = before.get(name);
            if (was?.looks === looks || was?.isSettled === false) continue;
            settled += 1;
            const [of = '', id = ''] = name.split('/');
            const isTold = told.some((rows) => {
              const here = rows === 'anything' ? 'all' : rows?.get(of);
              return here === 'all' || here?.has(id);
            });
            expect(isTold, `${name} after ${sheet}.${column} of ${row}: ${text}`).toBe(true);
          }
        }
      }
    }),
    { numRuns: 6 },
  );
  expect(settled).toBeGreaterThan(0);
});

it('a line of a list that waits may come to wait for something else', () => {
  const book = openBook(runOfPosts(POSTS));
  const haul = () => {
    const price = book.sheet('price');
    const row = Array.from({ length: price?.rowCount ?? 0 }, (_, at) => at);
    const at = row.find((each) => price?.rowId(each) === 'haul') ?? -1;
    const column = price?.columns.find(({ id }) => id === 'amount');
    const cell = price?.cell(at, 'amount');
    if (!column || !cell) throw new Error('There is no line for the haul.');
    return { cell, isSettled: isSettled(column, cell) };
  };
  const before = haul();
  book.type('posts', 'r3', 'probe_depth', '0');
  expect(haul().cell.note).not.toBe(before.cell.note);
  expect(before).toMatchObject({ cell: { state: 'waiting' }, isSettled: false });
});

/** What each cell shows, by sheet, row and column. */
function shown(book: Book): Shown {
  const cells = new Map<string, { looks: string; isSettled: boolean }>();
  for (const sheet of book.sheets) {
    for (let row = 0; row < sheet.rowCount; row += 1) {
      for (const column of sheet.columns) {
        const cell = sheet.cell(row, column.id);
        const { state, text, note, typed, suggested } = cell;
        cells.set(`${sheet.id}/${sheet.rowId(row)}/${column.id}`, {
          looks: [state, text, note, typed, suggested].join('|'),
          isSettled: isSettled(column, cell),
        });
      }
    }
  }
  return cells;
}
