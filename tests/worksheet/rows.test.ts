import { describe, expect, it } from 'vitest';
import type { Book } from '../../src/worksheet/index.ts';
import { cellOf, siteOf } from './site.ts';
import { shown } from './take-off.ts';

const POSTS = ['1', '2', '3', '4'].map((post) => ({
  post,
  lean_gap: `${post}/8`,
  remedy: 'replace',
}));

describe('rows', () => {
  it('go in before another, with what is typed in them, as one step', () => {
    const book = siteOf({}, POSTS);
    book.rows.put('paste', 'posts', id(book, 1), [
      new Map([
        ['post', '1a'],
        ['lean_gap', '5'],
        ['lean_angle', 'not typed here'],
      ]),
      new Map([['post', '1b']]),
    ]);
    expect(keys(book)).toEqual(['1', '1a', '1b', '2', '3', '4']);
    expect(cellOf(book, 'posts', '1a', 'lean_gap').typed).toBe('5 in');
    expect(book.undoLabel).toBe('paste');
    book.undo();
    expect(keys(book)).toEqual(['1', '2', '3', '4']);
  });

  it('are doubled behind the last of them, without their names, with what was typed on sheets that follow', () => {
    const book = siteOf({}, POSTS);
    book.type('holes', id(book, 1), 'width', '14 in');
    const [first] = book.rows.double('double', 'posts', [id(book, 0), id(book, 1)]);
    expect(keys(book)).toEqual(['1', '2', '', '', '3', '4']);
    expect(book.sheet('posts')!.rowId(2)).toBe(first);
    expect(shown(book, 'posts', 'lean_gap')).toEqual(['1/8', '1/4', '1/8', '1/4', '3/8', '1/2']);
    expect(shown(book, 'holes', 'width')[3]).toBe('14');
    book.undo();
    expect(keys(book)).toEqual(['1', '2', '3', '4']);
  });

  it.each([
    [[0], 2, ['2', '1', '3', '4']],
    [[3], 0, ['4', '1', '2', '3']],
    [[0, 2], undefined, ['2', '4', '1', '3']],
    [[1, 2], 0, ['2', '3', '1', '4']],
  ])('%j move before row %s, and the sheets that follow go with them', (places, before, after) => {
    const book = siteOf({}, POSTS);
    book.type('holes', id(book, 0), 'width', '14 in');
    const to = before === undefined ? undefined : id(book, before);
    book.rows.move(
      'move',
      'posts',
      places.map((place) => id(book, place)),
      to,
    );
    expect(keys(book)).toEqual(after);
    expect(shown(book, 'holes', 'post')).toEqual(after);
    expect(cellOf(book, 'holes', '1', 'width').text).toBe('14');
    book.undo();
    expect(keys(book)).toEqual(['1', '2', '3', '4']);
    expect(shown(book, 'holes', 'post')).toEqual(['1', '2', '3', '4']);
    expect(shown(book, 'posts', 'lean_gap')).toEqual(['1/8', '1/4', '3/8', '1/2']);
  });

  it('that do not move are nothing to undo', () => {
    const book = siteOf({}, POSTS);
    const label = book.undoLabel;
    book.rows.move('move', 'posts', [id(book, 1)], id(book, 2));
    expect(book.undoLabel).toBe(label);
  });

  it('go out wherever they stand, and come back there', () => {
    const book = siteOf({}, POSTS);
    book.rows.remove('remove', 'posts', [id(book, 0), id(book, 2), id(book, 3)]);
    expect(keys(book)).toEqual(['2']);
    expect(shown(book, 'holes', 'post')).toEqual(['2']);
    book.undo();
    expect(keys(book)).toEqual(['1', '2', '3', '4']);
    expect(shown(book, 'posts', 'lean_gap')).toEqual(['1/8', '1/4', '3/8', '1/2']);
  });

  it.each([
    ['post', ['7'], ['8', '9', '10']],
    ['post', ['B-09'], ['B-10', 'B-11', 'B-12']],
    ['post', ['2', '4'], ['6', '8', '10']],
    ['post', ['gate', 'corner'], ['gate', 'corner', 'gate']],
    ['station', ['0', '7.5'], ['15 ft', '22.5 ft', '30 ft']],
    ['station', ['16'], ['24 ft', '32 ft', '40 ft']],
    ['lean_gap', ['1/8', '1/4'], ['3/8 in', '1/2 in', '5/8 in']],
    ['lean_gap', ['3/8'], ['3/8 in', '3/8 in', '3/8 in']],
    ['lean_toward', ['S'], ['S', 'S', 'S']],
  ])('go on in %s from %j with %j', (column, typed, further) => {
    const book = siteOf(
      {},
      typed.map((text, at) => ({ post: `x${String.fromCharCode(97 + at)}`, [column]: text })),
    );
    const rows = typed.map((_, at) => id(book, at));
    expect(book.rows.runOn('posts', column, rows, 3)).toEqual(further);
  });

  it('typed by the ten thousand are one step', () => {
    const book = siteOf({});
    book.rows.put(
      'paste',
      'posts',
      undefined,
      Array.from({ length: 10_000 }, (_, at) => new Map([['post', String(at)]])),
    );
    const entries = Array.from({ length: 10_000 }, (_, at) => {
      const row = id(book, at);
      return [
        'lean_gap',
        'level_length',
        'probe_depth',
        'station',
        'lean_toward',
        'note',
        'collar',
        'break_at',
        'drop',
        'gravel',
      ].map((column) => ({ sheet: 'posts', row, column, text: String(at % 7) }));
    }).flat();
    book.typeAll('paste 100000 cells', entries);
    expect(shown(book, 'posts', 'lean_gap')[9_999]).toBe('3');
    expect(book.undoLabel).toBe('paste 100000 cells');
    book.undo();
    expect(cellOf(book, 'posts', '9999', 'lean_gap').typed).toBeUndefined();
  }, 60_000);
});

function id(book: Book, row: number): string {
  return book.sheet('posts')!.rowId(row);
}

function keys(book: Book): string[] {
  const view = book.sheet('posts')!;
  return Array.from({ length: view.rowCount }, (_, row) => view.rowKey(row));
}
