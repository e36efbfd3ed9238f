import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, findChromium } from '../../chromium.ts';
import { watchStore, type Write } from './watch.ts';

/** The app as `npm start` builds and serves it, and a browser to open it in. */
export interface App {
  readonly address: string;
  /** The folder it was built into. */
  readonly built: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

const VITE = join('node_modules', 'vite', 'bin', 'vite.js');

/** Builds and serves the app on a free port and starts Chromium; the caller closes both. */
export async function startApp(): Promise<App> {
  const folder = mkdtempSync(join(tmpdir(), 'backplumb-'));
  const built = join(folder, 'dist');
  const env = { ...process.env, CI: 'true' };
  execFileSync(process.execPath, [VITE, 'build', '--outDir', built, '--logLevel', 'error'], {
    env,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const server = spawn(process.execPath, [VITE, 'preview', '--outDir', built, '--port', '7686'], {
    env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (part: Buffer) => {
      said += part.toString();
      const found = /Backplumb is at (http:\S+)/.exec(said)?.[1];
      if (found !== undefined) resolve(found);
    });
    server.once('exit', () => {
      reject(new Error(`The server ended: ${said}`));
    });
  });
  const browser = await chromium.launch({
    executablePath: findChromium(),
    args: CHROMIUM_FLAGS,
    headless: true,
  });
  return {
    address,
    built,
    browser,
    async close() {
      await browser.close();
      server.kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A page with a clean profile and a desk's screen; `watch` runs before anything of the page does. */
export async function cleanPage({ browser }: App, watch?: () => void): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  // The compiler of this bench names functions through a helper that no page has.
  await page.addInitScript('globalThis.__name = (named) => named;');
  if (watch) {
    await page.addInitScript(watch);
    await page.addInitScript(watchStore);
    page.on('worker', (thread) => {
      if (!thread.url().includes('writing-thread')) return;
      // A page that is left at once takes its thread with it, and there is nothing to note.
      thread
        .evaluate(`globalThis.__name = (named) => named; (${watchStore.toString()})()`)
        .catch(() => undefined);
    });
  }
  return page;
}

/** Takes the writes noted so far, of the page and of its thread that writes. */
export async function takeWrites(page: Page): Promise<Write[]> {
  const writes = await page.evaluate(() => globalThis.storeWrites.splice(0));
  for (const thread of page.workers()) {
    if (thread.url().includes('writing-thread'))
      writes.push(...(await thread.evaluate(() => globalThis.storeWrites.splice(0))));
  }
  return writes;
}
