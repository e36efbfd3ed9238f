import { get, set, setMany, update } from 'idb-keyval';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Notebook, NotebookDocument } from '../../src/notebook/index.ts';
import {
  openShelf,
  type OpenedNotebook,
  type Shelf,
  type ShelfListeners,
  type ShelfPlace,
} from '../../src/storage/index.ts';
import type { Snapshot } from '../../src/storage/parcel.ts';
import { openStore } from '../../src/storage/store.ts';
import { isProblem, sentence, type Problem } from '../../src/units/index.ts';

let database: string;
let count = 0;
const open: Shelf[] = [];

beforeEach(() => {
  count += 1;
  database = `storage test ${String(count)}`;
});

afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(open.splice(0).map((shelf) => shelf.close()));
  indexedDB.deleteDatabase(database);
});

describe('a shelf', () => {
  it('gives back a notebook exactly as it was, with every act since', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    enter(oak, 'height', '5\' 6 1/2"');
    for (const name of ['__proto__', 'constructor', 'toString']) enter(oak, name, '1 in');
    oak.undo();
    await shelf.flush();
    expect(loaded(await (await openWindow()).read('oak'))).toEqual(oak.document);
  });

  it('keeps every one of many quick edits, in few transactions', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    for (let edit = 0; edit < 500; edit += 1) enter(oak, 'fence_height', `${String(edit)} in`);
    await shelf.flush();
    expect(begun.mock.calls.length).toBeLessThan(5);
    expect(await shelf.history('oak')).toHaveLength(500);
    expect(loaded(await shelf.read('oak')).inputs.get('fence_height')).toBe('499 in');
  });

  it('keeps an edit that comes while the one before it is being written', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    enter(oak, 'fence_height', '6 ft');
    const first = shelf.flush();
    await Promise.resolve();
    enter(oak, 'fence_height', '5 ft');
    await Promise.all([first, shelf.flush()]);
    expect(loaded(await shelf.read('oak')).inputs.get('fence_height')).toBe('5 ft');
  });

  it('writes down no more than the act within the press of a key, however large the notebook is', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    const sealed = vi.spyOn(TextEncoder.prototype, 'encode');
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    enter(oak, 'fence_height', '6 ft');
    expect([sealed.mock.calls.length, begun.mock.calls.length]).toEqual([1, 0]);
    await shelf.flush();
    // One act, and nothing of the notebook around it.
    expect(sealed).toHaveBeenCalledOnce();
    expect(sealed.mock.lastCall?.[0]?.length).toBeLessThan(300);
  });

  it('asks no more of the disk for an edit in a long notebook than in an empty one', async () => {
    const shelf = await openWindow();
    const long = notebook('Oak Street');
    long.sheets.set('posts', Array.from({ length: 10_000 }, (_, at) => ({ id: `r${String(at)}`, cells: new Map([['post', String(at)]]) }))); // prettier-ignore
    const asked: unknown[] = [];
    for (const document of [notebook('Elm Street'), long]) {
      const { notebook: opened } = await shelf.create(document.name, document, true);
      const put = vi.spyOn(IDBObjectStore.prototype, 'put');
      const got = vi.spyOn(IDBObjectStore.prototype, 'get');
      enter(opened, 'fence_height', '6 ft');
      await shelf.flush();
      const bytes = put.mock.calls.map(([value]) => JSON.stringify(value).length);
      asked.push([bytes.length, got.mock.calls.length, Math.max(...bytes) < 3000]);
      vi.restoreAllMocks();
    }
    expect(asked[1]).toEqual(asked[0]);
    expect(asked[0]).toEqual([2, 1, true]);
  });

  it('tells that it saves, and that everything is saved only once it is', async () => {
    const said: boolean[] = [];
    const shelf = await openWindow({ onSaving: (isSaving) => said.push(isSaving) });
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    said.length = 0;
    enter(oak, 'fence_height', '6 ft');
    await Promise.resolve();
    expect(said).toEqual([true]);
    await vi.waitFor(() => {
      expect(said).toEqual([true, false]);
    });
    expect(loaded(await (await openWindow()).read('oak')).inputs.get('fence_height')).toBe('6 ft');
  });

  it('keeps nothing of a new notebook before its first act, then all of it', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), false);
    expect(await shelf.list()).toEqual([]);
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    expect(loaded(await (await openWindow()).read('oak'))).toEqual(oak.document);
  });

  it('lists the last saved first, with its name', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    enter(oak, 'soil', 'clay');
    await shelf.flush();
    await later();
    await shelf.create('elm', notebook('Elm Street'), true);
    const { notebook: again } = opened(await shelf.open('oak'));
    await later();
    again.do('rename', [{ edit: 'name', before: 'Oak Street', after: 'Oak Street, back fence' }]);
    await shelf.flush();
    const entries = await shelf.list();
    expect(entries.map(({ name }) => name)).toEqual(['Oak Street, back fence', 'Elm Street']);
  });

  it('marks a notebook as removed, takes that back, and erases it for good', async () => {
    const shelf = await openWindow();
    await shelf.create('oak', notebook('Oak Street'), true);
    await shelf.mark('oak', 'removedAt', true);
    expect((await shelf.list())[0]?.removedAt).toBeGreaterThan(0);
    await shelf.mark('oak', 'removedAt', false);
    expect((await shelf.list())[0]).not.toHaveProperty('removedAt');
    expect(loaded(await shelf.read('oak')).name).toBe('Oak Street');
    await shelf.erase('oak');
    expect(await shelf.list()).toEqual([]);
    expect(isProblem(await shelf.read('oak'))).toBe(true);
  });

  it('takes over a notebook that an earlier build kept whole', async () => {
    await openWindow();
    const store = openStore(database);
    const json = { backplumb: 'notebook', format: 1, name: 'Oak Street', inputs: [['soil', 'clay']], sheets: [], formulas: [], assumed: [], files: [] }; // prettier-ignore
    await setMany([[['entry', 'oak'], { id: 'oak', name: 'Oak Street', revision: 4, savedAt: 5 }], [['now', 'oak'], { revision: 4, json }], [['earlier', 'oak'], { revision: 3, json: { ...json, inputs: [] } }]], store); // prettier-ignore
    const shelf = await openWindow();
    const { notebook: oak } = opened(await shelf.open('oak'));
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    expect(loaded(await (await openWindow()).read('oak')).inputs).toEqual(new Map([['soil', 'clay'], ['fence_height', '6 ft']])); // prettier-ignore
    expect(await get(['now', 'oak'], store)).toBeUndefined();
  });
});

