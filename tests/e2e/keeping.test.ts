import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { openApp, startBrowser, writerOf } from './open.ts';

/** What the scripts that stand in for the browser's store leave on the page. */
interface Watched {
  /** Transactions that write, as they were asked for, and when they were begun and done, in ms since 1970. */
  writes: { durability: string; began: number; done: number }[];
  /** When the mark came to say saved. */
  marks: number[];
  /** A write is not done as long as this stands. */
  holds: boolean;
  isFull: boolean;
  asked: number;
}
declare const globalThis: Watched & typeof window;

const SAVED = 'Saved on this device';
const PATIENT = { timeout: 90_000 };

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe('the mark that says saved', PATIENT, () => {
  it('stands only where every write was ordered to the disk and the browser said it was done', async () => {
    const page = await opened(watchStore);
    await page.getByRole('button', { name: 'Start empty' }).click();
    await fieldOf(page, 'fence_height').waitFor();
    await page.evaluate(watchMark);
    for (const height of ['5 ft', '5 ft 6 in', '6 ft']) {
      await type(page, 'fence_height', height);
      await markIs(page, SAVED);
    }
    await everywhere(page, () => (globalThis.holds = true));
    await type(page, 'fence_height', '7 ft');
    await page.waitForTimeout(300);
    await markIs(page, 'Saving');
    await everywhere(page, () => (globalThis.holds = false));
    await markIs(page, SAVED);
    const writes = (await everywhere(page, () => globalThis.writes)).flat();
    const marks = await page.evaluate(() => globalThis.marks);
    expect(marks.length).toBeGreaterThanOrEqual(4);
    for (const mark of marks)
      expect(writes.filter(({ began, done }) => began < mark && !(done <= mark))).toEqual([]);
    expect(writes.length).toBeGreaterThanOrEqual(4);
    expect(new Set(writes.map(({ durability }) => durability))).toEqual(new Set(['strict']));
  });
});

