import { once } from 'node:events';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { complaintsOf, startBrowser } from './open.ts';
import { postsCell } from './posts-grid.ts';
import { buildInto, freePort, previewOf, type Preview } from './preview.ts';
import { switchBetween, type Switch } from './switch.ts';

const DESK = { viewport: { width: 1440, height: 1000 } };

// The browser takes its time over a new worker, more so on a busy machine.
const PATIENT = { timeout: 20_000 };

let browser: Browser;
let folder: string;
let next: Preview;
let line: Switch;
let context: BrowserContext;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  browser = await startBrowser();
  folder = await mkdtemp(join(tmpdir(), 'backplumb-next-'));
  const built = join(folder, 'dist');
  await buildInto(built, [
    join('node_modules', 'tsx', 'dist', 'cli.mjs'),
    'tests/e2e/build-next.ts',
  ]);
  next = await previewOf(built, await freePort());
  line = await switchBetween();
}, 120_000);
afterAll(async () => {
  await browser.close();
  await line.close();
  await next.stop();
  await rm(folder, { recursive: true, force: true });
});
beforeEach(async () => {
  line.to = inject('address');
  context = await browser.newContext(DESK);
  page = await context.newPage();
  page.setDefaultTimeout(20_000);
  complaints = complaintsOf(page);
  await page.goto(line.address);
  await page.evaluate(isKept);
}, 60_000);
afterEach(async () => {
  await context.close();
});

