import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp, startBrowser } from './open.ts';

// Two pages on a busy machine.
const LONG = { timeout: 10_000 };

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe('two windows on one job', () => {
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
    const ahead = await page.context().newPage();
    await ahead.goto(page.url());
    // What a window of a later build says when it opens.
    await ahead.evaluate(() => {
      new BroadcastChannel('backplumb').postMessage({ say: 'here', format: 99 });
    });
    await page.getByRole('button', { name: 'Reload this page' }).waitFor();
    await type(page, field, '5 ft');
    await page.keyboard.press('Tab');
    await expect.poll(() => field.inputValue(), LONG).not.toBe('5 ft');
  });
});

async function type(page: Page, field: ReturnType<Page['locator']>, text: string): Promise<void> {
  await field.click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}
