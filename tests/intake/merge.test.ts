import { describe, expect, it } from 'vitest';
import { compareSite, mergeIn, returnIn } from '../../src/intake/index.ts';
import { Notebook, type Row } from '../../src/notebook/index.ts';
import { startDocument } from '../../src/worksheet/index.ts';
import { COLUMNS, bringIn } from './bring-in.ts';

const FILE = { name: 'again.csv', bytes: new Uint8Array() };

describe('a file compared with the posts that are there', () => {
  it('has new rows, changed rows and rows that say the same', () => {
    const notebook = notebookOf([
      { post: '1', lean_gap: '3/8 in' },
      { post: '2', lean_gap: '1/2 in' },
    ]);
    const { fresh, changed, same } = compared(notebook, 'Post,Lean gap (in)\n1,3/8\n2,5/8\n3,1');
    expect(fresh.map(({ cells }) => cells.get('post'))).toEqual(['3']);
    expect(changed).toEqual([
      {
        post: '2',
        row: 'r2',
        line: 3,
        cells: [{ column: 'lean_gap', before: '1/2 in', after: '5/8 in' }],
      },
    ]);
    expect(same).toEqual(['1']);
  });

  it('takes one length written in two ways for the same', () => {
    // 9.525 mm is 3/8 in exactly: 0.375 x 25.4.
    const notebook = notebookOf([{ post: '1', lean_gap: '0.375 in' }]);
    expect(compared(notebook, 'Post,Lean gap (mm)\n1,9.525').same).toEqual(['1']);
  });

  it('takes nothing from a blank', () => {
    const notebook = notebookOf([{ post: '1', lean_gap: '3/8 in', note: 'gate' }]);
    expect(compared(notebook, 'Post,Lean gap (in),Note\n1,3/8,').same).toEqual(['1']);
  });

  it('finds a post whatever its case', () => {
    const notebook = notebookOf([{ post: '7A', lean_gap: '3/8 in' }]);
    expect(compared(notebook, 'Post,Lean gap (in)\n7a,1/2').changed[0]?.row).toBe('r1');
  });

  it('guesses at no post that stands twice, here or in the file', () => {
    const twice = notebookOf([{ post: '1' }, { post: '1' }]);
    expect(compared(twice, 'Post,Lean gap (in)\n1,3/8').fresh).toHaveLength(1);
    const once = notebookOf([{ post: '1' }]);
    expect(compared(once, 'Post,Lean gap (in)\n1,3/8\n1,1/2').fresh).toHaveLength(2);
  });
});

describe('a file taken as the return visit', () => {
  it('stands beside the first readings, by post number, as one step', () => {
    const notebook = notebookOf([
      { post: '1', lean_gap: '1/4 in' },
      { post: '2', lean_gap: '0 in' },
    ]);
    const intake = bringIn(
      'Post,Lean gap (in),Over (in),Note\n1,3/8,48,\n9,1,48,\n2,0,48,cap missing',
    );
    expect(returnIn(intake, FILE, notebook)).toEqual([{ line: 3, post: '9' }]);
    expect(posts(notebook)).toEqual(['1 1/4 in', '2 0 in']);
    const again = notebook
      .rows('return_visit')
      .map(({ id, cells }) => [id, cells.get('gap_again')]);
    expect(again).toEqual([
      ['r1', '3/8 in'],
      ['r2', '0 in'],
    ]);
    expect(notebook.row('return_visit', 'r2')?.cells.get('snag')).toBe('cap missing');
    expect(notebook.document.files).toHaveLength(1);
    notebook.undo();
    expect(notebook.rows('return_visit')).toEqual([]);
    expect(notebook.document.files).toEqual([]);
  });
});

describe('a merged file', () => {
  it('changes and adds as one step, and comes away again', () => {
    const notebook = notebookOf([{ post: '1', lean_gap: '1/4 in' }, { post: '2' }]);
    const intake = bringIn('Post,Lean gap (in)\n1,3/8\n3,1');
    mergeIn(compareSite(intake, notebook.rows('posts'), COLUMNS), intake, FILE, notebook);
    expect(posts(notebook)).toEqual(['1 3/8 in', '2 ', '3 1 in']);
    expect(notebook.rows('posts')[2]?.from).toEqual({ file: 'again.csv', line: 3 });
    expect(notebook.document.files).toHaveLength(1);
    notebook.undo();
    expect(posts(notebook)).toEqual(['1 1/4 in', '2 ']);
    expect(notebook.document.files).toHaveLength(0);
  });
});

function compared(notebook: Notebook, text: string) {
  return compareSite(bringIn(text), notebook.rows('posts'), COLUMNS);
}

function notebookOf(rows: readonly Readonly<Record<string, string>>[]): Notebook {
  const document = startDocument('site');
  document.sheets.set(
    'posts',
    rows.map((cells, at): Row => {
      return { id: `r${String(at + 1)}`, cells: new Map(Object.entries(cells)) };
    }),
  );
  return new Notebook(document);
}

function posts(notebook: Notebook): string[] {
  return notebook
    .rows('posts')
    .map(({ cells }) => `${cells.get('post') ?? ''} ${cells.get('lean_gap') ?? ''}`);
}
