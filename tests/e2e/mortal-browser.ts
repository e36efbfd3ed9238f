import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, findChromium } from '../chromium.ts';

/** A browser with a profile that outlives it, so that it can be killed and started again. */
export interface MortalBrowser {
  /** Starts it, and opens a page on nothing yet. */
  start(): Promise<Page>;
  /** Ends every one of its processes at one blow. */
  kill(): Promise<void>;
  /** Kills it and takes its profile away. */
  remove(): Promise<void>;
}

/** Makes a profile for such a browser. */
export async function mortalBrowser(): Promise<MortalBrowser> {
  const profile = await mkdtemp(join(tmpdir(), 'backplumb-profile-'));
  const port = join(profile, 'DevToolsActivePort');
  let running: ChildProcess | undefined;

  const kill = async (): Promise<void> => {
    const ending = running;
    running = undefined;
    if (ending?.pid === undefined || ending.exitCode !== null) return;
    const ended = once(ending, 'exit');
    process.kill(-ending.pid, 'SIGKILL');
    await ended;
  };

  return {
    async start() {
      await rm(port, { force: true });
      const flags = [...CHROMIUM_FLAGS, '--headless', '--remote-debugging-port=0'];
      // A group of its own, so that all of it can be killed.
      running = spawn(findChromium(), [...flags, `--user-data-dir=${profile}`, 'about:blank'], {
        detached: true,
        stdio: 'ignore',
        // A killed browser leaves its own temporary folders behind; here they go with the profile.
        env: { ...process.env, TMPDIR: profile },
      });
      const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await writtenIn(port)}`);
      const context = browser.contexts()[0] ?? (await browser.newContext());
      return context.newPage();
    },
    kill,
    async remove() {
      await kill();
      await rm(profile, { recursive: true, force: true });
    },
  };
}

/** The port a browser listens on, once it has written it down. */
async function writtenIn(path: string): Promise<string> {
  for (;;) {
    const text = await readFile(path, 'utf8').catch(() => '');
    const [port = '', address = ''] = text.split('\n');
    if (address !== '') return port;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
