import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import type * as Storage from '../../src/storage/index.ts';
import { CHROMIUM_FLAGS, findChromium } from '../chromium.ts';
import { bundled } from './bundle.ts';

/** What these tests put into a page: the storage layer, a shelf, and what the shelf said. */
interface Shelved {
  backplumbStorage: typeof Storage;
  shelf: Storage.Shelf;
  live: Storage.OpenedNotebook;
  troubles: string[];
  acknowledged: number;
}
declare const globalThis: Shelved & typeof window;

let storage: string;
let profile: string;
let running: ChildProcess | undefined;

beforeAll(async () => {
  storage = await bundled('src/storage/index.ts', 'backplumbStorage');
});
beforeEach(async () => {
  profile = await mkdtemp(join(tmpdir(), 'backplumb-profile-'));
});
afterEach(async () => {
  await kill();
  await rm(profile, { recursive: true, force: true });
});

describe('a notebook in a browser with a profile of its own', () => {
  it('keeps every acknowledged edit when the browser is killed', async () => {
    for (let round = 1; round <= 3; round += 1) {
      const page = await putShelf(await plainPage(await start()));
      const before = await lastEdit(page);
      await page.evaluate(editWithoutEnd, before);
      await page.waitForTimeout(300 + 150 * round);
      const acknowledged = await page.evaluate(() => globalThis.acknowledged);
      await kill();

      const kept = await lastEdit(await putShelf(await plainPage(await start())));
      expect(acknowledged).toBeGreaterThan(before);
      expect(kept).toBeGreaterThanOrEqual(acknowledged);
      await kill();
    }
  });

  it('is whole as it was before when there is no room, and is saved once there is', async () => {
    const page = await plainPage(await start());
    const session = await page.context().newCDPSession(page);
    const { origin } = new URL(page.url());
    // Before anything is stored: the browser asks for the room left only now and then.
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 4_000_000 });
    await putShelf(page);
    await page.evaluate(saveNoise, { id: 'elm', size: 1_000_000 });
    await page.evaluate(saveNoise, { id: 'oak', size: 1_000 });

    await page.evaluate(saveNoise, { id: 'oak', size: 6_000_000 });
    expect(await page.evaluate(() => globalThis.troubles)).toEqual([
      expect.stringMatching(/“oak” not saved.*no room left.*Export the notebook/),
    ]);
    expect(await page.evaluate(keptSize, 'oak')).toBe(1_000);

    await session.send('Storage.overrideQuotaForOrigin', { origin });
    await page.evaluate(() => globalThis.shelf.erase('elm'));
    expect(await page.evaluate(() => globalThis.troubles.at(-1))).toBe('over');
    expect(await page.evaluate(keptSize, 'oak')).toBe(6_000_000);
  });
});

async function start(): Promise<Browser> {
  await rm(join(profile, 'DevToolsActivePort'), { force: true });
  const flags = [...CHROMIUM_FLAGS, '--headless', '--remote-debugging-port=0'];
  // A group of its own, so that every one of its processes can be killed at one blow.
  running = spawn(findChromium(), [...flags, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: 'ignore',
    // A killed browser leaves its own temporary folders behind; here they go with the profile.
    env: { ...process.env, TMPDIR: profile },
  });
  return chromium.connectOverCDP(`http://127.0.0.1:${await debuggingPort()}`);
}

async function debuggingPort(): Promise<string> {
  for (;;) {
    const text = await readFile(join(profile, 'DevToolsActivePort'), 'utf8').catch(() => '');
    const [port = '', path = ''] = text.split('\n');
    if (path !== '') return port;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

async function kill(): Promise<void> {
  const ending = running;
  running = undefined;
  if (ending?.pid === undefined || ending.exitCode !== null) return;
  const ended = once(ending, 'exit');
  process.kill(-ending.pid, 'SIGKILL');
  await ended;
}

/** A plain file of the app: its address, and so its stored data, without the app's own saving. */
async function plainPage(browser: Browser): Promise<Page> {
  const context = browser.contexts()[0] ?? (await browser.newContext());
  const page = await context.newPage();
  await page.goto(new URL('icon.svg', inject('address')).href);
  return page;
}

async function putShelf(page: Page): Promise<Page> {
  await page.evaluate(storage);
  await page.evaluate(async () => {
    globalThis.troubles = [];
    globalThis.shelf = await globalThis.backplumbStorage.openShelf({
      onTrouble: (trouble) =>
        globalThis.troubles.push(trouble ? Object.values(trouble).join(' ') : 'over'),
    });
  });
  return page;
}

// The functions below run in the page.

function editWithoutEnd(from: number): void {
  const edit = async (number: number): Promise<void> => {
    const { notebook } = globalThis.live;
    const before = notebook.document.inputs.get('edit');
    notebook.do('edit', [{ edit: 'input', name: 'edit', before, after: String(number) }]);
    await globalThis.shelf.flush();
    globalThis.acknowledged = number;
    await edit(number + 1);
  };
  void edit(from + 1);
}

/** Opens the notebook, or begins it, and gives its last edit. */
async function lastEdit(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const opened = await globalThis.shelf.open('oak');
    const nothing = { inputs: new Map(), sheets: new Map(), formulas: new Map(), assumed: new Map(), own: new Map(), files: [] }; // prettier-ignore
    globalThis.live =
      'notebook' in opened
        ? opened
        : await globalThis.shelf.create('oak', { format: 2, name: 'oak', ...nothing }, true);
    return Number(globalThis.live.notebook.document.inputs.get('edit') ?? 0);
  });
}

async function saveNoise({ id, size }: { id: string; size: number }): Promise<void> {
  // Noise, because the browser's store presses anything else together.
  let bytes = '';
  while (bytes.length < size) {
    const noise = crypto.getRandomValues(new Uint8Array(48_000));
    bytes += btoa(String.fromCharCode(...noise));
  }
  const file = { name: 'crew.csv', bytes: bytes.slice(0, size), linesRead: 1, passedOver: [] };
  const opened = await globalThis.shelf.open(id);
  const nothing = { inputs: new Map(), sheets: new Map(), formulas: new Map(), assumed: new Map(), own: new Map(), files: [] }; // prettier-ignore
  const { notebook } =
    'notebook' in opened
      ? opened
      : await globalThis.shelf.create(id, { format: 2, name: id, ...nothing }, true);
  notebook.do('bring in', [{ edit: 'add file', file }]);
  await globalThis.shelf.flush();
}

async function keptSize(id: string): Promise<number | undefined> {
  const document = await globalThis.shelf.read(id);
  return 'files' in document ? document.files.at(-1)?.bytes.length : undefined;
}
