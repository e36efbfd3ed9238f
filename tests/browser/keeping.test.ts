import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Notebook, NotebookDocument } from '../../src/notebook/index.ts';
import { openShelf, type OpenedNotebook, type Shelf } from '../../src/storage/index.ts';
import { isProblem, sentence, type Problem } from '../../src/units/index.ts';

let shelf: Shelf;
let database: string;
let count = 0;

beforeEach(async () => {
  count += 1;
  database = `keeping test ${String(count)}`;
  shelf = await openShelf({}, { database });
});

afterEach(async () => {
  vi.restoreAllMocks();
  await shelf.close();
  indexedDB.deleteDatabase(database);
});

describe('a backup', () => {
  it('of all jobs comes back whole on an empty device, from a readable file or a packed one', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    enter(oak, 'soil', 'clay');
    await shelf.create('elm', start('Elm Street'), true);
    await shelf.mark('elm', 'archivedAt', true);
    const { text, setAside } = await (await shelf.keeping()).backup();
    expect(setAside).toEqual([]);
    const plain = new TextEncoder().encode(text);
    for (const bytes of [plain, await gzip(plain)]) {
      for (const id of ['oak', 'elm']) await shelf.erase(id);
      const keeping = await shelf.keeping();
      const plan = good(await keeping.plan(new Blob([bytes])));
      expect(plan.jobs.map(({ stands }) => stands)).toEqual(['absent', 'absent']);
      good(await keeping.restore(plan));
      expect(good(await shelf.read('oak')).inputs.get('soil')).toBe('clay');
      expect(Object.fromEntries((await shelf.list()).map(({ id, archivedAt }) => [id, archivedAt !== undefined]))).toEqual({ oak: false, elm: true }); // prettier-ignore
    }
  });

  it('says what is here already, the same or not, before anything changes', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    const bytes = await backedUp(['oak']);
    expect(good(await (await shelf.keeping()).plan(new Blob([bytes]))).jobs[0]).toMatchObject({ stands: 'same', changes: 0 }); // prettier-ignore
    enter(oak, 'soil', 'clay');
    await shelf.flush();
    expect(good(await (await shelf.keeping()).plan(new Blob([bytes]))).jobs[0]).toMatchObject({ stands: 'differs', changes: 1 }); // prettier-ignore
    expect(good(await shelf.read('oak')).inputs.get('soil')).toBe('clay');
  });

  it.each(['on the screen', 'put away'])(
    'in the place of a job %s can be taken back',
    async (where) => {
      const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
      const bytes = await backedUp(['oak']);
      enter(oak, 'soil', 'clay');
      await shelf.flush();
      if (where === 'put away') await shelf.create('elm', start('Elm Street'), true);
      const keeping = await shelf.keeping();
      const plan = good(await keeping.plan(new Blob([bytes])));
      plan.jobs[0]!.choice = 'replace';
      expect(good(await keeping.restore(plan)).replaced).toEqual(['Oak Street']);
      await shelf.flush();
      expect(good(await shelf.read('oak')).inputs.has('soil')).toBe(false);
      const { notebook } = opened(await shelf.open('oak'));
      notebook.undo();
      expect(notebook.document.inputs.get('soil')).toBe('clay');
    },
  );

  it('beside a job that differs leaves that job alone', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    const bytes = await backedUp(['oak']);
    enter(oak, 'soil', 'clay');
    await shelf.flush();
    const keeping = await shelf.keeping();
    good(await keeping.restore(good(await keeping.plan(new Blob([bytes])))));
    expect((await shelf.list()).map(({ name }) => name).sort()).toEqual(['Oak Street', 'Oak Street, from the file']); // prettier-ignore
    expect(good(await shelf.read('oak')).inputs.get('soil')).toBe('clay');
  });

  it('holds what is on the screen where the browser keeps nothing', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
      throw new DOMException('No room.', 'QuotaExceededError');
    });
    enter(oak, 'soil', 'clay');
    const { text } = await (await shelf.keeping()).backup();
    expect(text).toContain('clay');
  });

  it('is noted, so that only later work is in none', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    enter(oak, 'soil', 'clay');
    await shelf.flush();
    const keeping = await shelf.keeping();
    await keeping.noteBackup(await keeping.backup());
    enter(oak, 'soil', 'sand');
    await shelf.flush();
    const [entry] = await shelf.list();
    expect([entry?.backedUp?.number, entry?.number]).toEqual([1, 2]);
  });

  it.each([
    ['cut short', (bytes: Uint8Array<ArrayBuffer>) => bytes.slice(0, -9)],
    ['packed and cut short', async (bytes: Uint8Array<ArrayBuffer>) => (await gzip(bytes)).slice(0, -30)], // prettier-ignore
    ['no notebook', () => new TextEncoder().encode('{"a":1}')],
  ] as const)('that is %s is refused whole', async (_, damage) => {
    await shelf.create('oak', start('Oak Street'), true);
    const bytes = await damage(await backedUp(['oak']));
    expect(isProblem(await (await shelf.keeping()).plan(new Blob([bytes])))).toBe(true);
  });

  it.each([
    ['unpacks to gigabytes', bomb],
    ['is larger than any', () => Object.defineProperty(new Blob(['{}']), 'size', { value: 3e9 })], // prettier-ignore
    ['holds a hundred thousand jobs', () => new Blob([JSON.stringify({ backplumb: 'backup', format: 2, jobs: Array<number>(100_000).fill(0) })])], // prettier-ignore
  ] as const)('that %s is refused in words, with what was here untouched', async (_, made) => {
    await shelf.create('oak', start('Oak Street'), true);
    const plan = await (await shelf.keeping()).plan(made());
    expect(isProblem(plan) && sentence(plan)).toMatch(/it holds more than any backup/);
    expect(await shelf.list()).toHaveLength(1);
  });

  it('with one damaged job says so, and brings the others', async () => {
    await shelf.create('oak', start('Oak Street'), true);
    await shelf.create('elm', start('Elm Street'), true);
    const { text } = await (await shelf.keeping()).backup();
    const file = JSON.parse(text) as { jobs: Record<string, unknown>[] };
    file.jobs[0]!['format'] = 'none';
    const plan = good(await (await shelf.keeping()).plan(new Blob([JSON.stringify(file)]))); // prettier-ignore
    expect(plan.jobs.map(({ stands }) => stands)).toEqual(['refused', 'same']);
  });
});

