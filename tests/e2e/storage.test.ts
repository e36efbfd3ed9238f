import type { Page } from 'playwright-core';
import { afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import type * as Storage from '../../src/storage/index.ts';
import { bundled } from './bundle.ts';
import { mortalBrowser, type MortalBrowser } from './mortal-browser.ts';

/** What these tests put into a page: the storage layer, a shelf, and what the shelf said. */
interface Shelved {
  backplumbStorage: typeof Storage;
  shelf: Storage.Shelf;
  troubles: string[];
}
declare const globalThis: Shelved & typeof window;

let storage: string;
let browser: MortalBrowser;

beforeAll(async () => {
  storage = await bundled('src/storage/index.ts', 'backplumbStorage');
});
beforeEach(async () => {
  browser = await mortalBrowser();
});
afterEach(async () => {
  await browser.remove();
});

// Several browsers started on a busy machine.
describe('a notebook in a browser with a profile of its own', { timeout: 120_000 }, () => {
  it('has every entry whose saved mark stood on the screen, when the browser is killed at that moment', async () => {
    let address = inject('address');
    const heights = ['5 ft', '5 ft 6 in', '6 ft'];
    for (const [round, height] of heights.entries()) {
      const page = await browser.start();
      await page.goto(address);
      const field = page.locator('[data-column="fence_height"] input');
      if (round === 0) await page.getByRole('button', { name: 'Start empty' }).click();
      await field.waitFor();
      if (round > 0) expect(await field.inputValue()).toBe(heights[round - 1]);
      await field.fill(height);
      await field.press('Enter');
      await page.locator('bp-header .saved', { hasText: 'Saved on this device' }).waitFor();
      address = page.url();
      await browser.kill();
    }
  });

  it('is whole as it was before when there is no room, and is saved once there is', async () => {
    const page = await plainPage(await browser.start());
    const session = await page.context().newCDPSession(page);
    const { origin } = new URL(page.url());
    // Before anything is stored: the browser asks for the room left only now and then.
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 4_000_000 });
    await putShelf(page);
    await page.evaluate(saveNoise, { id: 'elm', size: 1_000_000 });
    await page.evaluate(saveNoise, { id: 'oak', size: 1_000 });

    await page.evaluate(saveNoise, { id: 'oak', size: 6_000_000 });
    expect(await page.evaluate(() => globalThis.troubles)).toEqual([
      expect.stringMatching(/“oak” not saved.*no room left.*Export the notebook/),
    ]);
    expect(await page.evaluate(keptSize, 'oak')).toBe(1_000);

    await session.send('Storage.overrideQuotaForOrigin', { origin });
    await page.evaluate(() => globalThis.shelf.erase('elm'));
    expect(await page.evaluate(() => globalThis.troubles.at(-1))).toBe('over');
    expect(await page.evaluate(keptSize, 'oak')).toBe(6_000_000);
  });
});

/** A plain file of the app: its address, and so its stored data, without the app's own saving. */
async function plainPage(page: Page): Promise<Page> {
  await page.goto(new URL('icon.svg', inject('address')).href);
  return page;
}

async function putShelf(page: Page): Promise<Page> {
  await page.evaluate(storage);
  await page.evaluate(async () => {
    globalThis.troubles = [];
    globalThis.shelf = await globalThis.backplumbStorage.openShelf({
      onTrouble: (trouble) =>
        globalThis.troubles.push(trouble ? Object.values(trouble).join(' ') : 'over'),
    });
  });
  return page;
}

// The functions below run in the page.

async function saveNoise({ id, size }: { id: string; size: number }): Promise<void> {
  // Noise, because the browser's store presses anything else together.
  let bytes = '';
  while (bytes.length < size) {
    const noise = crypto.getRandomValues(new Uint8Array(48_000));
    bytes += btoa(String.fromCharCode(...noise));
  }
  const file = { name: 'crew.csv', bytes: bytes.slice(0, size), linesRead: 1, passedOver: [] };
  const opened = await globalThis.shelf.open(id);
  const nothing = { inputs: new Map(), sheets: new Map(), formulas: new Map(), assumed: new Map(), own: new Map(), files: [] }; // prettier-ignore
  const { notebook } =
    'notebook' in opened
      ? opened
      : await globalThis.shelf.create(id, { format: 2, name: id, ...nothing }, true);
  notebook.do('bring in', [{ edit: 'add file', file }]);
  await globalThis.shelf.flush();
}

async function keptSize(id: string): Promise<number | undefined> {
  const document = await globalThis.shelf.read(id);
  return 'files' in document ? document.files.at(-1)?.bytes.length : undefined;
}
