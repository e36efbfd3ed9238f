import { address as writingThread } from 'virtual:writing-thread';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Notebook, NotebookDocument } from '../../src/notebook/index.ts';
import { append } from '../../src/storage/append.ts';
import { openShelf, type Shelf, type ShelfListeners } from '../../src/storage/index.ts';
import { openStore } from '../../src/storage/store.ts';
import type { WriterAnswer, WriterAsk } from '../../src/storage/writer.ts';
import { isProblem, sentence } from '../../src/units/index.ts';

let database: string;
let count = 0;
const open: Shelf[] = [];

beforeEach(() => {
  count += 1;
  database = `writer test ${String(count)}`;
});

afterEach(async () => {
  vi.restoreAllMocks();
  await Promise.all(open.splice(0).map((shelf) => shelf.close()));
  indexedDB.deleteDatabase(database);
});

describe('the thread that writes', () => {
  it('writes every act, and the page asks nothing of the store for it', async () => {
    const { shelf, ready } = await withThread();
    const oak = (await shelf.create('oak', notebook(), true)).notebook;
    await ready;
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    for (let edit = 0; edit < 50; edit += 1) enter(oak, 'fence_height', `${String(edit)} in`);
    await shelf.flush();
    expect(begun).not.toHaveBeenCalled();
    expect(await heights(shelf)).toBe('49 in');
    expect(await shelf.history('oak')).toHaveLength(50);
  });

  it('leaves the writing to the page before it is there', async () => {
    const { shelf, ready } = await withThread();
    const oak = (await shelf.create('oak', notebook(), true)).notebook;
    enter(oak, 'fence_height', '5 ft');
    await shelf.flush();
    await ready;
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    expect(await heights(shelf)).toBe('6 ft');
  });

  it('puts acts of two windows in one order', async () => {
    const [one, two] = [await withThread(), await withThread()];
    const oak = (await one.shelf.create('oak', notebook(), true)).notebook;
    const same = await two.shelf.open('oak');
    if (isProblem(same)) throw new Error(sentence(same));
    await Promise.all([one.ready, two.ready]);
    for (let edit = 0; edit < 20; edit += 1) {
      enter(oak, 'fence_height', `${String(edit)} in`);
      enter(same.notebook, 'post_spacing', `${String(edit)} in`);
    }
    await Promise.all([one.shelf.flush(), two.shelf.flush()]);
    expect(await one.shelf.history('oak')).toHaveLength(40);
    await vi.waitFor(() => {
      expect([...oak.document.inputs].sort()).toEqual([...same.notebook.document.inputs].sort());
    });
    expect(Object.fromEntries(oak.document.inputs)).toEqual({ fence_height: '19 in', post_spacing: '19 in' }); // prettier-ignore
  });
});