describe('the second visit, with no network and no server', { timeout: 90_000 }, () => {
  it('opens the page, a job, its printed pages and a crew’s file', async () => {
    await page.getByRole('button', { name: 'Open the demo job' }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    await page.getByText('Saved on this device').first().waitFor();
    line.to = undefined;
    await context.setOffline(true);

    await page.goto('about:blank');
    await page.goto(line.address);
    await page.getByRole('button', { name: 'Tannery Lane, back run', exact: true }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    expect(await page.getByRole('grid', { name: /holes/i }).count()).toBe(1);
    expect(await printed(page)).toMatch(/Tannery Lane/);

    await page.goto(line.address);
    await page.getByRole('button', { name: 'Open the demo job' }).waitFor();
    const field = page.locator('input[type=file][aria-label="Readings"]').first();
    const readings = Buffer.from('Post,Gap in,Level in\n1,1/4,48\n2,3/8,48');
    await field.setInputFiles({ name: 'a.csv', mimeType: 'text/csv', buffer: readings });
    await page.getByRole('button', { name: 'Bring in', exact: true }).click();
    await page.getByRole('grid', { name: /posts/i }).waitFor();
    expect(complaints).toEqual([]);
  });

  it('has every file that was built and no other, under the same content policy', async () => {
    const built = (await readdir(inject('built'), { recursive: true, withFileTypes: true }))
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(inject('built').length))
      .filter((path) => path !== '/service-worker.js')
      .map((path) => (path === '/index.html' ? '/' : path));
    expect(built.length).toBeGreaterThan(20);
    expect((await page.evaluate(keptFiles)).sort()).toEqual(built.sort());

    line.to = undefined;
    const policy = await page.evaluate(async () =>
      (await fetch('/')).headers.get('content-security-policy'),
    );
    expect(policy).toContain("default-src 'none'");
  });
});

describe('the page', () => {
  it('can be installed as an app, with icons of its own', async () => {
    const session = await context.newCDPSession(page);
    const { errors, data } = await session.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    const { icons } = JSON.parse(data ?? '') as { icons: { src: string; sizes: string }[] };
    const sizes = await page.evaluate(
      sizesOf,
      icons.map(({ src }) => src),
    );
    const written = icons.map(({ sizes: size }) => size);
    expect(written.slice(1)).toEqual(sizes.slice(1));
    expect(written).toContain('192x192');
    expect(written).toContain('512x512');
    // What the browser itself holds against installing: nothing but that a test's profile is a private one.
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
    expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
  });
});

describe('a new version', { timeout: 90_000 }, () => {
  it('is offered in a quiet line, and what is being typed is kept when it is taken', async () => {
    await page.getByRole('button', { name: 'Open the demo job' }).click();
    const grid = page.getByRole('grid', { name: /posts/i });
    await grid.waitFor();
    await (await postsCell(page, 1, 'Note')).click();
    await page.keyboard.type('gate swings in');

    line.to = next.address;
    // As the browser does by itself when the page is opened, and the page now and then.
    await page.evaluate(lookForNext);
    await page.getByText('A new version is ready. Reload when you are done.').waitFor();
    // It waits: the page is still the old one, and the field is still open.
    expect(await version(page)).toBe('this');
    expect(await page.locator('input.editor').inputValue()).toBe('gate swings in');

    await page.getByRole('button', { name: 'Reload', exact: true }).click();
    await expect.poll(() => version(page), PATIENT).toBe('next');
    await grid.waitFor();
    await expect
      .poll(async () => (await postsCell(page, 1, 'Note')).textContent(), PATIENT)
      .toContain('gate swings in');
    expect(await page.getByText('A new version is ready').count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it('is what a plain reload shows, and stays without a network, while another window goes on', async () => {
    const other = await context.newPage();
    await other.goto(line.address);
    await other.getByRole('button', { name: 'Open the demo job' }).waitFor();
    line.to = next.address;
    await page.reload();
    await page.getByText('A new version is ready').waitFor();
    expect(await version(page)).toBe('this');
    await page.reload();
    await expect.poll(() => version(page), PATIENT).toBe('next');

    line.to = undefined;
    await context.setOffline(true);
    await page.reload();
    await page.getByRole('button', { name: 'Open the demo job' }).waitFor();
    await expect.poll(() => version(page), PATIENT).toBe('next');
    // Scripts of the old version are nowhere but on this device, for the window that still shows it.
    expect(await version(other)).toBe('this');
    expect(await other.evaluate(canFetchItsScript)).toBe(true);
  });

  it('that can’t be fetched whole is not taken', async () => {
    const signIn = await signInPage(new URL('service-worker.js', next.address));
    line.to = signIn.address;
    await page.evaluate(lookForNext);
    await expect.poll(() => signIn.asked, PATIENT).toBeGreaterThan(1);
    await expect.poll(() => page.evaluate(installs), PATIENT).toBe(false);
    await signIn.close();
    await page.reload();
    await page.getByRole('button', { name: 'Open the demo job' }).waitFor();
    expect(await version(page)).toBe('this');
    expect(await page.getByText('A new version is ready').count()).toBe(0);
  });
});

/** A guest network that lets the new worker through and answers everything else with its own page. */
async function signInPage(worker: URL) {
  const script = await (await fetch(worker)).text();
  let asked = 0;
  const server = createServer((request, response) => {
    const isWorker = request.url === worker.pathname;
    asked += 1;
    response.setHeader('Content-Type', isWorker ? 'text/javascript' : 'text/html');
    response.end(isWorker ? script : '<p>Sign in to this network</p>');
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  return {
    address: `http://127.0.0.1:${String((server.address() as AddressInfo).port)}/`,
    get asked() {
      return asked;
    },
    async close() {
      line.to = undefined;
      server.close();
      await once(server, 'close');
    },
  };
}

function version(of: Page): Promise<string> {
  return of.evaluate(() => document.documentElement.dataset['version'] ?? 'this');
}

async function printed(of: Page): Promise<string> {
  await of.evaluate(() => {
    window.print = () => undefined;
  });
  await of.locator('summary', { hasText: 'More' }).click();
  await of.getByRole('button', { name: 'Print the quote' }).click();
  const quote = of.locator('bp-quote-page');
  await quote.waitFor({ state: 'attached' });
  return (await quote.evaluate((element) => element.shadowRoot?.textContent)) ?? '';
}

// The functions below run in the page.

function sizesOf(addresses: string[]): Promise<string[]> {
  return Promise.all(
    addresses.map(async (src) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      return `${String(image.naturalWidth)}x${String(image.naturalHeight)}`;
    }),
  );
}

async function canFetchItsScript(): Promise<boolean> {
  const script = document.querySelector<HTMLScriptElement>('script[type=module]');
  const { ok, headers } = await fetch(script?.src ?? '');
  return ok && (headers.get('content-type') ?? '').includes('javascript');
}

async function isKept(): Promise<void> {
  await navigator.serviceWorker.ready;
  while (navigator.serviceWorker.controller === null)
    await new Promise((resolve) => setTimeout(resolve, 20));
}

async function keptFiles(): Promise<string[]> {
  const [name = ''] = await caches.keys();
  const requests = await (await caches.open(name)).keys();
  return requests.map(({ url }) => new URL(url).pathname);
}

async function lookForNext(): Promise<void> {
  await (await navigator.serviceWorker.ready).update().catch(() => undefined);
}

async function installs(): Promise<boolean> {
  return (await navigator.serviceWorker.ready).installing !== null;
}
