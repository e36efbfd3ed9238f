import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readMaterialList } from '../../src/output/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { openApp, startBrowser } from './open.ts';
import { postsCell, postsColumn } from './posts-grid.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
});

describe('the whole job, on the built page', () => {
  it('goes from a crew’s file to a supplier’s list that is still there after a reload', async () => {
    const { page, complaints } = await openApp(browser, {
      viewport: { width: 1440, height: 1000 },
    });
    await bringIn(page, 'tests/samples/D6-stepped.csv');

    // The file has no probe and no rock test: one ask for each column, answered in place.
    await page.locator('summary', { hasText: '2 asks' }).click();
    await page.getByRole('button', { name: 'Yes, all sound' }).first().click();
    await page.getByRole('button', { name: 'Yes, all firm' }).first().click();
    await expect
      .poll(() => remedies(page))
      .toEqual([
        'leave',
        'leave',
        're-plumb',
        're-plumb',
        're-plumb',
        're-plumb',
        'leave',
        'leave',
        'leave',
      ]);

    // A reading changes: post 5 turns out rotten, and the list follows.
    await typeInto(page, '5', 'Probe', '1 in');
    await expect.poll(async () => (await remedies(page))[4]).toBe('replace');
    // Hand-worked: 72 + 2 + 30 = 104 in, from 10 ft stock.
    const list = await supplierList(page);
    expect(list.find(({ item }) => item === 'post')).toMatchObject({ size: '4x4', quantity: 1 });
    expect(list.find(({ item }) => item === 'concrete mix')).toMatchObject({ quantity: 4 });

    await page.getByText('Saved on this device').first().waitFor();
    await page.reload();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    await expect.poll(async () => (await remedies(page))[4]).toBe('replace');
    expect(await supplierList(page)).toEqual(list);

    // What was done before the reload can still be taken back and done again, and is named.
    await page.getByRole('button', { name: /^Undo: probe/i }).click();
    await expect.poll(async () => (await remedies(page))[4]).toBe('re-plumb');
    await page.getByRole('button', { name: /^Redo: probe/i }).click();
    await expect.poll(async () => (await remedies(page))[4]).toBe('replace');
    expect(complaints).toEqual([]);
  });

  it('takes company details, rates and prices over from the earlier job that is chosen', async () => {
    const { page } = await openApp(browser, { viewport: { width: 1440, height: 1000 } });
    const input = (column: string) => page.locator(`bp-field[data-column=${column}] input`);
    // Two jobs of an invented company, each with a rate of its own; the first has a yard's price.
    for (const rate of ['61', '62']) {
      await page.getByRole('button', { name: 'Start empty' }).click();
      await input('company').fill(`Invented Fence ${rate}`);
      await input('crew_rate').fill(rate);
      await input('crew_rate').press('Tab');
      await input('site_address').fill('1 Invented Lane');
      await input('site_address').press('Tab');
      if (rate === '61') {
        await page
          .locator('input[type=file][aria-label*="eadings"]')
          .first()
          .setInputFiles({
            name: 'yard.csv',
            mimeType: 'text/csv',
            buffer: Buffer.from('Description,Size,Length,Each\nPost,4x4,10 ft,22.50\n'),
          });
        await page
          .getByRole('grid', { name: /prices/i })
          .getByText('22.50')
          .waitFor();
      }
      await page.getByText('Saved on this device').first().waitFor();
      await page.evaluate(() => (location.hash = ''));
      await page.getByRole('button', { name: 'Start empty' }).waitFor();
    }
    // The last saved is taken unless another is chosen.
    const choice = page.getByRole('combobox', { name: /takes over/ });
    await choice.selectOption({ index: 1 });
    await page.getByRole('button', { name: 'Start empty' }).click();
    await expect.poll(() => input('company').inputValue()).toBe('Invented Fence 61');
    expect(await input('crew_rate').inputValue()).toMatch(/^61/);
    expect(await input('site_address').inputValue()).toBe('');
    await page
      .getByRole('grid', { name: /prices/i })
      .getByText('22.50')
      .waitFor();
  });

  it('says one clear thing of a file it can’t read, and leaves the job as it was', async () => {
    const { page } = await openApp(browser, { viewport: { width: 1440, height: 1000 } });
    await bringIn(page, 'tests/samples/D1-tree-run.csv');
    await expect.poll(() => remedies(page)).toHaveLength(7);
    const before = await remedies(page);
    await page
      .locator('input[type=file][aria-label*="eadings"]')
      .first()
      .setInputFiles({
        name: 'fence.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]),
      });
    await page
      .getByText(/picture/i)
      .first()
      .waitFor();
    expect(await remedies(page)).toEqual(before);
  });
});

async function bringIn(page: Page, path: string): Promise<void> {
  await page.getByRole('button', { name: 'Import a CSV' }).waitFor();
  await page
    .locator('input[type=file][aria-label*="eadings"]')
    .first()
    .setInputFiles(resolve(path));
  await page.getByRole('button', { name: 'Bring in', exact: true }).click();
  await page.getByRole('grid', { name: /posts/i }).waitFor();
}

/** What the remedy column shows, row by row. */
function remedies(page: Page): Promise<string[]> {
  return postsColumn(page, 'Remedy');
}

async function typeInto(page: Page, post: string, column: string, text: string): Promise<void> {
  await (await postsCell(page, Number(post), column)).click();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

async function supplierList(page: Page) {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Supplier’s list' }).first().click();
  const file = await (await download).path();
  const lines = readMaterialList(await readFile(file));
  if (isProblem(lines)) throw new Error(lines.found);
  return lines;
}