describe('a long journal', () => {
  it('is folded at the start, and the day can still be gone back through', async () => {
    const first = await openWindow();
    const { notebook: oak } = await first.create('oak', notebook('Oak Street'), true);
    for (let edit = 1; edit <= 60; edit += 1) enter(oak, 'fence_height', `${String(edit)} in`);
    await first.flush();
    const second = await openWindow();
    const { notebook: again } = opened(await second.open('oak'));
    await vi.waitFor(async () => {
      expect((await get<Snapshot>(['base', 'oak'], openStore(database)))?.number).toBe(60);
    });
    enter(again, 'fence_height', '61 in');
    await second.flush();
    const past = await second.history('oak');
    expect([past.length, past[0]?.number, past.at(-1)?.number]).toEqual([61, 61, 1]);
    for (const act of [1, 30, 60, 61]) {
      const then = loaded(await second.readAfter('oak', act));
      expect(then.inputs.get('fence_height')).toBe(`${String(act)} in`);
    }
  });
});

describe('damage', () => {
  it('to one act is told, and the rest opens', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    for (const name of ['one', 'two', 'three']) enter(oak, name, '1 in');
    await shelf.flush();
    await update<Uint8Array>(['act', 'oak', 2], (bytes) => bytes!.slice(0, 20), openStore(database)); // prettier-ignore
    const again = await openWindow();
    const { notebook: read, setAside } = opened(await again.open('oak'));
    expect([...read.document.inputs.keys()]).toEqual(['one', 'three']);
    expect(setAside).toEqual([expect.stringContaining('Act 2')]);
    enter(read, 'four', '1 in');
    await again.flush();
    expect([...loaded(await shelf.read('oak')).inputs.keys()]).toEqual(['one', 'three', 'four']);
  });

  it('to the last whole copy is made good from the one before and the journal', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    for (let edit = 1; edit <= 60; edit += 1) enter(oak, 'fence_height', `${String(edit)} in`);
    await shelf.flush();
    const second = await openWindow();
    opened(await second.open('oak'));
    await vi.waitFor(async () => {
      expect((await get<Snapshot>(['base', 'oak'], openStore(database)))?.number).toBe(60);
    });
    await update<Snapshot>(['base', 'oak'], (base) => ({ ...base!, pieces: base!.pieces.map((piece) => piece.slice(0, -1)) }), openStore(database)); // prettier-ignore
    const { notebook: read, setAside } = opened(await (await openWindow()).open('oak'));
    expect(read.document).toEqual(oak.document);
    expect(setAside).toEqual([expect.stringContaining('earlier one and the journal')]);
  });

  it('to some rows of the only copy leaves the others, with a list', async () => {
    const shelf = await openWindow();
    await shelf.create('oak', notebook('Oak Street'), true);
    await update<Snapshot>(['base', 'oak'], (base) => ({ ...base!, pieces: base!.pieces.map((piece, at) => (at === 1 ? piece.slice(0, -1) : piece)) }), openStore(database)); // prettier-ignore
    const { notebook: read, setAside } = opened(await (await openWindow()).open('oak'));
    expect(read.document.files).toHaveLength(1);
    expect(read.rows('posts')).toEqual([]);
    expect(setAside.join(' ')).toContain('1 rows of the sheet “posts”');
  });
});