describe('the promise to keep what is there', PATIENT, () => {
  it('is asked for once there is work, brought in or typed, and not for the example', async () => {
    const page = await opened(countAsking);
    const asked = () => page.evaluate(() => globalThis.asked);
    await page.getByRole('button', { name: 'Open the demo job' }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    expect(await asked()).toBe(0);

    await page.goto(inject('address'));
    await page.getByRole('button', { name: 'Start empty' }).click();
    await fieldOf(page, 'fence_height').waitFor();
    for (let edit = 1; edit <= 11; edit += 1)
      await type(page, 'fence_height', `${String(edit)} ft`);
    await markIs(page, SAVED);
    expect(await asked()).toBe(0);
    await type(page, 'fence_height', '12 ft');
    await expect.poll(asked).toBe(1);

    await page.goto(inject('address'));
    const buffer = Buffer.from('Post,Gap in,Level in\n1,1/4,48');
    await page.getByLabel('Readings').first().setInputFiles({ name: 'a.csv', mimeType: 'text/csv', buffer }); // prettier-ignore
    await page.getByRole('button', { name: 'Bring in', exact: true }).click();
    await expect.poll(asked).toBe(1);
  });
});

describe('a browser that keeps nothing more', PATIENT, () => {
  it('is said at once, the job goes on and can be saved as a file, and is kept once there is room', async () => {
    const page = await opened(watchStore);
    await page.getByRole('button', { name: 'Start empty' }).click();
    await type(page, 'fence_height', '5 ft');
    await markIs(page, SAVED);
    await everywhere(page, () => (globalThis.isFull = true));
    await type(page, 'fence_height', '6 ft');
    const bar = page.getByRole('alert').filter({ hasText: 'no room left' });
    await bar.waitFor();
    await type(page, 'post_spacing', '7 ft');
    expect(await savedInputs(page)).toMatchObject({ fence_height: '6 ft', post_spacing: '7 ft' });
    // It stands as long as it is so.
    expect(await bar.isVisible()).toBe(true);
    await everywhere(page, () => (globalThis.isFull = false));
    await bar.waitFor({ state: 'hidden' });
    await markIs(page, SAVED);
    await page.reload();
    await expect.poll(() => fieldOf(page, 'post_spacing').inputValue()).toBe('7 ft');
  });

  it('as in a private window, is said before anything is typed, and again over the work', async () => {
    const page = await opened(denyStore);
    await page.getByText('does not let the page keep anything').first().waitFor();
    await page.getByRole('button', { name: 'Start empty' }).click();
    await type(page, 'fence_height', '5 ft');
    await page.getByText('New job” not saved').waitFor();
    expect(await savedInputs(page)).toMatchObject({ fence_height: '5 ft' });
  });
});

describe('what is kept of a job', PATIENT, () => {
  it('is kept again where the browser cleared it; damage, a late backup and a newer version are said on opening', async () => {
    const page = await opened(watchStore);
    await page.getByRole('button', { name: 'Start empty' }).click();
    await type(page, 'fence_height', '5 ft');
    await markIs(page, SAVED);
    await page.evaluate(clearStore);
    await page.getByText('This browser cleared what it kept').waitFor();
    await page.reload();
    await expect.poll(() => fieldOf(page, 'fence_height').inputValue()).toBe('5 ft');

    await type(page, 'post_spacing', '7 ft');
    await type(page, 'ground_gap', '3 in');
    await markIs(page, SAVED);
    await page.evaluate(alter, ['act', -2, 'tear'] as const);
    await page.reload();
    await page
      .getByText(/Opened without what could not be read\..*Act \d+ of the journal/)
      .waitFor();
    expect(await fieldOf(page, 'ground_gap').inputValue()).toBe('3 in');

    await page.evaluate(alter, ['entry', -1, 'age'] as const);
    await page.evaluate(alter, ['act', -2, 'drop'] as const);
    await page.goto(inject('address'));
    await page.getByText('New job: in no backup yet.').waitFor();
    await page.evaluate(alter, ['entry', -1, 'newer'] as const);
    await page
      .locator('bp-kept-jobs')
      .getByRole('button', { name: 'New job', exact: true })
      .click();
    await page.getByText('written by a newer version').waitFor();
    await type(page, 'ground_gap', '9 in');
    await page.keyboard.press('Tab');
    await expect.poll(() => fieldOf(page, 'ground_gap').inputValue()).toBe('3 in');
  });
});

describe('a job as it was earlier in the day', PATIENT, () => {
  it('is looked at without being changed, brought back in one step, and that taken back', async () => {
    const page = await opened(watchStore);
    await page.getByRole('button', { name: 'Start empty' }).click();
    for (const height of ['5 ft', '6 ft', '7 ft']) await type(page, 'fence_height', height);
    await markIs(page, SAVED);
    const height = () => fieldOf(page, 'fence_height').inputValue();
    // The latest stands first.
    const lookAtTheOneBefore = async () => {
      await choose(page, 'Earlier today');
      await page
        .locator('bp-history')
        .getByRole('button', { name: /fence height/i })
        .nth(1)
        .click();
    };
    await lookAtTheOneBefore();
    await expect.poll(height).toBe('6 ft');
    await page.getByRole('button', { name: 'Back to now' }).click();
    await expect.poll(height).toBe('7 ft');
    await lookAtTheOneBefore();
    await page.getByRole('button', { name: 'Bring this back' }).click();
    await expect.poll(height).toBe('6 ft');
    await markIs(page, SAVED);
    await page.reload();
    await expect.poll(height).toBe('6 ft');
    await page.getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(height).toBe('7 ft');
  });
});

describe('a notebook file of a newer version', PATIENT, () => {
  it('opens to be read, says why nothing in it can be changed, and lets go of what is typed', async () => {
    const page = await opened(watchStore);
    await page.getByRole('button', { name: 'Start empty' }).click();
    await type(page, 'fence_height', '5 ft');
    await markIs(page, SAVED);
    await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    const coming = page.waitForEvent('download');
    await choose(page, 'Save as a file');
    const file = JSON.parse(await readFile(await (await coming).path(), 'utf8')) as object;
    const buffer = Buffer.from(JSON.stringify({ ...file, format: 99 }));
    await page.goto(inject('address'));
    await page.getByLabel('Notebook file').setInputFiles({ name: 'newer.json', mimeType: 'application/json', buffer }); // prettier-ignore
    await page.getByText('written by a newer version').first().waitFor();
    await type(page, 'fence_height', '9 ft');
    await page.keyboard.press('Tab');
    await expect.poll(() => fieldOf(page, 'fence_height').inputValue()).toBe('5 ft');
  });
});

/** The app with a script that was there before it, in the page and in the thread that writes. */
async function opened(script: () => void): Promise<Page> {
  const { page } = await openApp(browser, { viewport: { width: 1440, height: 1000 } });
  await page.addInitScript(script);
  page.on('worker', (thread) => void thread.evaluate(script).catch(() => undefined));
  await page.goto(inject('address'));
  return page;
}

/** Does something in the page and in its thread that writes. */
async function everywhere<T>(page: Page, deed: () => T): Promise<T[]> {
  const writer = await writerOf(page);
  return Promise.all([page.evaluate(deed), writer.evaluate(deed)]);
}

function fieldOf(page: Page, input: string) {
  return page.locator(`[data-column="${input}"] input`);
}

async function type(page: Page, input: string, text: string): Promise<void> {
  await fieldOf(page, input).fill(text);
  await fieldOf(page, input).press('Enter');
}

/** Takes a deed from the header's further ones. */
async function choose(page: Page, deed: string): Promise<void> {
  await page.locator('bp-header summary', { hasText: 'More' }).click();
  await page.locator('bp-header details').getByRole('button', { name: deed }).click();
}

async function markIs(page: Page, words: string): Promise<void> {
  await page.locator('bp-header .saved', { hasText: words }).waitFor();
}

/** What the job holds in the file that the standing offer gives. */
async function savedInputs(page: Page): Promise<unknown> {
  // Nobody is there to say where a file should go.
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  const coming = page.waitForEvent('download');
  await page.getByRole('alert').getByRole('button', { name: 'Save it as a file' }).click();
  const text = await readFile(await (await coming).path(), 'utf8');
  return Object.fromEntries((JSON.parse(text) as { inputs: [string, string][] }).inputs);
}

// The functions below run in the page.

/** Writes down what is asked of the store, and can hold a write open or refuse it. */
function watchStore(): void {
  globalThis.writes = [];
  globalThis.marks = [];
  const now = () => performance.timeOrigin + performance.now();
  const begin: IDBDatabase['transaction'] = Reflect.get(IDBDatabase.prototype, 'transaction');
  IDBDatabase.prototype.transaction = function (...asked) {
    const begun = begin.apply(this, asked);
    if (begun.mode === 'readwrite') {
      const write = { durability: begun.durability, began: now(), done: Infinity };
      globalThis.writes.push(write);
      begun.addEventListener('complete', () => (write.done = now()));
    }
    return begun;
  };
  const commit: IDBTransaction['commit'] = Reflect.get(IDBTransaction.prototype, 'commit');
  IDBTransaction.prototype.commit = function () {
    if (!globalThis.holds) commit.call(this);
  };
  const put: IDBObjectStore['put'] = Reflect.get(IDBObjectStore.prototype, 'put');
  const done = new Set<IDBTransaction>();
  IDBObjectStore.prototype.put = function (...what) {
    if (globalThis.isFull) throw new DOMException('Full.', 'QuotaExceededError');
    const keepOpen = (): void => {
      if (globalThis.holds) this.get('nothing').onsuccess = keepOpen;
      else if (!done.has(this.transaction)) commit.call(this.transaction);
      if (!globalThis.holds) done.add(this.transaction);
    };
    const putting = put.apply(this, what);
    if (globalThis.holds) keepOpen();
    return putting;
  };
}

/** Notes each time the mark comes to say saved. */
function watchMark(): void {
  const header = document.querySelector('bp-app')?.shadowRoot?.querySelector('bp-header');
  const mark = header?.shadowRoot?.querySelector('.saved');
  if (!mark) throw new Error('There is no mark.');
  new MutationObserver(() => {
    if (mark.textContent === 'Saved on this device')
      globalThis.marks.push(performance.timeOrigin + performance.now());
  }).observe(mark, { characterData: true, childList: true, subtree: true });
}

function countAsking(): void {
  globalThis.asked = 0;
  StorageManager.prototype.persist = () => {
    globalThis.asked += 1;
    return Promise.resolve(true);
  };
}

function denyStore(): void {
  IDBFactory.prototype.open = () => {
    throw new DOMException('The operation is insecure.', 'SecurityError');
  };
}

async function clearStore(): Promise<void> {
  await new Promise((resolve) => (indexedDB.deleteDatabase('backplumb').onsuccess = resolve));
}

/** A part of a job, which of them counted from the end, and what becomes of it. */
type Alteration = readonly [
  part: 'act' | 'entry',
  at: number,
  how: 'tear' | 'age' | 'drop' | 'newer',
];

/** Does to what is kept of a job what a disk, time or another build would do. */
async function alter([part, at, how]: Alteration): Promise<void> {
  const done = <T>(request: IDBRequest<T>): Promise<T> =>
    new Promise((resolve) => (request.onsuccess = () => resolve(request.result)));
  const database = await done(indexedDB.open('backplumb'));
  const objects = database.transaction('shelf', 'readwrite').objectStore('shelf');
  const range = IDBKeyRange.bound([part], [part, []]);
  const key = (await done(objects.getAllKeys(range))).at(at) ?? '';
  const kept: unknown = await done(objects.get(key));
  if (how === 'drop') await done(objects.delete(key));
  else {
    const changed = {
      tear: () => (kept as Uint8Array).slice(0, 20),
      age: () => ({ ...(kept as object), savedAt: Date.now() - 24 * 60 * 60 * 1000 }),
      newer: () => ({ ...(kept as object), format: 99 }),
    };
    await done(objects.put(changed[how](), key));
  }
  database.close();
}
