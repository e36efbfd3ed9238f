import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApp, startBrowser } from './open.ts';

const DESK = { viewport: { width: 1440, height: 1000 } };

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe('a crew’s file, on the built page', () => {
  it('is put right before it comes in, and the next file of its shape is taken so', async () => {
    const { page, complaints } = await openApp(browser, DESK);
    await choose(page, 'a.csv', 'Post,Gap in,Bubble\n1,1/4,48 in\n2,3/8,72 in');
    await page.getByLabel('What “Bubble” fills').selectOption({ label: 'Level length' });
    await page.getByText('settled by you').waitFor();
    await bringIn(page);
    expect(await cells(page, 'Over')).toEqual(['48', '72']);

    await choose(page, 'b.csv', 'Post,Gap in,Bubble\n3,1/4,24 in');
    await page.getByText('as you settled them').waitFor();
    await bringIn(page);
    await expect.poll(() => cells(page, 'Over')).toEqual(['48', '72', '24']);
    expect(complaints).toEqual([]);
  });

  it('dropped on the holes is merged with them by post, once what would change was seen', async () => {
    const { page, complaints } = await openApp(browser, DESK);
    await choose(page, 'a.csv', 'Post,Gap in,Level in,Rock\n1,1/4,48,snapped\n2,1/4,48,snapped');
    await bringIn(page);
    const holes = page.getByRole('grid', { name: /holes/i });
    await holes.waitFor();
    await page.locator('bp-sheet#holes').evaluate((sheet) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File(['Post,Width (in)\n2,14\n9,14\n'], 'dug.csv'));
      const drop = { dataTransfer, bubbles: true, composed: true, cancelable: true };
      sheet.shadowRoot?.querySelector('section')?.dispatchEvent(new DragEvent('drop', drop));
    });
    const dialog = page.getByRole('dialog', { name: /dug.csv/ });
    await dialog.getByText('Not on this sheet, and left out: 9.').waitFor();
    await dialog.getByRole('button', { name: 'Merge: change 1 cell' }).click();
    await page.getByText('dug.csv: 1 changed, 0 added, 0 the same.').waitFor();
    const row = holes.getByRole('row').nth(2);
    await expect.poll(() => row.innerText()).toMatch(/^14/m);
    await page.keyboard.press('Control+z');
    await expect.poll(() => row.innerText()).not.toMatch(/^14/m);
    expect(complaints).toEqual([]);
  });

  it('of a yard’s prices is compared with the prices that stand before any is applied', async () => {
    const { page, complaints } = await openApp(browser, DESK);
    await page.getByRole('button', { name: 'Start empty' }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    const head = 'Item,Size,Length,Price\n';
    await choose(page, 'spring.csv', `${head}post,4x4,10 ft,22.50\nrail,2x4,8 ft,5.10\n`);
    await page.getByText('spring.csv: a price list; 3 lines read, 2 taken').waitFor();
    await choose(page, 'fall.csv', `${head}Posts,4x4,10 ft,24\nrail,2x4,8 ft,5.10\ngravel,,,6\n`);
    const dialog = page.getByRole('dialog', { name: /fall.csv/ });
    await dialog.getByText('22.50').waitFor();
    await dialog.getByText('The same: rail 2x4 8 ft.').waitFor();
    await page.keyboard.press('Escape');
    await page.getByText('fall.csv: a price list; 4 lines read, left').waitFor();
    await choose(page, 'fall.csv', `${head}Posts,4x4,10 ft,24\nrail,2x4,8 ft,5.10\ngravel,,,6\n`);
    await dialog.getByRole('button', { name: 'Merge: change 1 cell, add 1 price' }).click();
    await page.getByText('4 lines read, 1 changed, 1 added, 1 the same').waitFor();
    expect(complaints).toEqual([]);
  });

  it('of 100,000 lines is read beside the page, which goes on drawing', async () => {
    const { page, complaints } = await openApp(browser, DESK);
    await page.getByRole('button', { name: 'Start empty' }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    await choose(page, 'long.csv', longFile(100_000));
    await page.getByRole('progressbar').waitFor();
    await page.evaluate(watchFrames);
    await page.getByText('100001 lines read: 100000 posts').waitFor({ timeout: 20_000 });
    const longest = await page.evaluate(
      () => (globalThis as { longestFrame?: number }).longestFrame,
    );
    // Reading it on the page itself holds the page for longer than a second.
    expect(longest).toBeLessThan(500);
    expect(complaints).toEqual([]);
  });

  it('that is cancelled while it is read, or comes in, leaves no job behind', async () => {
    const { page, complaints } = await openApp(browser, DESK);
    await page.waitForLoadState('networkidle');
    await choose(page, 'long.csv', longFile(100_000));
    await page.getByRole('progressbar').waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Import a CSV' }).waitFor();
    await page.waitForLoadState('networkidle');
    await choose(page, 'long.csv', longFile(8000));
    await page.getByRole('heading', { name: 'Before long.csv comes in' }).waitFor();
    await page.evaluate(cancelOnceItComesIn);
    await page.getByRole('button', { name: 'Bring in', exact: true }).click();
    await page.getByRole('button', { name: 'Import a CSV' }).waitFor();
    expect(complaints).toEqual([]);
    await page.reload();
    await page.getByRole('button', { name: 'Import a CSV' }).waitFor();
    expect(await page.getByText('Jobs on this device').count()).toBe(0);
  });

  it('that is cancelled while it comes in leaves the job as it was, byte for byte, with what may be done again', async () => {
    const { page, complaints } = await openApp(browser, DESK);
    await choose(page, 'a.csv', 'Post,Gap in,Level in\n1,1/4,48');
    await bringIn(page);
    await page.getByRole('grid', { name: /posts/i }).getByRole('gridcell').first().click();
    await page.keyboard.press('Alt+Shift+Enter');
    await page.keyboard.press('Control+z');
    await page.getByText('Taken back: add row').waitFor();
    await page.getByText('Saved on this device').first().waitFor();
    const before = await savedFile(page);
    await choose(page, 'long.csv', longFile(8000));
    await page.getByRole('heading', { name: 'Before long.csv comes in' }).waitFor();
    await page.evaluate(cancelOnceItComesIn);
    await page.getByRole('button', { name: 'Bring in', exact: true }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    expect(await page.evaluate(() => (globalThis as { cancelled?: boolean }).cancelled)).toBe(true);
    expect(await savedFile(page)).toBe(before);
    await page.reload();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    expect(await savedFile(page)).toBe(before);
    await page.keyboard.press('Control+y');
    await page.getByText('Done again: add').waitFor();
    expect(complaints).toEqual([]);
  });

  it('that is cancelled after it was read leaves the open job as it was', async () => {
    const { page } = await openApp(browser, DESK);
    await choose(page, 'a.csv', 'Post,Gap in,Level in\n1,1/4,48');
    await bringIn(page);
    await choose(page, 'b.csv', 'Post,Gap in,Level in\n2,3/8,48');
    await page.getByRole('heading', { name: 'Before b.csv comes in' }).waitFor();
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    expect(await cells(page, 'Lean gap')).toEqual(['1/4']);
  });
});

async function choose(page: Page, name: string, text: string): Promise<void> {
  const field = page.locator('input[type=file][aria-label="Readings"]').first();
  await field.setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
}

async function bringIn(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Bring in', exact: true }).click();
  await page.getByRole('grid', { name: /posts/i }).waitFor();
}

/** The job, as “Save as a file” gives it. */
async function savedFile(page: Page): Promise<string> {
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  const coming = page.waitForEvent('download');
  await page.locator('summary', { hasText: /^More$/ }).click();
  await page.getByRole('button', { name: 'Save as a file' }).click();
  return readFile(await (await coming).path(), 'utf8');
}

/** Cancels as soon as the file that is looked at is coming in. Runs on the page. */
function cancelOnceItComesIn(): void {
  const watch = (): void => {
    const inside = document.querySelector('bp-app')?.shadowRoot?.querySelector('bp-import');
    const cancel = inside?.shadowRoot?.querySelector('.progress + .deeds button');
    const isComingIn = inside?.shadowRoot?.querySelector('h1')?.textContent.startsWith('Bringing');
    if (isComingIn !== true || !(cancel instanceof HTMLButtonElement)) requestAnimationFrame(watch);
    else {
      (globalThis as { cancelled?: boolean }).cancelled = true;
      cancel.click();
    }
  };
  watch();
}

/** What one column of the posts shows, row by row. */
async function cells(page: Page, column: string): Promise<string[]> {
  const grid = page.getByRole('grid', { name: /posts/i });
  const heads = await grid.getByRole('columnheader').allInnerTexts();
  const at = heads.findIndex((head) => head.trim().startsWith(column));
  const rows = (await grid.getByRole('row').all()).slice(1);
  const texts = await Promise.all(
    rows.map((row) => row.locator('[role=gridcell],[role=rowheader]').nth(at).innerText()),
  );
  return texts.map((text) => text.trim().split('\n')[0] ?? '').filter((text) => text !== '');
}

/** Keeps the longest time between two frames. Runs on the page. */
function watchFrames(): void {
  const page = globalThis as { longestFrame?: number };
  let last = performance.now();
  const frame = (now: number): void => {
    page.longestFrame = Math.max(page.longestFrame ?? 0, now - last);
    last = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

function longFile(posts: number): string {
  const lines = Array.from(
    { length: posts },
    (_, at) =>
      `${String(at + 1)},${String(8 * at)},${String((at % 50) / 8)},48,S,${String(at % 7)}/8,firm,note ${String(at)}`,
  );
  return `Post,Sta ft,Gap in,Level in,To,Probe in,Rock test,Note\n${lines.join('\n')}`;
}
