import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { basename, delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defineConfig, normalizePath, type Plugin, type UserConfig } from 'vite';
import { compactTemplates, sheetsAsData, textsAsData } from './vite.data.config.ts';

// P-L-U-M on a telephone's keys. Stored notebooks belong to one address and port, so the usual
// port of other tools would mix them with other pages' data.
const PORT = 7586;
const LOOPBACK = '127.0.0.1';
const SOURCES = fileURLToPath(new URL('src', import.meta.url));

const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types lit-html backplumb backplumb-paste',
].join('; ');

/** Gives the file of the build that a module goes into. */
function fileNames() {
  const reached = new Map<string, ReadonlySet<string>>();
  /** All that a module needs before it runs. */
  function needs(path: string, modules: ModulesOfBuild): ReadonlySet<string> {
    const known = reached.get(path);
    if (known) return known;
    const all = new Set<string>();
    const waiting = [normalizePath(join(SOURCES, path))];
    for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
      if (all.has(id)) continue;
      all.add(id);
      waiting.push(...(modules.getModuleInfo(id)?.importedIds ?? []));
    }
    reached.set(path, all);
    return all;
  }

  // A packer finds less to save in many small files; a thread has no more to fetch than it runs.
  return (id: string, modules: ModulesOfBuild): string | null => {
    const isFor = (path: string): boolean => needs(path, modules).has(id);
    // It listens as soon as it runs, which only a thread may have it do.
    if (id.endsWith('-thread.ts')) return null;
    if (isFor('storage/writing-thread.ts')) return 'writing';
    if (isFor('intake/reading-thread.ts')) return isFor('index.html') ? 'ground' : 'intake';
    if (isFor('index.html')) return 'page';
    return isFor('worksheet/index.ts') ? 'engine' : 'job';
  };
}

interface ModulesOfBuild {
  readonly getModuleInfo: (id: string) => { readonly importedIds: readonly string[] } | null;
}

export default defineConfig(async ({ mode }) => {
  if (mode === 'cli') return commandLine();
  const testing = mode === 'test';
  return {
    root: testing ? '.' : 'src',
    clearScreen: false,
    plugins: [
      sheetsAsData(),
      compactTemplates(),
      textsAsData(),
      threads(),
      contentPolicy(),
      licences(),
      serviceWorker(),
      addressLine(),
    ],
    build: {
      target: 'es2022',
      outDir: '../dist',
      emptyOutDir: true,
      // A file of its own for everything: the content policy allows no `data:` font or script.
      assetsInlineLimit: 0,
      // Everything comes from this machine, so a list of what to fetch ahead is more script than it saves.
      modulePreload: false,
      rolldownOptions: {
        output: {
          codeSplitting: { includeDependenciesRecursively: false, groups: [{ name: fileNames() }] },
        },
      },
    },
    // At the address of the built page its service worker would answer, with what was built before.
    server: { host: LOOPBACK, port: PORT + 100 },
    preview: {
      host: LOOPBACK,
      port: PORT,
      cors: false,
      open: hasBrowser(),
      headers: {
        'Content-Security-Policy': `${CONTENT_POLICY}; frame-ancestors 'none'`,
        'Cross-Origin-Opener-Policy': 'same-origin',
        'Referrer-Policy': 'no-referrer',
        'X-Content-Type-Options': 'nosniff',
      },
    },
    ...(testing ? (await import('./tests/projects.ts')).testSettings() : {}),
  };
});

/** The whole command line as one file for `start-cli.mjs`. It stands among the packages, so that it goes with them. */
function commandLine(): UserConfig {
  return {
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: 'src/cli.ts',
      target: 'node20',
      outDir: 'node_modules/.cache/backplumb',
      emptyOutDir: true,
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'cli.mjs' } },
    },
  };
}

/**
 * Gives the addresses of the threads. They are built with the page, not beside it as bundles of their own, so that they
 * share what they are made of and a browser fetches it once.
 */
function threads(): Plugin {
  const sources = new Map([
    ['virtual:reading-thread', 'src/intake/reading-thread.ts'],
    ['virtual:writing-thread', 'src/storage/writing-thread.ts'],
  ]);
  let isBuild = false;
  return {
    name: 'threads',
    configResolved: ({ command }) => {
      isBuild = command === 'build';
    },
    resolveId: (id) => (sources.has(id) ? `\0${id}` : undefined),
    load(id) {
      const source = id.startsWith('\0') ? sources.get(id.slice(1)) : undefined;
      if (source === undefined) return undefined;
      const file = fileURLToPath(new URL(source, import.meta.url));
      if (!isBuild) return `export const address = ${JSON.stringify(`/@fs${file}`)};`;
      const built = this.emitFile({ type: 'chunk', id: file, name: basename(source, '.ts') });
      return `export const address = import.meta.ROLLUP_FILE_URL_${built};`;
    },
  };
}

