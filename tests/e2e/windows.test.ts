import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type * as Storage from '../../src/storage/index.ts';
import { bundled } from './bundle.ts';
import { openApp, startBrowser } from './open.ts';

declare const globalThis: typeof window & {
  backplumbStorage: typeof Storage;
  shelf: Storage.Shelf;
};

// Two pages on a busy machine.
const LONG = { timeout: 10_000 };

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe('two windows on one job', { timeout: 90_000 }, () => {
  it('both see an edit, keep both of two that cross, and settle on the chosen one', async () => {
    const { page: one, complaints } = await openApp(browser);
    await one.getByRole('button', { name: 'Start empty' }).click();
    const field = (page: Page) => page.locator('[data-column="fence_height"] input');
    await field(one).waitFor();
    const other = await one.context().newPage();
    await other.goto(one.url());
    await field(other).waitFor();

    await type(one, field(one), '5 ft');
    await expect.poll(() => field(other).inputValue(), LONG).toBe('5 ft');

    // The other window is typing while this one writes in the same place.
    await field(other).click();
    await other.keyboard.type('7 ft');
    await type(one, field(one), '6 ft 6 in');
    await expect.poll(() => one.getByText('Saved on this device').count(), LONG).toBe(1);
    await other.waitForTimeout(200);
    expect(await field(other).inputValue()).toBe('7 ft');
    await other.keyboard.press('Enter');

    for (const page of [one, other])
      await page.getByRole('heading', { name: 'Two windows wrote in one place' }).waitFor();
    await expect.poll(() => field(one).inputValue(), LONG).toBe('7 ft');
    await one.getByRole('button', { name: 'Take “6 ft 6 in”' }).click();
    for (const page of [one, other]) {
      await expect.poll(() => page.locator('bp-keeping-bar').count(), LONG).toBe(0);
      await expect.poll(() => field(page).inputValue(), LONG).toBe('6 ft 6 in');
    }
    expect(complaints).toEqual([]);
  });

  it('of two versions: the older one is told to reload, and writes nothing more', async () => {
    const { page } = await openApp(browser);
    await page.getByRole('button', { name: 'Start empty' }).click();
    const field = page.locator('[data-column="fence_height"] input');
    await field.waitFor();
    await type(page, field, '6 ft');
    await page.getByText('Saved on this device').waitFor();
    // A window of a later build: what it keeps jobs with, in the same browser.
    const ahead = await page.context().newPage();
    await ahead.goto(new URL('icon.svg', page.url()).href);
    await ahead.evaluate(await bundled('src/storage/index.ts', 'backplumbStorage'));
    await ahead.evaluate(openAhead, new URL(page.url()).hash.slice(1));
    await page.getByText('A newer Backplumb is open in another window').waitFor();
    await page.getByRole('button', { name: 'Reload this page' }).waitFor();
    await type(page, field, '5 ft');
    await page.keyboard.press('Tab');
    // It still shows what the newer one writes.
    await expect.poll(() => field.inputValue(), LONG).toBe('6 ft 6 in');
    // The work of both builds is there, and the older one opens it to be looked at.
    expect(await ahead.evaluate(heightKept, new URL(page.url()).hash.slice(1))).toBe('6 ft 6 in');
    await page.reload();
    await page.getByText('written by a newer version').waitFor();
    await expect.poll(() => field.inputValue(), LONG).toBe('6 ft 6 in');
  });
});

async function type(page: Page, field: ReturnType<Page['locator']>, text: string): Promise<void> {
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

// The functions below run in the page.

async function openAhead(id: string): Promise<void> {
  globalThis.shelf = await globalThis.backplumbStorage.openShelf({}, { format: 99 });
  const opened = await globalThis.shelf.open(id);
  if (!('notebook' in opened)) throw new Error(opened.found);
  const before = opened.notebook.document.inputs.get('fence_height');
  opened.notebook.do('type', [{ edit: 'input', name: 'fence_height', before, after: '6 ft 6 in' }]);
  await globalThis.shelf.flush();
}

async function heightKept(id: string): Promise<string | undefined> {
  const document = await globalThis.shelf.read(id);
  return 'inputs' in document ? document.inputs.get('fence_height') : document.found;
}