describe('a job', () => {
  it('can be copied, and the copy has a life of its own', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    enter(oak, 'soil', 'clay');
    await shelf.flush();
    const copy = good(await (await shelf.keeping()).duplicate('oak'));
    enter(oak, 'soil', 'sand');
    await shelf.flush();
    expect((await shelf.list()).find(({ id }) => id === copy)?.name).toBe('Oak Street, copy');
    expect(good(await shelf.read(copy)).inputs.get('soil')).toBe('clay');
  });

  it('can be made what it was earlier in the day, and that taken back', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    for (const soil of ['clay', 'sand', 'gravel']) enter(oak, 'soil', soil);
    const [, , first] = await shelf.history('oak');
    const then = good(await shelf.readAfter('oak', first!.number));
    (await shelf.keeping()).bringBack(then, 'back to the morning');
    expect(oak.document.inputs.get('soil')).toBe('clay');
    oak.undo();
    expect(oak.document.inputs.get('soil')).toBe('gravel');
  });

  it('that the browser would not keep is still here after another one was opened', async () => {
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    await shelf.create('elm', start('Elm Street'), true);
    opened(await shelf.open('oak'));
    const refuse = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw new DOMException('', 'QuotaExceededError');
    });
    const { notebook } = opened(await shelf.open('oak'));
    enter(notebook, 'soil', 'clay');
    await shelf.flush();
    opened(await shelf.open('elm'));
    const again = opened(await shelf.open('oak')).notebook;
    expect(again.document.inputs.get('soil')).toBe('clay');
    refuse.mockRestore();
    await shelf.flush();
    expect(good(await shelf.read('oak')).inputs.get('soil')).toBe('clay');
    expect(oak.document.inputs.has('soil')).toBe(false);
  });

  it('written by a newer version opens to be looked at, with a message, and nothing in it changes', async () => {
    const ahead = await openShelf({}, { database, format: 99 });
    await ahead.create('oak', start('Oak Street'), true);
    await ahead.close();
    const { notebook, newer } = opened(await shelf.open('oak'));
    expect(newer && sentence(newer)).toContain('newer version');
    enter(notebook, 'soil', 'clay');
    expect(notebook.document.inputs.has('soil')).toBe(false);
  });
});