describe('two windows on one notebook', () => {
  it('both see edits at once', async () => {
    const [one, other] = await twoWindows();
    enter(one, 'fence_height', '6 ft');
    enter(other, 'soil', 'clay');
    await vi.waitFor(() => {
      for (const each of [one, other])
        expect(Object.fromEntries(each.document.inputs)).toEqual({ fence_height: '6 ft', soil: 'clay' }); // prettier-ignore
    });
    expect([one, other].flatMap(({ clashes }) => clashes.all())).toEqual([]);
  });

  it('keep both of two entries in one place, and settle on the one that is chosen', async () => {
    const [one, other] = await twoWindows();
    enter(one, 'fence_height', '6 ft');
    enter(other, 'fence_height', '5 ft');
    await vi.waitFor(() => {
      for (const each of [one, other]) expect(each.clashes.all()).toHaveLength(1);
    });
    const [clash] = one.clashes.all();
    expect(other.clashes.all()).toEqual([clash]);
    expect(new Set([clash?.standing, clash?.other])).toEqual(new Set(['6 ft', '5 ft']));
    expect(loaded(await open[0]!.read('oak')).inputs.get('fence_height')).toBe(clash?.standing);
    const before = one.document.inputs.get('fence_height');
    one.do('choose', [{ edit: 'input', name: 'fence_height', before, after: clash?.other }]);
    await vi.waitFor(() => {
      for (const each of [one, other]) {
        expect(each.clashes.all()).toEqual([]);
        expect(each.document.inputs.get('fence_height')).toBe(clash?.other);
      }
    });
  });

  it('keep rows that both add, each with its own readings', async () => {
    const [one, other] = await twoWindows();
    for (const [notebook, text] of [
      [one, '2'],
      [other, '3'],
    ] as const) {
      // prettier-ignore
      const [id = ''] = notebook.freshIds(1);
      notebook.do('add row', [{ edit: 'add rows', sheet: 'posts', at: 1, rows: [{ id, cells: new Map([['post', text]]) }] }]); // prettier-ignore
    }
    await vi.waitFor(() => {
      for (const each of [one, other])
        expect(new Set(each.rows('posts').map(({ cells }) => cells.get('post')))).toEqual(new Set(['1', '2', '3'])); // prettier-ignore
    });
    expect(one.document).toEqual(other.document);
  });

  it('come to the same after 200 edits that cross', async () => {
    const [one, other] = await twoWindows();
    for (let edit = 0; edit < 100; edit += 1) {
      enter(one, `mine ${String(edit % 7)}`, String(edit));
      enter(other, `mine ${String(edit % 5)}`, String(-edit));
      if (edit % 10 === 0) await later();
    }
    await vi.waitFor(async () => {
      expect((await open[0]!.list())[0]?.number).toBe(200);
      expect(Object.fromEntries(one.document.inputs)).toEqual(Object.fromEntries(other.document.inputs)); // prettier-ignore
    });
    expect(loaded(await open[0]!.read('oak')).inputs).toEqual(one.document.inputs);
  });

  it('of two builds: the older one is told, writes nothing more, and loses nothing it had', async () => {
    const newer = vi.fn();
    const old = await openWindow({ onNewer: newer });
    const { notebook: oak } = await old.create('oak', notebook('Oak Street'), true);
    enter(oak, 'fence_height', '6 ft');
    await old.flush();
    await openWindow({}, { format: 99 });
    await vi.waitFor(() => {
      expect(newer).toHaveBeenCalled();
    });
    enter(oak, 'fence_height', '5 ft');
    expect(oak.document.inputs.get('fence_height')).toBe('6 ft');
  });
});

