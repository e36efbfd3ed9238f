import type { Page } from 'playwright-core';
import { inCount, inTime, told, type Figure } from '../figure.ts';
import { typeReadings } from './typing.ts';

/** Frames of a scroll through all rows. */
interface Scrolled {
  readonly frames: readonly number[];
  readonly longest: number;
}

const FRAME = 1000 / 60;
const STEPS = 180;

/** Scrolls the posts from the first row to the last at full speed, and a plain box as tall beside it. */
export async function scrollThrough(page: Page, posts: number): Promise<readonly Figure[]> {
  await page.getByRole('grid', { name: /posts/i }).scrollIntoViewIfNeeded();
  const sheet = await page.evaluate(scroll, { steps: STEPS, plain: false });
  const plain = await page.evaluate(scroll, { steps: STEPS, plain: true });
  const dropped = ({ frames }: Scrolled) =>
    frames.reduce((sum, ms) => sum + Math.max(0, Math.round(ms / FRAME) - 1), 0);
  return [
    told({
      part: 'scroll',
      what: 'dropped frames from end to end',
      size: `${inCount(posts)} posts`,
      found: `${String(dropped(sheet))} of ${String(STEPS + dropped(sheet))} frames`,
      against: `an empty box as tall ${String(dropped(plain))}`,
      how: `${String(STEPS)} steps of an equal part of the whole height, one a frame: every row is new at each`,
    }),
    told({
      part: 'scroll',
      what: 'longest task of it',
      size: `${inCount(posts)} posts`,
      found: sheet.longest === 0 ? 'none over 50 ms' : inTime(sheet.longest),
      against: plain.longest === 0 ? 'an empty box: none' : `an empty box ${inTime(plain.longest)}`,
      how: 'long task entries of the browser, which begin at 50 ms',
    }),
  ];
}

/** Types readings among so many posts, each seen on the screen before the next, and tells the longest task. */
export async function editAmong(page: Page, posts: number): Promise<Figure> {
  const edits = 20;
  await page.waitForTimeout(3000);
  const { toPaint } = await typeReadings(page, posts, edits);
  const tasks = await page.evaluate(() => globalThis.noted.longTasks);
  return told({
    part: 'edit',
    what: 'longest task while readings are typed',
    size: `${inCount(posts)} posts`,
    found: tasks.length === 0 ? 'none over 50 ms' : inTime(Math.max(...tasks)),
    against: `${String(tasks.length)} tasks over 50 ms; every one of ${String(toPaint.length)} entries was painted`,
    how: `${String(edits)} lean gaps typed with real keys down the sheet; long task entries of the browser, which begin at 50 ms`,
  });
}

/** Sorts so many posts by the column that was typed in, then lets through those like one, and tells the longest task. */
export async function orderAmong(page: Page, posts: number): Promise<Figure> {
  const sheet = page.locator('bp-sheet#posts');
  const grid = sheet.getByRole('grid', { name: /posts/i });
  const first = grid.locator('[role=row][aria-rowindex="2"]');
  await page.evaluate(() => (globalThis.noted.longTasks.length = 0));
  const began = performance.now();
  const before = await first.textContent();
  await sheet.getByRole('button', { name: /: largest first$/ }).click();
  while ((await first.textContent()) === before) await page.waitForTimeout(50);
  const sorted = performance.now() - began;
  await sheet.getByRole('button', { name: /^Only “/ }).click();
  const all = String(posts + 1);
  while ((await grid.getAttribute('aria-rowcount')) === all) await page.waitForTimeout(50);
  const tasks = await page.evaluate(() => globalThis.noted.longTasks);
  return told({
    part: 'edit',
    what: 'longest task while rows are sorted and sifted',
    size: `${inCount(posts)} posts`,
    found: tasks.length === 0 ? 'none over 50 ms' : inTime(Math.max(...tasks)),
    against: `${String(tasks.length)} tasks over 50 ms; in order after ${inTime(sorted)}`,
    how: 'the buttons under the sheet: largest lean gap first, then only rows like one; long task entries of the browser, which begin at 50 ms',
  });
}

async function scroll({ steps, plain }: { steps: number; plain: boolean }): Promise<Scrolled> {
  const scroller = document
    .querySelector('bp-app')
    ?.shadowRoot?.querySelector('bp-sheet#posts')
    ?.shadowRoot?.querySelector('bp-grid')
    ?.shadowRoot?.querySelector<HTMLElement>('.scroller');
  if (!scroller) throw new Error('There is no grid to scroll.');
  const box = document.createElement('div');
  const tall = document.createElement('div');
  box.style.cssText = `position:fixed;inset:0;overflow:auto;z-index:9`;
  tall.style.height = `${String(scroller.scrollHeight)}px`;
  box.append(tall);
  if (plain) document.body.append(box);
  const moved = plain ? box : scroller;
  const height = moved.scrollHeight - moved.clientHeight;
  globalThis.noted.longTasks.length = 0;
  const frames: number[] = [];
  let last = await frame();
  for (let step = 1; step <= steps; step++) {
    moved.scrollTop = (height * step) / steps;
    const now = await frame();
    frames.push(now - last);
    last = now;
  }
  box.remove();
  await new Promise((resolve) => setTimeout(resolve, 200));
  return { frames, longest: Math.max(0, ...globalThis.noted.longTasks) };

  function frame(): Promise<number> {
    return new Promise((resolve) => requestAnimationFrame(resolve));
  }
}
