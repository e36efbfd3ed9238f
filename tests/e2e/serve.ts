import { execFile, spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built app is served, such as `http://127.0.0.1:40123/`. */
    address: string;
    /** The folder it was built into. */
    built: string;
  }
}

const VITE = join('node_modules', 'vite', 'bin', 'vite.js');

/** Builds and serves the app with the commands behind `npm start`, on a free port. */
export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'backplumb-'));
  const built = join(folder, 'dist');
  const env = { ...process.env, CI: 'true' };
  // The test runner's own settings would build a development page.
  for (const name of ['NODE_ENV', 'VITEST', 'TEST', 'MODE', 'DEV', 'PROD'])
    Reflect.deleteProperty(env, name);

  await promisify(execFile)(process.execPath, [VITE, 'build', '--outDir', built], { env });
  const port = String(await freePort());
  const server = spawn(
    process.execPath,
    [VITE, 'preview', '--outDir', built, '--port', port, '--strictPort'],
    { env, stdio: ['ignore', 'pipe', 'inherit'] },
  );
  project.provide('built', built);
  project.provide('address', await printedAddress(server));

  return async () => {
    server.kill();
    await rm(folder, { recursive: true, force: true });
  };
}

function printedAddress(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    server.stdout?.on('data', (part: Buffer) => {
      printed += part.toString();
      const address = /Backplumb is at (http:\S+)/.exec(printed)?.[1];
      if (address !== undefined) resolve(address);
    });
    server.once('exit', () => {
      reject(new Error(`The server ended before it printed an address. It printed: ${printed}`));
    });
  });
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const bound = probe.address();
      probe.close(() => {
        if (bound === null || typeof bound === 'string') reject(new Error('No port was given.'));
        else resolve(bound.port);
      });
    });
  });
}
