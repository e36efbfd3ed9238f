import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command } from '../cli.ts';
import { openApp, startBrowser } from './open.ts';
import { postsColumn } from './posts-grid.ts';

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
    expect(await entries(page, 'Over')).toEqual(['48', '72']);

    await choose(page, 'b.csv', 'Post,Gap in,Bubble\n3,1/4,24 in');
    await page.getByText('as you settled them').waitFor();
    await bringIn(page);
    await expect.poll(() => entries(page, 'Over')).toEqual(['48', '72', '24']);
    expect(complaints).toEqual([]);
  });

  it('of mixed defects is brought in and answered by keys alone, and told alike on the screen, in the job and by the command line', async () => {
    const { page, complaints } = await openApp(browser, DESK);
    await page.getByRole('button', { name: 'Import a CSV' }).waitFor();
    const chooser = page.waitForEvent('filechooser');
    await tabTo(page, /^Import a CSV/);
    await page.keyboard.press('Enter');
    await (await chooser).setFiles({ name: 'mixed.csv', mimeType: 'text/csv', buffer: MIXED });
    const mapping = page.getByRole('table', { name: 'What each header was taken for' });
    await mapping.waitFor();
    const rows = (await mapping.getByRole('row').all()).slice(1);
    const whys = await Promise.all(rows.map((row) => row.getByRole('cell').last().innerText()));
    expect(whys.map((why) => why.length > 3)).toEqual(Array.from({ length: 7 }, () => true));
    expect(await mapping.locator('select:enabled').count()).toBe(7);
    await tabTo(page, /^Bring in$/);
    await page.keyboard.press('Enter');
    const told = '9 lines read = 1 imported + 5 asked about + 3 passed over.';
    await page.getByText(`mixed.csv: ${told}`).waitFor();
    expect(await reportOf(page, 'Shift+Tab')).toContain(told);
    await page.keyboard.press('Escape');

    // One list, in which the second ask is answered before the first, and one answer may be for all that are alike.
    await tabTo(page, /^7 asks/);
    await page.keyboard.press('Enter');
    await page.getByText('2;8-May;48;S;firm;0;', { exact: true }).waitFor();
    await tabTo(page, /69\.9 mm/);
    await page.keyboard.press('2');
    await page.getByText('Lean gap, post 4: 1 1/4 in.').waitFor();
    await tabTo(page, /^Same for all 2 like this \(also line 5\)/, 'Shift+Tab');
    await page.keyboard.press('Space');
    await page.keyboard.press('1');
    await page.getByText('Lean gap, 2 like this: 5/8 in.').waitFor();
    await focusIsOn(page, /^not read/);
    await page.keyboard.press('1');
    await focusIsOn(page, /^yes, N/);
    await page.keyboard.press('1');
    await focusIsOn(page, /^Answer/);
    await page.keyboard.type('4A');
    await page.keyboard.press('Enter');
    await page.getByText('to answer before the numbers stand').waitFor({ state: 'hidden' });
    expect(await entries(page, 'Post')).toEqual(['1', '2', '3', '4A', '4', '5']);
    expect(await entries(page, 'Lean gap')).toEqual(['1/4', '5/8', '5/8', '1 1/4', '3/8']);

    // For later, and as the command line has it.
    await page.getByText('Saved on this device').first().waitFor();
    await page.reload();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    const report = await reportOf(page);
    expect(report).toContain('9 lines read = 6 imported + 0 asked about + 3 passed over.');
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save the file as it came' }).click();
    const given = await (await coming).path();
    expect(await readFile(given)).toEqual(MIXED);
    const { out } = await command('takeoff', given, '--json');
    const takeoff = JSON.parse(out) as CliAccount;
    expect(takeoff.rows).toEqual({ read: 9, imported: 1, asked: 5, passed_over: 3 });
    for (const { line, why, text } of takeoff.passed_over)
      expect(report).toContain(`Line ${String(line)}: ${why}. ${text}`);
    expect(complaints).toEqual([]);
  }, 60_000);

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
    await row.scrollIntoViewIfNeeded();
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
    expect(await entries(page, 'Lean gap')).toEqual(['1/4']);
  });
});

/** Six posts with a little of everything, as bytes of Windows-1252. */
const MIXED = Buffer.from(
  `Oak Street, rear
Post;Gap in;Level in;To;Rock test;Probe in;Note
1;1/4;48;S;firm;0;caf\xe9 gate
2;8-May;48;S;firm;0;
3;8-May;48;S;firm;0;
4;11/4;48;N;firm;1/8;
4;3/8;48;"""";firm;0;
Subtotal;;;;;;
5;?;48;N;firm;0;`,
  'latin1',
);

interface CliAccount {
  readonly rows: unknown;
  readonly passed_over: readonly {
    readonly line: number;
    readonly why: string;
    readonly text: string;
  }[];
}

/** Presses Tab until what has the focus says such words. */
async function tabTo(page: Page, words: RegExp, key = 'Tab'): Promise<void> {
  for (let pressed = 0; pressed < 60; pressed++) {
    if (words.test(await page.evaluate(focusedWords))) return;
    await page.keyboard.press(key);
  }
  throw new Error(`Tab came to nothing like ${String(words)}.`);
}

async function focusIsOn(page: Page, words: RegExp): Promise<void> {
  await expect.poll(() => page.evaluate(focusedWords)).toMatch(words);
}

/** What has the focus says, or its label does. Runs on the page. */
function focusedWords(): string {
  let focused = document.activeElement;
  while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
  const label = focused instanceof HTMLInputElement ? focused.labels?.[0] : undefined;
  return (label ?? focused)?.textContent.replace(/\s+/g, ' ').trim() ?? '';
}

/** What “Files brought in” says, all of it. */
async function reportOf(page: Page, key = 'Tab'): Promise<string> {
  await tabTo(page, /^More$/, key);
  await page.keyboard.press('Enter');
  await tabTo(page, /^Files brought in$/);
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Files brought in' });
  const words = (await dialog.textContent()) ?? '';
  return words.replace(/\s+/g, ' ');
}

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

/** What stands in a column of the posts, but for its blanks. */
async function entries(page: Page, column: string): Promise<string[]> {
  return (await postsColumn(page, column)).filter((text) => text !== '');
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
