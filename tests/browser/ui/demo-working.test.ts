import { describe, expect, it } from 'vitest';
import '../../../src/ui/working.ts';
import { unitFace, withUnit } from '../../../src/ui/unit-face.ts';
import type { Book } from '../../../src/worksheet/index.ts';
import { demoBook, filledDemo } from './filled-demo.ts';
import { drawn, inside, onPage, words } from './on-page.ts';

/** One worked-out column. */
interface Computed {
  readonly name: string;
  readonly sheet: string;
  readonly column: string;
  readonly unit: string;
  readonly rows: readonly number[];
}

function computedIn(book: Book): readonly Computed[] {
  return book.sheets.flatMap((sheet) =>
    sheet.columns.flatMap(({ id, formula, unit }) =>
      formula === undefined
        ? []
        : [
            {
              name: `${sheet.id}.${id}`,
              sheet: sheet.id,
              column: id,
              unit,
              rows: Array.from({ length: sheet.rowCount }, (_, row) => row),
            },
          ],
    ),
  );
}

const book = filledDemo();

describe('the working of the demo job', () => {
  const columns = computedIn(book);

  it('has every worked-out column of every sheet, each known on some row', () => {
    expect(columns.length).toBeGreaterThan(250);
    const unknown = columns.filter(({ sheet, column, rows }) => {
      const view = book.sheet(sheet)!;
      return rows.every((row) => {
        const { state, text } = view.cell(row, column);
        return state !== 'known' || text === '';
      });
    });
    expect(unknown.map(({ name }) => name)).toEqual([]);
  });

  it.each(columns)('of $name shows what the cell shows', async ({ sheet, column, unit, rows }) => {
    const view = book.sheet(sheet)!;
    const panel = await onPage('bp-working', { book, place: undefined });
    for (const row of rows) {
      const cell = view.cell(row, column);
      panel.place = { sheet, row: view.rowId(row), column };
      await drawn(panel);
      const shown = cell.text === '' ? '' : words(inside(panel, '.value'));
      expect(shown, view.rowName(row)).toBe(withUnit(cell.text, unit));
      const isTyped = (cell.typed ?? '') !== '';
      if (cell.state !== 'known' || isTyped) continue;
      // What the formula comes to, with its own unit, is that same value.
      const detail = inside(panel, 'bp-working-detail');
      const comes = detail.shadowRoot?.querySelector('.comes .value');
      expect(words(comes), view.rowName(row)).toBe(withUnit(cell.text, unit));
    }
  });

  it('says for every cell of the job as it is opened what the cell says', () => {
    const demo = demoBook();
    for (const { sheet, column, unit, rows } of computedIn(demo)) {
      const view = demo.sheet(sheet)!;
      for (const row of rows) {
        const cell = view.cell(row, column);
        const working = demo.working(sheet, view.rowId(row), column);
        expect(working?.state).toBe(cell.state);
        const value = cell.state === 'known' ? `${cell.text} ${unit}`.trim() : cell.text;
        expect(unitFace(working?.value ?? ''), `${sheet}.${column}`).toBe(unitFace(value));
      }
    }
  });
});
