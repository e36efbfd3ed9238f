import { describe, expect, it } from 'vitest';
import { compareSheet, readSheetFile } from '../../src/intake/index.ts';
import { Notebook } from '../../src/notebook/index.ts';
import { openBook, startDocument } from '../../src/worksheet/index.ts';

// Plainly invented readings.
const HOLES = 'Post,Depth reached (in),Width,Concrete\n1,28,,4\n2,36 in,14 in,4\n9,20,,\n,30,,\n';

describe('a file of hole readings', () => {
  const book = holes();
  const view = book.sheet('holes')!;
  const read = readSheetFile(new TextEncoder().encode(HOLES), view.columns, ['post'])!;

  it('is read by the columns of that sheet, in the unit of its heads', () => {
    expect(read.rows.map(({ line, cells }) => [line, Object.fromEntries(cells)])).toEqual([
      [2, { post: '1', depth_reached: '28 in' }],
      [3, { post: '2', depth_reached: '36 in', width: '14 in' }],
      [4, { post: '9', depth_reached: '20 in' }],
    ]);
    expect(read.passedOver).toEqual([
      'Column “Concrete”: is worked out here.',
      'Line 5: does not say which row it is for.',
    ]);
  });

  it('is compared with the holes that are there', () => {
    const standing = Array.from({ length: view.rowCount }, (_, row) => ({
      id: view.rowId(row),
      text: (column: string) => view.cell(row, column).typed ?? view.cell(row, column).text,
    }));
    const compared = compareSheet(read.rows, standing, view.columns, ['post']);
    expect(compared.same).toEqual(['1']);
    expect(compared.fresh.map(({ line }) => line)).toEqual([4]);
    expect(compared.changed.map(({ name, cells }) => [name, cells])).toEqual([
      [
        '2',
        [
          { column: 'depth_reached', before: '', after: '36 in' },
          { column: 'width', before: '12', after: '14 in' },
        ],
      ],
    ]);
  });

  it('is no file of holes without the post, or without anything that is typed', () => {
    for (const text of ['Depth reached,Width\n28,12\n', 'Post,Concrete\n1,4\n']) {
      expect(readSheetFile(new TextEncoder().encode(text), view.columns, ['post'])).toBeUndefined();
    }
  });
});

function holes() {
  const document = startDocument('holes');
  document.sheets.set(
    'posts',
    ['1', '2'].map((post) => ({
      id: `r${post}`,
      cells: new Map([
        ['post', post],
        ['remedy', 'replace'],
      ]),
    })),
  );
  const book = openBook(new Notebook(document));
  book.type('holes', 'r1', 'depth_reached', '28');
  return book;
}
