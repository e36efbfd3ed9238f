import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openBook, type Book } from '../../src/worksheet/index.ts';
import { runOfPosts } from './run-of-posts.ts';

const POSTS = 8;
const edits = fc.array(
  fc.record({
    row: fc.nat(POSTS - 1),
    column: fc.constantFrom('lean_gap', 'probe_depth', 'rock_test', 'post', 'remedy'),
    text: fc.constantFrom('', '1 1/8', '0', '3', 'firm', 'snapped', 'replace', 'leave', '?'),
    steps: fc.nat(30),
  }),
  { minLength: 1, maxLength: 6 },
);

describe('a book that is worked out a slice at a time', () => {
  it('comes to the same as one worked out at one go, whatever is typed in between', () => {
    fc.assert(
      fc.property(edits, (acts) => {
        const waiting: (() => void)[] = [];
        const paced = openBook(runOfPosts(POSTS), {
          begin: () => undefined,
          isOver: impatient(),
          later: (step) => waiting.push(step),
        });
        const whole = openBook(runOfPosts(POSTS));
        for (const { row, column, text, steps } of acts) {
          for (const book of [paced, whole]) book.type('posts', `r${String(row)}`, column, text);
          paced.stops();
          for (let at = 0; at < steps; at += 1) waiting.shift()?.();
        }
        for (let step = waiting.shift(); step; step = waiting.shift()) step();
        expect(seen(paced)).toEqual(seen(whole));
      }),
      { numRuns: 12 },
    );
  });

  it('is opened a slice at a time, and then as one opened at one go', async () => {
    const waiting: (() => void)[] = [];
    const book = openBook(runOfPosts(POSTS), {
      begin: () => undefined,
      isOver: impatient(),
      later: (step) => waiting.push(step),
    });
    const shares: number[] = [];
    const worked = book.worked((share) => shares.push(share));
    for (let step = waiting.shift(); step; step = waiting.shift()) step();
    await worked;
    expect(shares.length).toBeGreaterThan(10);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(seen(book)).toEqual(seen(openBook(runOfPosts(POSTS))));
  });

  it('gives the stops from before until it is done, and says when it is', () => {
    const waiting: (() => void)[] = [];
    const book = openBook(runOfPosts(POSTS), {
      begin: () => undefined,
      isOver: impatient(),
      later: (step) => waiting.push(step),
    });
    book.finish();
    const before = book.stops();
    let told = 0;
    book.subscribe(() => (told += 1));
    book.type('posts', 'r1', 'rock_test', 'snapped');
    expect(book.stops()).toBe(before);
    for (let step = waiting.shift(); step; step = waiting.shift()) step();
    expect(book.stops()).not.toBe(before);
    expect(told).toBeGreaterThan(1);
  });
});

/** Time is over at every second look. */
function impatient(): () => boolean {
  let looks = 0;
  return () => (looks += 1) % 2 === 0;
}

function seen(book: Book): unknown {
  const cells = book.sheets.map((sheet) =>
    Array.from({ length: sheet.rowCount }, (_, row) =>
      sheet.columns.map(({ id }) => sheet.cell(row, id).text),
    ),
  );
  return { cells, stops: book.stops(), asks: book.asks() };
}
