import { describe, expect, it } from 'vitest';
import { proofWords, returnLines, returnTable, tableCsv } from '../../src/output/index.ts';
import { typeInto } from '../worksheet/site.ts';
import { sample } from '../worksheet/take-off.ts';

// The tree run read again: first gaps 3/8, 1 7/8, 2 1/4 and 5/8 in over 48 in at posts 2 to 5; the
// tolerance is 1/16 in per ft, 1/4 in over 48 in.
function readAgain() {
  const book = sample('D1-tree-run');
  const rows = book.sheet('return_visit')!;
  typeInto(book, 'return_visit', rows.rowId(1), { gap_again: '1/8', read_on: '2026-06-01' });
  // Over a level of 24 in: 3/16 is 3/8 over 48, and 1 1/2 in less than 1 7/8.
  typeInto(book, 'return_visit', rows.rowId(2), { gap_again: '3/16', level_again: '24' });
  typeInto(book, 'return_visit', rows.rowId(3), {
    gap_again: '0',
    snag: 'one board left off',
    put_right: 'yes',
  });
  return book;
}

describe('the return visit', () => {
  it('has each gap beside the first, its change, and whether the post is plumb', () => {
    const lines = returnLines(readAgain());
    expect(
      lines
        .slice(1, 5)
        .map(({ post, first, again, change, proof }) => [post, first, again, change, proof]),
    ).toEqual([
      ['2', '3/8 in over 48 in', '1/8 in over 48 in', '-1/4 in', 'plumb'],
      ['3', '1 7/8 in over 48 in', '3/16 in over 24 in', '-1 1/2 in', 'out'],
      ['4', '2 1/4 in over 48 in', '0 in over 48 in', '-2 1/4 in', 'plumb'],
      ['5', '5/8 in over 48 in', '', '', 'not read'],
    ]);
    expect(proofWords(lines)).toBe('3 of 7 posts read again: 2 plumb, 1 out.');
  });

  it('keeps a post on the snag list until it is put right', () => {
    const open = (book = readAgain()) =>
      returnLines(book)
        .filter(({ isOpen }) => isOpen)
        .map(({ post }) => post);
    expect(open()).toEqual(['3']);
    const book = readAgain();
    typeInto(book, 'return_visit', book.sheet('return_visit')!.rowId(2), { put_right: 'yes' });
    expect(open(book)).toEqual([]);
  });

  it('goes out as CSV, post by post', () => {
    const csv = tableCsv(returnTable(readAgain())).split('\r\n');
    expect(csv[0]).toBe(
      'Post,Work,Gap first,Gap again,Change,Proof of plumb,Read on,Snag,Put right',
    );
    expect(csv[4]).toContain('one board left off,yes');
  });
});