/** Writes the content policy into the built page too, so that it holds wherever `dist` is served. */
function contentPolicy(): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: CONTENT_POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

/** Puts the licence of every package that the page is built from beside it, as those licences ask. */
function licences(): Plugin {
  const PACKAGE = /^.*\/node_modules\/((?:@[^/]+\/)?[^/]+)/;
  return {
    name: 'licences',
    apply: 'build',
    async generateBundle(_, bundle) {
      const scripts = Object.values(bundle).flatMap((file) =>
        file.type === 'chunk' ? file.moduleIds : [],
      );
      const styles = [...this.getModuleIds()].filter((id) => id.endsWith('.css'));
      const folders = new Map<string, string>();
      for (const id of [...scripts, ...styles]) {
        const [folder, name] = PACKAGE.exec(id) ?? [];
        if (folder !== undefined && name !== undefined) folders.set(name, folder);
      }
      const texts = [...folders].sort().map(([, folder]) => licenceOf(folder.replace('\0', '')));
      const source = (await Promise.all(texts)).join(`\n\n${'-'.repeat(72)}\n\n`);
      this.emitFile({ type: 'asset', fileName: 'licences.txt', source });
    },
  };
}

async function licenceOf(folder: string): Promise<string> {
  const about = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as Record<string, string>; // prettier-ignore
  const file = (await readdir(folder)).find((name) => /^licen[cs]e/i.test(name));
  if (file === undefined) throw new Error(`${folder} has no licence file.`);
  const text = await readFile(join(folder, file), 'utf8');
  return `${about['name'] ?? ''} ${about['version'] ?? ''} (${about['license'] ?? ''})\n\n${text.trim()}`;
}

/** Builds the service worker once all other files are written, with the exact list of them. */
function serviceWorker(): Plugin {
  const NAME = 'service-worker.js';
  return {
    name: 'service-worker',
    writeBundle: {
      order: 'post',
      sequential: true,
      async handler({ dir = '' }) {
        const hash = createHash('sha256');
        const files: string[] = [];
        for (const name of (await readdir(dir, { recursive: true })).sort()) {
          const path = name.replaceAll('\\', '/');
          const content = await readFile(join(dir, name)).catch(() => undefined);
          if (!content || path === NAME) continue;
          hash.update(path).update(content);
          files.push(path === 'index.html' ? '/' : `/${path}`);
        }
        await writeFile(join(dir, NAME), await builtWorker(files, hash.digest('hex').slice(0, 16)));
      },
    },
  };
}

async function builtWorker(files: readonly string[], version: string): Promise<string> {
  const result = await build({
    configFile: false,
    logLevel: 'error',
    define: { BUILT: JSON.stringify({ files, version }) },
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: 'src/offline/worker.ts', name: 'worker', formats: ['iife'] },
    },
  });
  const [output] = [result].flat();
  if (!output || !('output' in output)) throw new Error('The service worker was not built.');
  return output.output[0].code;
}

/** Says where the notebook is, in one line, once it can be opened. */
function addressLine(): Plugin {
  return {
    name: 'address-line',
    configurePreviewServer({ httpServer, config }) {
      httpServer.once('listening', () => {
        const bound = httpServer.address();
        if (bound === null || typeof bound === 'string') return;
        const address = `http://${LOOPBACK}:${String(bound.port)}/`;
        config.logger.info(`Backplumb is at ${address} (Ctrl+C stops it)`);
        if (bound.port === PORT || config.preview.port !== PORT) return;
        config.logger.warn(
          `Port ${String(PORT)} is taken, perhaps by a Backplumb that is already open. ` +
            `Notebooks kept at http://${LOOPBACK}:${String(PORT)}/ are not seen at this address.`,
        );
      });
    },
  };
}

/** Whether this machine can show a page: never in CI, and on Linux only within a desktop. */
function hasBrowser(): boolean {
  if (process.env['CI']) return false;
  if (process.platform !== 'linux') return true;
  if (!process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return false;
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return folders.some((folder) => existsSync(join(folder, 'xdg-open')));
}
