import { execFile, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';

const VITE = join('node_modules', 'vite', 'bin', 'vite.js');

/** A running server of a built app. */
export interface Preview {
  /** Where it is, such as `http://127.0.0.1:40123/`. */
  readonly address: string;
  stop(): Promise<void>;
}

/** Builds the app into a folder, with the command behind `npm start` or with another script that does so. */
export async function buildInto(folder: string, script = [VITE, 'build']): Promise<void> {
  await promisify(execFile)(process.execPath, [...script, '--outDir', folder], {
    env: plainEnvironment(),
  });
}

/** Serves a folder with the command behind `npm start`. */
export async function previewOf(folder: string, port: number): Promise<Preview> {
  const server = spawn(
    process.execPath,
    [VITE, 'preview', '--outDir', folder, '--port', String(port), '--strictPort'],
    { env: plainEnvironment(), stdio: ['ignore', 'pipe', 'inherit'] },
  );
  return {
    address: await printedAddress(server),
    async stop() {
      if (server.exitCode !== null) return;
      const ended = once(server, 'exit');
      server.kill();
      await ended;
    },
  };
}

export function freePort(): Promise<number> {
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

// The test runner's own settings would build a development page.
function plainEnvironment(): NodeJS.ProcessEnv {
  const env = { ...process.env, CI: 'true' };
  for (const name of ['NODE_ENV', 'VITEST', 'TEST', 'MODE', 'DEV', 'PROD'])
    Reflect.deleteProperty(env, name);
  return env;
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
