import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Notebook, toJson } from '../../src/notebook/index.ts';
import { acts, perform, row, someDocument } from './acts.ts';

// Sheets without rows count as absent: adding a row to a sheet makes it.
function content(notebook: Notebook): unknown {
  const { sheets, ...rest } = notebook.document;
  return structuredClone({
    ...rest,
    sheets: new Map([...sheets].filter(([, rows]) => rows.length > 0).sort()),
  });
}

function undoAll(notebook: Notebook): number {
  let count = 0;
  for (; notebook.undoLabel !== undefined; count++) notebook.undo();
  return count;
}

function redoAll(notebook: Notebook): void {
  while (notebook.redoLabel !== undefined) notebook.redo();
}

describe('undo and redo', () => {
  it('take any acts back to the start, and on to the end again', () => {
    fc.assert(
      fc.property(acts, (done) => {
        const notebook = new Notebook(someDocument());
        const start = content(notebook);
        for (const act of done) perform(act, notebook);
        while (notebook.redoLabel !== undefined) notebook.redo();
        const end = content(notebook);
        undoAll(notebook);
        expect(content(notebook)).toEqual(start);
        redoAll(notebook);
        expect(content(notebook)).toEqual(end);
        undoAll(notebook);
        expect(content(notebook)).toEqual(start);
      }),
      { numRuns: 500 },
    );
  });

  it('take one act back as one, whatever it changed', () => {
    const notebook = new Notebook(someDocument());
    notebook.do('bring in', [
      { edit: 'add rows', sheet: 'posts', at: 2, rows: [row('r9', { post: '9' })] },
      { edit: 'input', name: 'mix', before: undefined, after: '60 lb' },
    ]);
    expect(notebook.undoLabel).toBe('bring in');
    notebook.undo();
    expect(notebook.row('posts', 'r9')).toBeUndefined();
    expect(notebook.document.inputs.has('mix')).toBe(false);
    expect([notebook.undoLabel, notebook.redoLabel]).toEqual([undefined, 'bring in']);
  });

  it('rest while acts are held back, and are as they were once those are dropped', () => {
    fc.assert(
      fc.property(acts, acts, (before, then) => {
        const notebook = new Notebook(someDocument());
        for (const act of before) perform(act, notebook);
        const start = structuredClone(notebook.document);
        const labels = [notebook.undoLabel, notebook.redoLabel];
        const written: string[] = [];
        notebook.subscribeToActs(({ label }) => written.push(label));
        const held = notebook.hold();
        for (const act of then) perform(act, notebook);
        held.drop();
        // Sheets without rows too: one that was not there is not there again.
        expect(structuredClone(notebook.document)).toEqual(start);
        expect([notebook.undoLabel, notebook.redoLabel]).toEqual(labels);
        expect(written).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('go over acts that were held back and kept, which are written down then', () => {
    const notebook = new Notebook(someDocument());
    const written: string[] = [];
    notebook.subscribeToActs(({ label }) => written.push(label));
    const held = notebook.hold();
    notebook.do('rename', [{ edit: 'name', before: 'Oak Street', after: 'Elm' }]);
    notebook.undo();
    expect([notebook.document.name, written]).toEqual(['Elm', []]);
    held.keep();
    expect(written).toEqual(['rename']);
    notebook.undo();
    expect(notebook.document.name).toBe('Oak Street');
  });

  it('forget what was undone once something new is done', () => {
    const notebook = new Notebook(someDocument());
    notebook.do('rename', [{ edit: 'name', before: 'Oak Street', after: 'Elm' }]);
    notebook.undo();
    notebook.do('height', [{ edit: 'input', name: 'fence_height', before: '6 ft', after: '5 ft' }]);
    expect(notebook.redoLabel).toBeUndefined();
    notebook.redo();
    expect(notebook.document.name).toBe('Oak Street');
  });

  it('do nothing at the ends', () => {
    const notebook = new Notebook(someDocument());
    const start = content(notebook);
    notebook.undo();
    notebook.redo();
    notebook.do('nothing', []);
    expect(content(notebook)).toEqual(start);
    expect(notebook.undoLabel).toBeUndefined();
  });

  it('bring a removed row back with all it held, and not what was typed on a row since', () => {
    const notebook = new Notebook(someDocument());
    const gone = notebook.rows('posts')[0]!;
    const copy = { ...gone, cells: new Map(gone.cells) };
    notebook.do('remove', [{ edit: 'remove rows', sheet: 'posts', at: 0, rows: [copy] }]);
    notebook.undo();
    notebook.do('type', [
      { edit: 'cell', sheet: 'posts', row: 'r1', column: 'note', before: undefined, after: 'oak' },
    ]);
    notebook.undo();
    expect(notebook.row('posts', 'r1')?.cells).toEqual(copy.cells);
    expect(notebook.place('posts', 'r1')).toBe(0);
  });
});

describe('a listener', () => {
  it('hears what was done, undone and redone until it stops', () => {
    const notebook = new Notebook(someDocument());
    const heard: string[] = [];
    const stop = notebook.subscribe((changes) =>
      heard.push(changes.map(({ edit }) => edit).join()),
    );
    notebook.do('add', [{ edit: 'add rows', sheet: 'posts', at: 0, rows: [row('r9', {})] }]);
    notebook.undo();
    notebook.redo();
    stop();
    notebook.undo();
    expect(heard).toEqual(['add rows', 'remove rows', 'add rows']);
  });
});

describe('fresh ids', () => {
  it('are those no row has', () => {
    const notebook = new Notebook(someDocument());
    expect(notebook.freshIds(2)).toEqual(['r4', 'r5']);
  });

  it('never come twice, even when their rows are gone', () => {
    const notebook = new Notebook(someDocument());
    const [first] = notebook.freshIds(1);
    notebook.do('add', [{ edit: 'add rows', sheet: 'posts', at: 2, rows: [row(first!, {})] }]);
    notebook.undo();
    expect(notebook.freshIds(1)).not.toEqual([first]);
  });

  it('do not stumble over ids of another shape', () => {
    const document = someDocument();
    document.sheets.set('posts', [
      row('r', {}),
      row('rx7', {}),
      row('7', {}),
      row('__proto__', {}),
    ]);
    expect(new Notebook(document).freshIds(1)).toEqual(['r4']);
  });
});

describe('an entry typed by somebody who had not seen what stands there', () => {
  const place = { edit: 'cell', sheet: 'posts', row: 'r1', column: 'lean_gap' } as const;

  it('stands, and the one it was typed over is kept beside it', () => {
    const notebook = new Notebook(someDocument());
    notebook.do('type', [{ ...place, before: undefined, after: '5/8"' }]);
    expect(notebook.row('posts', 'r1')?.cells.get('lean_gap')).toBe('5/8"');
    expect(notebook.clashes.all()).toEqual([
      { place, standing: '5/8"', other: '3/8"', rowIsGone: false },
    ]);
    notebook.undo();
    expect(notebook.row('posts', 'r1')?.cells.get('lean_gap')).toBe('3/8"');
    expect(notebook.clashes.all()).toEqual([]);
  });

  it('is kept where its row is gone meanwhile', () => {
    const notebook = new Notebook(someDocument());
    const gone = { ...place, row: 'r77' };
    notebook.do('type', [{ ...gone, before: '1"', after: '5/8"' }]);
    expect(notebook.clashes.all()).toEqual([
      { place: gone, standing: undefined, other: '5/8"', rowIsGone: true },
    ]);
    notebook.do('keep it removed', [{ ...gone, before: undefined, after: undefined }]);
    expect(notebook.clashes.all()).toEqual([]);
  });

  it('is settled by keeping what stands, which leaves nothing to take back', () => {
    const notebook = new Notebook(someDocument());
    notebook.do('type', [{ ...place, before: undefined, after: '5/8"' }]);
    notebook.do('keep', [{ ...place, before: '5/8"', after: '5/8"' }]);
    expect(notebook.clashes.all()).toEqual([]);
    expect(notebook.undoLabel).toBe('type');
  });
});

describe('a notebook as JSON', () => {
  it('is the same after any acts and back', () => {
    fc.assert(
      fc.property(acts, (done) => {
        const notebook = new Notebook(someDocument());
        for (const act of done) perform(act, notebook);
        const again = structuredClone(toJson(notebook.document));
        expect(JSON.parse(JSON.stringify(again))).toEqual(again);
      }),
      { numRuns: 100 },
    );
  });
});
