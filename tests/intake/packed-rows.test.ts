import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packed, unpacked, type IntakeRow } from '../../src/intake/index.ts';

const texts = fc.array(
  fc.tuple(fc.constantFrom('post', 'lean_gap', '__proto__', 'a b'), fc.string()),
  {
    maxLength: 5,
  },
);
const row = fc
  .record({ line: fc.nat(), cells: texts, kept: texts, assumed: texts })
  .map(({ line, cells, kept, assumed }): IntakeRow => ({
    line,
    cells: new Map(cells),
    kept: new Map(kept),
    assumed: new Map(assumed),
  }));

describe('packed rows', () => {
  it('unpack to the same rows, after a copy between threads too', () => {
    fc.assert(
      fc.property(fc.array(row, { maxLength: 20 }), (rows) => {
        expect(unpacked(structuredClone(packed(rows)))).toEqual(rows);
      }),
    );
  });

  it('send each text of a column once', () => {
    const rows = ['firm', 'loose', 'firm'].map((outcome, line): IntakeRow => ({
      line,
      cells: new Map([['rock_test', outcome]]),
      kept: new Map(),
      assumed: new Map(),
    }));
    expect(packed(rows).columns.map(({ texts }) => texts)).toEqual([['firm', 'loose']]);
  });
});
