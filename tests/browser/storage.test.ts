import { get, set, setMany } from 'idb-keyval';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { NotebookDocument } from '../../src/notebook/index.ts';
import { openShelf, type Shelf, type ShelfListeners } from '../../src/storage/index.ts';
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
  it('gives back a notebook exactly as it was saved', async () => {
    const saved = notebook('Oak Street', {
      height: '5\' 6 1/2"',
      constructor: '6 ft',
      __proto__: 'x',
    });
    await (await openWindow()).save('oak', saved);
    expect(await (await openWindow()).load('oak')).toEqual(saved);
  });

  it('keeps names that every object has as plain text', async () => {
    const saved = notebook('Oak Street');
    for (const name of ['__proto__', 'constructor', 'toString']) saved.inputs.set(name, '1 in');
    const shelf = await openWindow();
    await shelf.save('__proto__', saved);
    expect(loaded(await shelf.load('__proto__')).inputs).toEqual(saved.inputs);
  });

  it('keeps the last of many quick edits, in few writes', async () => {
    const shelf = await openWindow();
    const document = notebook('Oak Street');
    const saves = Array.from({ length: 500 }, (_, edit) => {
      document.inputs.set('fence_height', `${String(edit)} in`);
      return shelf.save('oak', document);
    });
    await Promise.all(saves);
    const [entry] = await shelf.list();
    expect(entry?.revision).toBeLessThan(5);
    expect(loaded(await shelf.load('oak')).inputs.get('fence_height')).toBe('499 in');
  });

  it('keeps an edit that comes while the one before it is being written', async () => {
    const shelf = await openWindow();
    const first = shelf.save('oak', notebook('Oak Street', { fence_height: '6 ft' }));
    const writing = shelf.flush();
    const second = shelf.save('oak', notebook('Oak Street', { fence_height: '5 ft' }));
    await Promise.all([first, writing, second]);
    expect(loaded(await shelf.load('oak')).inputs.get('fence_height')).toBe('5 ft');
  });

  it('has an edit on the disk within a tenth of a second', async () => {
    const shelf = await openWindow();
    await shelf.save('oak', notebook('Oak Street'));
    const begun = performance.now();
    await shelf.save('oak', notebook('Oak Street', { fence_height: '6 ft' }));
    expect(performance.now() - begun).toBeLessThan(100);
  });

  it('writes what still waits when the page is left', async () => {
    const shelf = await openWindow();
    const written = shelf.save('oak', notebook('Oak Street'));
    const timers = vi.spyOn(globalThis, 'clearTimeout');
    dispatchEvent(new PageTransitionEvent('pagehide'));
    expect(timers).toHaveBeenCalledOnce();
    await written;
    expect(await shelf.list()).toHaveLength(1);
  });

  it('lists the last saved first, with its name', async () => {
    const shelf = await openWindow();
    await shelf.save('oak', notebook('Oak Street'));
    await shelf.save('elm', notebook('Elm Street'));
    await later();
    await shelf.save('oak', notebook('Oak Street, back fence'));
    const entries = await shelf.list();
    expect(entries.map(({ name }) => name)).toEqual(['Oak Street, back fence', 'Elm Street']);
  });

  it('forgets a notebook that was removed, even one about to be saved', async () => {
    const shelf = await openWindow();
    await shelf.save('oak', notebook('Oak Street'));
    const late = shelf.save('oak', notebook('Oak Street', { fence_height: '6 ft' }));
    await shelf.remove('oak');
    await late;
    expect(await shelf.list()).toEqual([]);
    expect(isProblem(await shelf.load('oak'))).toBe(true);
  });
});

