import type { Page } from 'playwright-core';
import { notebookFile } from '../../../src/output/index.ts';
import { quantile } from '../clock.ts';
import { inCount, inTime, told, type Figure, type Findings } from '../figure.ts';
import { largeJob } from '../large-job.ts';
import { cleanPage, startApp, type App } from './app.ts';
import { budgetFigures } from './budget.ts';
import { editAmong, orderAmong, scrollThrough } from './scrolling.ts';
import { typeReadings, typingFigures } from './typing.ts';
import { watchPage } from './watch.ts';

/** All that is measured on the built page in a real browser. */
export async function onThePage(): Promise<Findings> {
  const app = await startApp();
  try {
    const figures: Figure[] = [...budgetFigures(app.built), await emptyStart(app)];
    const small = await opened(app, 100);
    const few = await typeReadings(small, 100, 60);
    await small.context().close();
    const large = await opened(app, 10_000);
    figures.push(await openFromStorage(large, app, 10_000));
    figures.push(...typingFigures(few, await typeReadings(large, 10_000, 200)));
    await large.context().close();
    const huge = await opened(app, 100_000);
    figures.push(...(await scrollThrough(huge, 100_000)), await editAmong(huge, 100_000));
    figures.push(await orderAmong(huge, 100_000));
    await huge.context().close();
    return { figures, curves: [] };
  } finally {
    await app.close();
  }
}

async function opened(app: App, posts: number): Promise<Page> {
  const page = await cleanPage(app, watchPage);
  await page.goto(app.address);
  await page.locator('input[aria-label="Notebook file"]').setInputFiles({
    name: 'job.json',
    mimeType: 'application/json',
    buffer: Buffer.from(notebookFile(largeJob(posts).document)),
  });
  await page.waitForFunction(() => globalThis.noted.firstRemedy !== undefined);
  await page.getByText('Saved on this device').first().waitFor();
  return page;
}

async function openFromStorage(page: Page, { address }: App, posts: number): Promise<Figure> {
  const times: number[] = [];
  for (let round = 0; round < 3; round++) {
    await page.reload();
    await page.waitForFunction(() => globalThis.noted.firstRemedy !== undefined);
    times.push((await page.evaluate(() => globalThis.noted.firstRemedy)) ?? NaN);
  }
  const floor = await blankPage(page, address);
  return told(
    {
      part: 'open',
      what: 'from storage to the first correct paint',
      size: `${inCount(posts)} posts`,
      found: inTime(quantile(times, 0.5)),
      against: `a blank page ${inTime(floor)}`,
      how: 'reload of the built page; the first frame in which the posts show a remedy, median of 3',
    },
    quantile(times, 0.5) / floor,
  );
}

async function emptyStart(app: App): Promise<Figure> {
  const times: number[] = [];
  let floor = NaN;
  for (let round = 0; round < 3; round++) {
    const page = await cleanPage(app, watchPage);
    await page.goto(app.address);
    await page.waitForFunction(() => globalThis.noted.firstButton !== undefined);
    times.push((await page.evaluate(() => globalThis.noted.firstButton)) ?? NaN);
    floor = await blankPage(page, app.address);
    await page.context().close();
  }
  return told(
    {
      part: 'open',
      what: 'the empty start',
      size: 'no job',
      found: inTime(quantile(times, 0.5)),
      against: `a blank page ${inTime(floor)}`,
      how: 'clean profile; the first frame with a button to begin, median of 3',
    },
    quantile(times, 0.5) / floor,
  );
}

/** When an empty page of the same server has its first frame. */
async function blankPage(page: Page, address: string): Promise<number> {
  const blank = await page.context().newPage();
  await blank.route('**/blank.html', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>.</title><p>.' }),
  );
  await blank.goto(`${address}blank.html`);
  const ms = await blank.evaluate(
    () =>
      new Promise<number>((resolve) => {
        requestAnimationFrame(() => {
          resolve(performance.now());
        });
      }),
  );
  await blank.close();
  return ms;
}
