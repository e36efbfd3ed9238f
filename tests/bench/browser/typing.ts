import type { Page } from 'playwright-core';
import { quantile } from '../clock.ts';
import { atMost, inCount, inTime, told, type Figure } from '../figure.ts';
import { takeWrites } from './app.ts';

/** [ms] */
const FRAME = 1000 / 60;

/** What a run of edits came to. */
export interface Typed {
  readonly posts: number;
  /** From the key that commits to the frame that shows what depends on it, in ms. */
  readonly toPaint: readonly number[];
  /** The same for a key that changes nothing. */
  readonly floor: readonly number[];
  /** A cell edit on the device: bytes and ms. */
  readonly savedBytes: readonly number[];
  readonly savedMs: readonly number[];
  /** From the key that commits to the browser's word that it is flushed to the disk, in ms. */
  readonly toSaved: readonly number[];
  /** As many bytes written by nobody's doing, with nothing else going on, in ms. */
  readonly bareSave: readonly number[];
}

/** Types readings down the lean gaps as a person would, and notes when each was painted and saved. */
export async function typeReadings(page: Page, posts: number, edits: number): Promise<Typed> {
  await page.evaluate(watchKeys);
  const grid = page.getByRole('grid', { name: /posts/i });
  await grid.scrollIntoViewIfNeeded();
  const heads = await grid.getByRole('columnheader').allInnerTexts();
  const gap = heads.findIndex((head) => head.trim().startsWith('Lean gap'));
  const cell = grid.getByRole('row').nth(1).locator('[role=gridcell],[role=rowheader]').nth(gap);
  await cell.click();
  for (let press = 0; press < 40; press++) {
    await page.keyboard.press('Shift');
    await page.waitForTimeout(7);
  }
  const floor = await painted(page, 'Shift');
  // What was looked up for this test is no work of the page.
  await page.evaluate(() => (globalThis.noted.longTasks.length = 0));
  await takeWrites(page);
  for (let edit = 0; edit < edits; edit++) {
    // Thirty-seconds, which no reading of the job has, so that every one is a change.
    await page.keyboard.type(`${String(2 * (edit % 15) + 1)}/32`);
    await page.keyboard.press('Enter');
    // A person looks before the next reading; keys in a queue would wait for one another.
    await page.waitForFunction((done) => (globalThis.painted['Enter']?.length ?? 0) > done, edit);
  }
  await page.waitForTimeout(600);
  const toPaint = await painted(page, 'Enter');
  const over = (await takeWrites(page)).filter((write) => Number.isFinite(write.over));
  over.sort((a, b) => a.began - b.began);
  const committed = (await page.evaluate(() => globalThis.pressed)).slice(-edits);
  const savedBytes = over.map(({ bytes }) => bytes);
  return {
    posts,
    toPaint,
    floor,
    savedBytes,
    toSaved: committed.map((at) => (over.find(({ began }) => began >= at)?.over ?? NaN) - at),
    bareSave: await page.evaluate(bareSaves, quantile(savedBytes, 0.5)),
    savedMs: over.map(({ began, over: ended }) => ended - began),
  };
}