describe('two windows on one shelf', () => {
  it('tell each other which notebook changed', async () => {
    const elsewhere = vi.fn();
    await openWindow({ onElsewhere: elsewhere });
    const other = await openWindow();
    await other.save('oak', notebook('Oak Street'));
    await vi.waitFor(() => {
      expect(elsewhere).toHaveBeenCalledWith('oak');
    });
    await other.remove('oak');
    await vi.waitFor(() => {
      expect(elsewhere).toHaveBeenCalledTimes(2);
    });
  });

  it('go on from each other’s edits', async () => {
    const [one, other] = [await openWindow(), await openWindow()];
    await one.save('oak', notebook('Oak Street', { fence_height: '6 ft' }));
    const read = loaded(await other.load('oak'));
    read.inputs.set('soil', 'clay');
    await other.save('oak', read);
    const inputs = loaded(await one.load('oak')).inputs;
    expect(inputs).toEqual(new Map([['fence_height', '6 ft'], ['soil', 'clay']])); // prettier-ignore
    expect(await one.list()).toHaveLength(1);
  });

  it('never write over an edit they have not read', async () => {
    const troubles: string[] = [];
    const one = await openWindow({ onTrouble: (trouble) => troubles.push(words(trouble)) });
    const other = await openWindow();
    await one.save('oak', notebook('Oak Street'));
    await other.load('oak');
    await other.save('oak', notebook('Oak Street', { fence_height: '6 ft' }));
    await one.save('oak', notebook('Oak Street', { fence_height: '5 ft' }));
    await one.save('oak', notebook('Oak Street', { fence_height: '4 ft' }));

    expect(loaded(await other.load('oak')).inputs.get('fence_height')).toBe('6 ft');
    const entries = await other.list();
    expect(entries.map(({ name }) => name).sort()).toEqual([
      'Oak Street',
      'Oak Street (other window)',
    ]);
    const copy = entries.find(({ id }) => id !== 'oak');
    expect(loaded(await other.load(copy?.id ?? '')).inputs.get('fence_height')).toBe('4 ft');
    expect(troubles).toEqual([expect.stringContaining('changed in another window')]);
  });

  it('lose no edit that waits when the other’s state is loaded', async () => {
    const [one, other] = [await openWindow(), await openWindow()];
    await one.save('oak', notebook('Oak Street'));
    await other.load('oak');
    await other.save('oak', notebook('Oak Street', { fence_height: '6 ft' }));
    void one.save('oak', notebook('Oak Street', { fence_height: '5 ft' }));
    expect(loaded(await one.load('oak')).inputs.get('fence_height')).toBe('6 ft');
    expect(await one.list()).toHaveLength(2);
  });
});

describe('trouble', () => {
  it('is told at once where the browser keeps nothing', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    });
    const troubles: string[] = [];
    const shelf = await openWindow({ onTrouble: (trouble) => troubles.push(words(trouble)) });
    expect(troubles).toEqual([expect.stringContaining('does not let the page keep anything')]);
    expect(await shelf.list()).toEqual([]);
    expect(isProblem(await shelf.load('oak'))).toBe(true);
    await shelf.save('oak', notebook('Oak Street'));
    expect(troubles.at(-1)).toMatch(/“Oak Street” not saved.*export the notebook/);
  });

  it('with a damaged notebook leaves the earlier copy to go on from', async () => {
    const good = notebook('Oak Street', { fence_height: '6 ft' });
    await (await openWindow()).save('oak', good);
    const shelf = await openWindow();
    await shelf.load('oak');
    await shelf.save('oak', notebook('Oak Street', { fence_height: '5 ft' }));
    await set(
      ['now', 'oak'],
      { revision: 2, json: { backplumb: 'notebook', format: 1 } },
      openStore(database),
    );

    expect(isProblem(await shelf.load('oak'))).toBe(true);
    expect(await shelf.loadEarlier('oak')).toEqual(good);
    const later = await openWindow();
    await later.load('oak');
    await later.save('oak', notebook('Oak Street'));
    expect(await later.loadEarlier('oak')).toEqual(good);
  });
});

describe('the store', () => {
  it('has every transaction flushed to the disk', async () => {
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await (await openWindow()).save('oak', notebook('Oak Street'));
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
    await shelf.save('oak', notebook('Oak Street'));
    const blocked = vi.fn();
    await new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase(database);
      request.onblocked = blocked;
      request.onsuccess = resolve;
      request.onerror = reject;
    });
    expect(blocked).not.toHaveBeenCalled();
    await shelf.save('oak', notebook('Oak Street', { fence_height: '6 ft' }));
    expect(loaded(await shelf.load('oak')).inputs.get('fence_height')).toBe('6 ft');
  });

  it('opens again after the browser closed it without a word', async () => {
    const troubles: unknown[] = [];
    const shelf = await openWindow({ onTrouble: (trouble) => troubles.push(trouble) });
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await shelf.list();
    (begun.mock.contexts[0] as IDBDatabase).close();
    await shelf.save('oak', notebook('Oak Street'));
    expect(troubles).toEqual([]);
    expect(await shelf.list()).toHaveLength(1);
  });
});

async function openWindow(listeners: ShelfListeners = {}): Promise<Shelf> {
  const shelf = await openShelf(listeners, database);
  open.push(shelf);
  return shelf;
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

function words(trouble: Problem | undefined): string {
  return trouble ? sentence(trouble) : '';
}

function later(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 5));
}
