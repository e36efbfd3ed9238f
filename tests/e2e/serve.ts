import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { buildInto, freePort, previewOf } from './preview.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built app is served, such as `http://127.0.0.1:40123/`. */
    address: string;
    /** The folder it was built into. */
    built: string;
  }
}

/** Builds and serves the app with the commands behind `npm start`, on a free port. */
export default async function serve(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'backplumb-'));
  const built = join(folder, 'dist');
  await buildInto(built);
  const server = await previewOf(built, await freePort());
  project.provide('built', built);
  project.provide('address', server.address);
  return async () => {
    await server.stop();
    await rm(folder, { recursive: true, force: true });
  };
}
