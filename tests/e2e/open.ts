import {
  chromium,
  type Browser,
  type BrowserContextOptions,
  type Page,
  type Worker,
} from 'playwright-core';
import { inject } from 'vitest';
import { CHROMIUM_FLAGS, findChromium } from '../chromium.ts';

/** Starts Chromium; the caller closes it. */
export function startBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: findChromium(), args: CHROMIUM_FLAGS, headless: true });
}

/** The built app in a clean profile, and every complaint its page makes: thrown errors, console errors, blocked content. */
export async function openApp(
  browser: Browser,
  options: BrowserContextOptions = {},
): Promise<{ page: Page; complaints: string[] }> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  // Under the test's own limit, so that a failure says which step never came.
  page.setDefaultTimeout(10_000);
  const complaints = complaintsOf(page);
  await page.goto(inject('address'));
  return { page, complaints };
}

/** Every complaint the page makes from now on. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('requestfailed', (request) => complaints.push(`${request.url()} was not fetched`));
  return complaints;
}

/** The thread of a page that writes acts down, once it is there. */
export async function writerOf(page: Page): Promise<Worker> {
  const isWriter = (thread: Worker) => thread.url().includes('writing-thread');
  return page.workers().find(isWriter) ?? page.waitForEvent('worker', isWriter);
}
