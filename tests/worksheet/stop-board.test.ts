import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openBook } from '../../src/worksheet/index.ts';
import { runOfPosts } from './run-of-posts.ts';

const POSTS = 5;

const edits = fc.array(
  fc.record({
    sheet: fc.constant('posts'),
    row: fc.nat(POSTS - 1).map((row) => `r${String(row)}`),
    column: fc.constantFrom('post', 'lean_gap', 'probe_depth', 'remedy', 'footing_depth'),
    text: fc.constantFrom('', '9', '1 1/8', '0 in', 'replace', 're-plumb', '12 in', '?'),
  }),
  { minLength: 1, maxLength: 5 },
);

describe('the stops kept from one change to the next', () => {
  it('are those that a book opened afresh finds', () => {
    fc.assert(
      fc.property(edits, (acts) => {
        const book = openBook(runOfPosts(POSTS));
        for (const { sheet, row, column, text } of acts) {
          book.type(sheet, row, column, text);
          book.stops();
        }
        expect(book.stops()).toEqual(openBook(book.notebook).stops());
      }),
      { numRuns: 5 },
    );
  });

  it('stay the same list where nothing of it changed', () => {
    const book = openBook(runOfPosts(POSTS));
    book.type('posts', 'r2', 'remedy', 'replace');
    const holes = book.stops({ sheet: 'holes' });
    const cautions = book.stops({ level: 'caution' });
    expect(holes.length).toBeGreaterThan(0);
    book.type('posts', 'r1', 'note', 'tree behind it');
    expect(book.stops({ sheet: 'holes' })).toBe(holes);
    expect(book.stops({ level: 'caution' })).toBe(cautions);
    book.type('holes', 'r2', 'depth_reached', '6 in');
    const after = book.stops({ sheet: 'holes' });
    expect(after.filter(({ row, level }) => row === 'r2' && level === 'stop')).not.toEqual([]);
    expect(after).not.toBe(holes);
  });

  it('come stops first, of a level and of a sheet', () => {
    const book = openBook(runOfPosts(POSTS));
    book.type('posts', 'r2', 'remedy', 'replace');
    const all = book.stops();
    const isOf = (level: string, sheet?: string) => (stop: (typeof all)[number]) =>
      stop.level === level && (sheet === undefined || stop.sheet === sheet);
    expect(all).toEqual([...all.filter(isOf('stop')), ...all.filter(isOf('caution'))]);
    expect(book.stops({ level: 'caution' })).toEqual(all.filter(isOf('caution')));
    expect(book.stops({ level: 'caution', sheet: 'holes' })).toEqual(
      all.filter(isOf('caution', 'holes')),
    );
  });
});