/** Keystroke to paint, in frames, and what a cell edit writes. */
export function typingFigures(few: Typed, many: Typed): readonly Figure[] {
  const size = `${inCount(many.posts)} posts`;
  const [p50, p95] = [quantile(many.toPaint, 0.5), quantile(many.toPaint, 0.95)];
  const [f50, f95] = [quantile(many.floor, 0.5), quantile(many.floor, 0.95)];
  const [bytesFew, bytes] = [quantile(few.savedBytes, 0.5), quantile(many.savedBytes, 0.5)];
  const [msFew, ms] = [quantile(few.savedMs, 0.5), quantile(many.savedMs, 0.5)];
  const [s50, s95] = [quantile(many.toSaved, 0.5), quantile(many.toSaved, 0.95)];
  const frames = (time: number) => `${(time / FRAME).toFixed(1)} frames`;
  return [
    atMost(2, p95 / FRAME, {
      part: 'keystroke to paint',
      what: 'p95, in frames of 1/60 s',
      size,
      found: `${frames(p95)} (${inTime(p95)}), p50 ${frames(p50)}`,
      against: `a key that changes nothing: p95 ${frames(f95)}, p50 ${frames(f50)}`,
      how: `${String(many.toPaint.length)} lean gaps typed down the sheet; from the Enter that commits to the end of the frame after its row shows another lean, in headless Chromium`,
    }),
    told({
      part: 'keystroke to paint',
      what: 'the same on a small notebook',
      size: `${inCount(few.posts)} posts`,
      found: `p95 ${frames(quantile(few.toPaint, 0.95))}, p50 ${frames(quantile(few.toPaint, 0.5))}`,
      against: `a key that changes nothing: p95 ${frames(quantile(few.floor, 0.95))}`,
      how: 'as above',
    }),
    atMost(1.5, bytes / bytesFew, {
      part: 'save',
      what: 'bytes written a cell edit',
      size,
      found: `${inCount(bytes)} bytes`,
      against: `${inCount(few.posts)} posts ${inCount(bytesFew)} bytes`,
      how: `what every transaction hands to IndexedDB while readings are typed, median of ${String(many.savedBytes.length)}`,
    }),
    atMost(2, ms / msFew, {
      part: 'save',
      what: 'time of a save',
      size,
      found: inTime(ms),
      against: `${inCount(few.posts)} posts ${inTime(msFew)}`,
      how: 'from the first write of a transaction to its completion, flushed to the disk, median',
    }),
    atMost(50, s95, {
      part: 'save',
      what: 'commit to saved, p95 in ms',
      size,
      found: `${inTime(s95)}, p50 ${inTime(s50)}`,
      against: `as many bytes alone: p95 ${inTime(quantile(many.bareSave, 0.95))}, p50 ${inTime(quantile(many.bareSave, 0.5))}`,
      how: 'from the Enter that commits a reading to the browser’s word that it is flushed to the disk, when the saved mark goes up; beside it, transactions of the same bytes and durability in the idle page',
    }),
  ];
}

declare global {
  var painted: Record<string, number[]>;
  /** When each Enter was pressed, in ms since 1970. */
  var pressed: number[];
}

function painted(page: Page, key: string): Promise<number[]> {
  return page.evaluate((name) => globalThis.painted[name] ?? [], key);
}

/** Runs in the page: how long the device takes to keep so many bytes when nothing else is asked of it. */
async function bareSaves(bytes: number): Promise<number[]> {
  const request = indexedDB.open('bare');
  request.onupgradeneeded = () => request.result.createObjectStore('bare');
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('It did not open.'));
  });
  const times: number[] = [];
  for (let each = 0; each < 60; each++) {
    const began = performance.now();
    await new Promise((resolve) => {
      const transaction = database.transaction('bare', 'readwrite', { durability: 'strict' });
      transaction.oncomplete = resolve;
      transaction.objectStore('bare').put(new Uint8Array(bytes), each);
    });
    times.push(performance.now() - began);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  database.close();
  return times;
}

/** Runs in the page: times keys to the end of the frame that shows what they did. */
function watchKeys(): void {
  globalThis.painted = {};
  globalThis.pressed = [];
  const lean = (row: number) =>
    document
      .querySelector('bp-app')
      ?.shadowRoot?.querySelector('bp-sheet#posts')
      ?.shadowRoot?.querySelector('bp-grid')
      ?.shadowRoot?.querySelector(`[role=row][aria-rowindex="${String(row + 2)}"]`)
      ?.textContent.replaceAll(/\d+\/32/g, '') ?? '';
  const current = () =>
    Number(
      document
        .querySelector('bp-app')
        ?.shadowRoot?.querySelector('bp-sheet#posts')
        ?.shadowRoot?.querySelector('bp-grid')
        ?.shadowRoot?.querySelector<HTMLElement>('.cell.current')?.dataset['row'] ?? -1,
    );
  document.addEventListener(
    'keydown',
    ({ key, timeStamp }: KeyboardEvent) => {
      if (key !== 'Shift' && key !== 'Enter') return;
      if (key === 'Enter') globalThis.pressed.push(performance.timeOrigin + timeStamp);
      const row = current();
      const before = lean(row);
      const end = (isFirst: boolean) => {
        requestAnimationFrame(() => {
          if (key === 'Enter' && lean(row) === before && performance.now() - timeStamp < 1000) {
            end(false);
            return;
          }
          // The task after a frame's callbacks comes once it is painted.
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => {
            (globalThis.painted[key] ??= []).push(performance.now() - timeStamp);
          };
          port2.postMessage(isFirst);
        });
      };
      end(true);
    },
    true,
  );
}
