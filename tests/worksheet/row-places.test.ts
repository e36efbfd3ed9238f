import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openBook, type Book, type SheetView } from '../../src/worksheet/index.ts';
import { cutLists } from '../../src/worksheet/cut-lists.ts';
import { runOfPosts } from './run-of-posts.ts';

const POSTS = 6;

const acts = fc.array(
  fc.oneof(
    fc.record({ act: fc.constant('type' as const), at: fc.nat(), text: fc.constantFrom('replace', 'leave', '') }), // prettier-ignore
    fc.record({ act: fc.constantFrom('add', 'remove', 'first', 'undo'), at: fc.nat() }),
  ),
  { minLength: 1, maxLength: 6 },
);

describe('where the row of an id stands', () => {
  it('is where a walk finds it, on every sheet and after any acts', () => {
    fc.assert(
      fc.property(acts, (done) => {
        const book = openBook(runOfPosts(POSTS));
        const ids = new Set(book.sheets.flatMap(idsOf));
        for (const each of done) {
          const before = book.sheets.map((sheet) => [sheet.rowsVersion, idsOf(sheet).join()]);
          act(book, each);
          book.sheets.forEach((sheet, at) => {
            const now = idsOf(sheet);
            for (const id of now) ids.add(id);
            for (const id of ids) expect(sheet.placeOf?.(id)).toBe(now.indexOf(id));
            const [version, rows] = before[at] ?? [];
            // What is kept for these rows counts as long as this number.
            if (rows !== now.join()) expect(sheet.rowsVersion).not.toBe(version);
          });
        }
      }),
      { numRuns: 5 },
    );
  });
});

describe('cutting plans', () => {
  it('read the numbers of a long sheet without the words around them', () => {
    const book = openBook(runOfPosts(POSTS));
    const looked: string[] = [];
    const watched = (sheet: SheetView | undefined): SheetView | undefined =>
      sheet &&
      new Proxy(sheet, {
        get(of, name) {
          const found: unknown = Reflect.get(of, name, of);
          if (typeof found !== 'function') return found;
          return (...given: unknown[]): unknown => {
            if (name === 'cell') looked.push(`${of.id}.${String(given[1])}`);
            return Reflect.apply(found, of, given);
          };
        },
      });
    const seen = new Proxy(book, {
      get(of, name) {
        if (name === 'sheet') return (id: string) => watched(of.sheet(id));
        return Reflect.get(of, name, of) as unknown;
      },
    });
    expect(cutLists(seen)).toEqual(book.cuts());
    expect(looked.filter((name) => name.startsWith('posts.'))).toEqual([]);
  });
});

function idsOf(sheet: SheetView): readonly string[] {
  return Array.from({ length: sheet.rowCount }, (_, row) => sheet.rowId(row));
}

function act(book: Book, { act: what, at, ...typed }: { act: string; at: number; text?: string }) {
  const posts = idsOf(book.sheet('posts') as SheetView);
  const row = posts[at % Math.max(1, posts.length)];
  if (what === 'undo') book.undo();
  else if (what === 'add') book.addRow('posts');
  else if (row === undefined) return;
  else if (what === 'first') book.rows.put('a row first', 'posts', row, [new Map()]);
  else if (what === 'remove') book.removeRow('posts', row);
  else book.type('posts', row, 'remedy', typed.text ?? '');
}