describe('without such a thread', () => {
  it('the page writes, where the browser has none or its script is not to be had', async () => {
    const none = () => {
      throw new Error('No threads here.');
    };
    const lost = () => new Worker('/no-such-thread.js', { type: 'module' });
    for (const [id, startWriting] of [
      ['none', none],
      ['lost', lost],
    ] as const) {
      const shelf = await opened(startWriting);
      const { notebook: kept } = await shelf.create(id, notebook(), true);
      await new Promise((resolve) => setTimeout(resolve, 50));
      enter(kept, 'fence_height', '6 ft');
      await shelf.flush();
      expect(await heights(shelf, id)).toBe('6 ft');
    }
  });

  it('says what the browser refused there as if it were here', async () => {
    const troubles: string[] = [];
    const shelf = await opened(
      () =>
        new StandIn(({ number }) => {
          const error = new DOMException('Full.', 'QuotaExceededError');
          return Promise.resolve({ say: 'refused', number, error });
        }),
      { onTrouble: (trouble) => troubles.push(trouble ? sentence(trouble) : 'over') },
    );
    const { notebook: oak } = await shelf.create('oak', notebook(), false);
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    expect(troubles).toEqual([expect.stringContaining('no room left')]);
  });

  it('sends the whole notebook once, and then only acts', async () => {
    const asked: WriterAsk[] = [];
    const shelf = await opened(
      () =>
        new StandIn((one) => {
          asked.push(one);
          const { number } = one;
          return Promise.resolve({ say: 'appended', number, appended: { came: 'written' } });
        }),
    );
    const oak = (await shelf.create('oak', notebook(), true)).notebook;
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    expect(asked.map(({ appending }) => [appending.start !== undefined, appending.acts.length])).toEqual([[true, 0], [false, 1]]); // prettier-ignore
  });

  it('asks the store itself once it is cleared, whatever a thread says that has not heard so', async () => {
    const cleared = vi.fn();
    const shelf = await opened(
      () =>
        new StandIn(({ number }) =>
          Promise.resolve({ say: 'appended', number, appended: { came: 'written' } }),
        ),
      { onCleared: cleared },
    );
    const oak = (await shelf.create('oak', notebook(), false)).notebook;
    enter(oak, 'fence_height', '6 ft');
    await shelf.flush();
    indexedDB.deleteDatabase(database);
    await vi.waitFor(() => {
      expect(cleared).toHaveBeenCalledOnce();
    });
  });

  it('writes no act twice that a thread wrote before it ended without a word', async () => {
    const store = openStore(database);
    const said: boolean[] = [];
    const ending = async (asked: WriterAsk, thread: StandIn) => {
      await append(store, asked.appending);
      thread.dispatchEvent(new Event('error'));
      return undefined;
    };
    const shelf = await opened(() => new StandIn(ending), { onSaving: (is) => said.push(is) });
    const oak = (await shelf.create('oak', notebook(), false)).notebook;
    await new Promise((resolve) => setTimeout(resolve));
    oak.do('add a post', [
      {
        edit: 'add rows',
        sheet: 'posts',
        at: 1,
        rows: [{ id: 'b', cells: new Map([['post', '2']]) }],
      },
    ]);
    await vi.waitFor(() => {
      expect(said.length).toBeGreaterThan(0);
    });
    enter(oak, 'fence_height', '6 ft');
    await vi.waitFor(
      () => {
        expect(said.at(-1)).toBe(false);
      },
      { timeout: 8000 },
    );
    expect((await shelf.history('oak')).map(({ label }) => label)).toEqual(['type', 'add a post']);
    const kept = await read(shelf);
    expect(kept.sheets.get('posts')?.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(oak.rows('posts').map(({ id }) => id)).toEqual(['a', 'b']);
  });
});

/** A thread that is there at once and answers what a test says, or nothing. */
class StandIn extends EventTarget {
  private readonly answer: (asked: WriterAsk, thread: StandIn) => Promise<WriterAnswer | undefined>;

  constructor(answer: StandIn['answer']) {
    super();
    this.answer = answer;
    queueMicrotask(() => {
      this.say({ say: 'ready' });
    });
  }

  postMessage(asked: WriterAsk): void {
    void this.answer(asked, this).then((answer) => {
      if (answer) this.say(answer);
    });
  }

  terminate(): void {
    // Nothing runs.
  }

  private say(data: WriterAnswer): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
}

/** A shelf that writes in a thread, and when that is there. */
async function withThread(): Promise<{ shelf: Shelf; ready: Promise<unknown> }> {
  const thread = new Worker(writingThread, { type: 'module' });
  // In a turn of its own, after the shelf has heard it too.
  const ready = new Promise((resolve) => {
    thread.addEventListener('message', () => setTimeout(resolve), { once: true });
  });
  return { shelf: await opened(() => thread), ready };
}

async function opened(
  startWriting: () => Worker | StandIn,
  listeners: ShelfListeners = {},
): Promise<Shelf> {
  const start = startWriting as () => Worker;
  const shelf = await openShelf(listeners, { database, startWriting: start });
  open.push(shelf);
  return shelf;
}

async function read(shelf: Shelf, id = 'oak'): Promise<NotebookDocument> {
  const document = await shelf.read(id);
  if (isProblem(document)) throw new Error(sentence(document));
  return document;
}

async function heights(shelf: Shelf, id = 'oak'): Promise<string | undefined> {
  return (await read(shelf, id)).inputs.get('fence_height');
}

function enter(notebook: Notebook, name: string, after: string): void {
  const before = notebook.document.inputs.get(name);
  notebook.do('type', [{ edit: 'input', name, before, after }]);
}

function notebook(): NotebookDocument {
  return {
    format: 2,
    name: 'Oak Street',
    inputs: new Map(),
    sheets: new Map([['posts', [{ id: 'a', cells: new Map([['post', '1']]) }]]]),
    formulas: new Map(),
    assumed: new Map(),
    own: new Map(),
    files: [],
  };
}
