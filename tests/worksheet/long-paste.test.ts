import { describe, expect, it } from 'vitest';
import { openBook, type Book, type Entry } from '../../src/worksheet/index.ts';
import { runOfPosts } from './run-of-posts.ts';

const POSTS = 8;

/** A book whose page always has something better to do: time is over at every second look. */
function slowly(): { readonly book: Book; readonly later: (() => void)[] } {
  const later: (() => void)[] = [];
  let looks = 0;
  const pace = { begin: () => undefined, isOver: () => (looks += 1) % 2 === 0, later: (step: () => void) => later.push(step) }; // prettier-ignore
  const book = openBook(runOfPosts(POSTS), pace);
  book.finish();
  later.length = 0;
  return { book, later };
}

const entries: readonly Entry[] = Array.from({ length: POSTS }, (_, at) => ({
  sheet: 'posts',
  row: `r${String(at)}`,
  column: 'lean_gap',
  text: at === 3 ? 'three or so' : `${String(at + 1)}/32`,
}));
const rows = Array.from({ length: 100 }, (_, at) => new Map([['post', `new ${String(at)}`]]));

const gap = (book: Book, row = 0) => book.sheet('posts')?.cell(row, 'lean_gap').typed;
const count = (book: Book) => book.notebook.rows('posts').length;

function paste({ book }: { readonly book: Book }): string[] {
  const told: string[] = [];
  book.rows.putLong('paste', 'posts', rows, entries, () => told.push('done'));
  return told;
}

describe('a long paste', () => {
  it('reads its texts a slice at a time, then comes in whole, as one step of undo', () => {
    const page = slowly();
    const { book, later } = page;
    const before = gap(book);
    const told = paste(page);
    let slices = 0;
    for (; told.length === 0; slices += 1) {
      expect([gap(book), count(book)]).toEqual([before, POSTS]);
      later.shift()?.();
    }
    expect(slices).toBeGreaterThan(rows.length / 4);
    book.finish();
    expect([gap(book), count(book)]).toEqual(['1/32 in', POSTS + rows.length]);
    expect(gap(book, 3)).toBe('three or so');
    expect(book.asks().some(({ row, column }) => row === 'r3' && column === 'lean_gap')).toBe(true);
    book.undo();
    expect([gap(book), count(book)]).toEqual([before, POSTS]);
  });

  it.each([
    ['something is typed', (book: Book) => { book.type('posts', 'r0', 'lean_gap', '5/8', '1/32 in'); }, '5/8 in'], // prettier-ignore
    ['rows are added', (book: Book) => void book.addRow('posts'), '1/32 in'],
    ['somebody begins to type', (book: Book) => { book.rows.finishLong(); }, '1/32 in'], // prettier-ignore
    ['the job is given out', (book: Book) => { book.finish(); }, '1/32 in'], // prettier-ignore
  ])('is done before anything else, where %s meanwhile', (_, act, after) => {
    const page = slowly();
    const { book, later } = page;
    const told = paste(page);
    later.shift()?.();
    act(book);
    expect(told).toEqual(['done']);
    expect(gap(book)).toBe(after);
    expect(book.notebook.clashes.all()).toEqual([]);
    const rowsNow = count(book);
    for (let step = later.shift(); step; step = later.shift()) step();
    // It is not done a second time.
    expect([told, count(book)]).toEqual([['done'], rowsNow]);
  });

  it('is what undo takes back, and says so, while it is still being read', () => {
    const page = slowly();
    const { book, later } = page;
    const before = gap(book);
    paste(page);
    later.shift()?.();
    expect(book.undoLabel).toBe('paste');
    book.undo();
    expect([gap(book), count(book), book.redoLabel]).toEqual([before, POSTS, 'paste']);
    for (let step = later.shift(); step; step = later.shift()) step();
    expect([gap(book), count(book)]).toEqual([before, POSTS]);
  });
});
