import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RowStore, type RowPart } from '../../src/intake/row-store.ts';
import { ownRow, rowsOf } from '../../src/intake/stored-rows.ts';

const NAMES = ['post', 'lean_gap', '__proto__', 'a b'];
const PARTS: readonly RowPart[] = ['cells', 'kept', 'assumed'];
const FILE = '7,3/8,,12.5';
/** Stretches of that file, and what they say. */
const STRETCHES = [
  [0, 1],
  [2, 5],
  [7, 11],
] as const;

const filled = fc.record({
  part: fc.constantFrom(...PARTS),
  name: fc.constantFrom(...NAMES),
  text: fc.oneof(
    fc.string(),
    fc.record({ at: fc.constantFrom(...STRETCHES), behind: fc.constantFrom('', ' in', ' mm') }),
  ),
});

describe('stored rows', () => {
  it('give back what was put in, after a copy between threads too', () => {
    fc.assert(
      fc.property(fc.array(fc.array(filled, { maxLength: 6 }), { maxLength: 12 }), (rows) => {
        const store = new RowStore(FILE, rows.length);
        const expected = rows.map((row, at) => {
          const parts = { cells: new Map(), kept: new Map(), assumed: new Map() };
          store.next(at + 2);
          for (const { part, name, text } of row) {
            if (typeof text === 'string') store.set(part, name, text);
            else store.column(part, name).put(at, cellsAt(text.at), 0, text.behind);
            const said = typeof text === 'string' ? text : FILE.slice(...text.at) + text.behind;
            parts[part].set(name, said);
          }
          return { line: at + 2, ...parts };
        });
        const found = rowsOf(structuredClone(store.stored())).map(ownRow);
        expect(found).toEqual(expected);
      }),
    );
  });

  it('keep a text that comes again once', () => {
    const store = new RowStore('', 3);
    for (const outcome of ['firm', 'loose', 'firm']) {
      store.next(1);
      store.set('cells', 'rock_test', outcome);
    }
    expect(store.stored().columns.map(({ texts }) => texts)).toEqual([['firm', 'loose']]);
  });
});

function cellsAt([from, to]: readonly [number, number]) {
  const [starts, ends] = [Int32Array.of(from), Int32Array.of(to)];
  return { text: FILE, isOfFile: true, from: starts, to: ends, cell: () => FILE.slice(from, to) };
}