describe('what is kept', () => {
  it('is kept again at once when the browser clears it, and that is said', async () => {
    const cleared = vi.fn();
    await shelf.close();
    shelf = await openShelf({ onCleared: cleared }, { database });
    const { notebook: oak } = await shelf.create('oak', start('Oak Street'), true);
    enter(oak, 'soil', 'clay');
    await shelf.flush();
    await new Promise((resolve) => (indexedDB.deleteDatabase(database).onsuccess = resolve));
    // Nobody types: the shelf sees it by itself.
    await vi.waitFor(async () => {
      expect(good(await shelf.read('oak')).inputs.get('soil')).toBe('clay');
    });
    expect(cleared).toHaveBeenCalledOnce();
  });

  it('takes room that can be asked for, and a promise to keep it is asked only when wanted', async () => {
    const persist = vi.spyOn(navigator.storage, 'persist').mockResolvedValue(true);
    vi.spyOn(navigator.storage, 'persisted').mockResolvedValue(false);
    await shelf.create('oak', start('Oak Street'), true);
    const keeping = await shelf.keeping();
    expect((await keeping.room()).free).toBeGreaterThan(0);
    expect(persist).not.toHaveBeenCalled();
    expect(await keeping.askToStay()).toBe(true);
    expect(persist).toHaveBeenCalledOnce();
  });
});

async function backedUp(ids: readonly string[]): Promise<Uint8Array<ArrayBuffer>> {
  return new TextEncoder().encode((await (await shelf.keeping()).backup(ids)).text);
}

async function gzip(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  const stream = new Blob([bytes]).stream().pipeThrough(new CompressionStream('gzip'));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** Two gigabytes of nothing as a gzip of 13 MB: by RFC 1951, 3.2.6, “the last byte 258 times more”, over and over. */
function bomb(): Blob {
  // Code 285 is the length 258, code 0 the distance 1; eight of them come out even in bytes.
  const again = '11000101' + '00000';
  // A block of fixed codes begins, with one zero.
  const bits = bytesOf(`01000110000${again.repeat(16)}`);
  const round = bits.slice(13, 26);
  const rounds = Uint8Array.from({ length: 10_000 * 13 }, (_, at) => round[at % 13] ?? 0);
  const head = new Uint8Array([0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3]);
  return new Blob([head, bits.slice(0, 13), ...Array<typeof rounds>(100).fill(rounds)]);
}

/** Bits in the order in which DEFLATE takes them: the first is the lowest of its byte. */
function bytesOf(bits: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from({ length: Math.floor(bits.length / 8) }, (_, at) =>
    parseInt(
      Array.from(bits.slice(8 * at, 8 * at + 8))
        .reverse()
        .join(''),
      2,
    ),
  );
}

function enter(notebook: Notebook, name: string, after: string): void {
  const before = notebook.document.inputs.get(name);
  notebook.do(name, [{ edit: 'input', name, before, after }]);
}

function start(name: string): NotebookDocument {
  return { format: 2, name, inputs: new Map(), sheets: new Map([['posts', [{ id: 'a', cells: new Map([['post', '1']]) }]]]), formulas: new Map(), assumed: new Map(), own: new Map(), files: [] }; // prettier-ignore
}

function good<T>(result: T | Problem): T {
  if (isProblem(result)) throw new Error(sentence(result));
  return result;
}

function opened(result: OpenedNotebook | Problem): OpenedNotebook {
  return good(result);
}