describe('trouble', () => {
  it('is told at once where the browser keeps nothing, and the notebook goes on', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    });
    const troubles: string[] = [];
    const shelf = await openWindow({ onTrouble: (trouble) => troubles.push(words(trouble)) });
    expect(troubles).toEqual([expect.stringContaining('does not let the page keep anything')]);
    expect(await shelf.list()).toEqual([]);
    expect(isProblem(await shelf.open('oak'))).toBe(true);
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    expect(troubles.at(-1)).toMatch(/“Oak Street” not saved.*export the notebook/);
    enter(oak, 'fence_height', '6 ft');
    expect(oak.document.inputs.get('fence_height')).toBe('6 ft');
  });

  it('of a store that was cleared is made good from what is on the screen', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    enter(oak, 'soil', 'clay');
    await shelf.flush();
    await new Promise((resolve) => (indexedDB.deleteDatabase(database).onsuccess = resolve));
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    expect(loaded(await (await openWindow()).read('oak'))).toEqual(oak.document);
  });
});

describe('the store', () => {
  it('has every transaction flushed to the disk', async () => {
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await (await openWindow()).create('oak', notebook('Oak Street'), true);
    const durabilities = begun.mock.results.map(
      ({ value }) => (value as IDBTransaction).durability,
    );
    expect(new Set(durabilities)).toEqual(new Set(['strict']));
  });

  it('leaves nothing of a write that broke off', async () => {
    const store = openStore(database);
    const broken = setMany([['one', 1], ['two', () => undefined]], store); // prettier-ignore
    await expect(broken).rejects.toMatchObject({ name: 'DataCloneError' });
    expect(await get('one', store)).toBeUndefined();
  });

  it('says what the browser said', async () => {
    const store = openStore(database);
    await set('one', 1, store);
    const twice = store('readwrite', (objects) => {
      objects.add(2, 'one');
    });
    await expect(twice).rejects.toMatchObject({ name: 'ConstraintError' });
    expect(await get('one', store)).toBe(1);
  });

  it('gives way to another window that replaces the database, and goes on', async () => {
    const shelf = await openWindow();
    const { notebook: oak } = await shelf.create('oak', notebook('Oak Street'), true);
    const blocked = vi.fn();
    await new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase(database);
      request.onblocked = blocked;
      request.onsuccess = resolve;
      request.onerror = reject;
    });
    expect(blocked).not.toHaveBeenCalled();
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    expect(loaded(await shelf.read('oak')).inputs.get('fence_height')).toBe('6 ft');
  });

  it('opens again after the browser closed it without a word', async () => {
    const troubles: unknown[] = [];
    const shelf = await openWindow({ onTrouble: (trouble) => troubles.push(trouble) });
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await shelf.list();
    (begun.mock.contexts[0] as IDBDatabase).close();
    await shelf.create('oak', notebook('Oak Street'), true);
    expect(troubles).toEqual([]);
    expect(await shelf.list()).toHaveLength(1);
  });
});

async function openWindow(listeners: ShelfListeners = {}, place: ShelfPlace = {}): Promise<Shelf> {
  const shelf = await openShelf(listeners, { database, ...place });
  open.push(shelf);
  return shelf;
}

async function twoWindows(): Promise<[Notebook, Notebook]> {
  const [first, second] = [await openWindow(), await openWindow()];
  const { notebook: one } = await first.create('oak', notebook('Oak Street'), true);
  return [one, opened(await second.open('oak')).notebook];
}

function enter(notebook: Notebook, name: string, after: string): void {
  const before = notebook.document.inputs.get(name);
  notebook.do(name, [{ edit: 'input', name, before, after }]);
}

function notebook(name: string, inputs: Record<string, string> = {}): NotebookDocument {
  return {
    format: 2,
    name,
    inputs: new Map(Object.entries(inputs)),
    sheets: new Map([['posts', [{ id: 'a', cells: new Map([['post', '1'], ['lean_gap', '3/8"']]) }]]]), // prettier-ignore
    formulas: new Map(),
    assumed: new Map(),
    own: new Map(),
    files: [{ name: 'crew.csv', bytes: btoa('post,lean'), linesRead: 1, passedOver: [] }],
  };
}

function loaded(result: NotebookDocument | Problem): NotebookDocument {
  if (isProblem(result)) throw new Error(sentence(result));
  return result;
}

function opened(result: OpenedNotebook | Problem): OpenedNotebook {
  if (isProblem(result)) throw new Error(sentence(result));
  return result;
}

function words(trouble: Problem | undefined): string {
  return trouble ? sentence(trouble) : '';
}

function later(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 5));
}
