import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { basename, delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defineConfig, type Plugin, type Rollup, type UserConfig } from 'vite';

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

// A packer finds less to save in many small files. What knows no page stays apart, for the thread that reads files.
const FEW_FILES = {
  includeDependenciesRecursively: false,
  groups: [
    { name: 'ground', test: /\/src\/(?:units|csv|notebook|output)\/|\/papaparse\// },
    { name: 'intake', test: /\/src\/intake\/(?!reading-thread)/ },
    // What most elements share, each too small for a file of its own.
    {
      name: 'shared',
      test: /\/src\/ui\/(?:events|waiting|fraction|unit-face|download|follow-book|turns|tokens|panel-dialog-styles|panel-styles|field-styles|theme|dots|print\/(?:index|print-page|supplier-page|supplier-list|page-style|page-parts|cautions))\.ts|virtual:styles|\/node_modules\/(?:lit|@lit|lit-html|lit-element)|decorate\.js/,
    },
    // Panels that stand over the page, and the pages of paper.
    {
      name: 'panels',
      test: /\/src\/ui\/(?:what-if|remedies|keeping\/(?:history|restore|room|panels|give-file|kept-jobs|keeping-bar))[\w-]*\.ts/,
    },
    {
      name: 'engine',
      test: /\/src\/(?:graph|formula|trade|worksheet)\/|\/worksheets\/|\/mathjs\/|virtual:rules/,
    },
  ],
};

export default defineConfig(async ({ mode }) => {
  if (mode === 'cli') return commandLine();
  const testing = mode === 'test';
  return {
    root: testing ? '.' : 'src',
    clearScreen: false,
    plugins: [
      sheetsAsData(),
      ...textsAsData(),
      earlyStyles(),
      compactTemplates(),
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
      rolldownOptions: { output: { codeSplitting: FEW_FILES } },
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

/** Keeps the worksheets the data they are: the page fetches them as JSON instead of running them as script. */
function sheetsAsData(): Plugin {
  return {
    name: 'sheets-as-data',
    apply: 'build',
    enforce: 'pre',
    load: {
      filter: { id: /\/worksheets\/\w+\.json$/ },
      async handler(id) {
        const sheet: unknown = JSON.parse(await readFile(id, 'utf8'));
        return fetchedData(this, basename(id), sheet);
      },
    },
  };
}

/** A module that is data beside the script: the page waits for it where it would have run it. */
function fetchedData(build: Rollup.PluginContext, name: string, data: unknown) {
  const file = build.emitFile({ type: 'asset', name, source: JSON.stringify(data) });
  const code = `export default await (await fetch(import.meta.ROLLUP_FILE_URL_${file})).json();`;
  return { code, moduleType: 'js' };
}

/** Texts that stand in the sources where they belong, and are no script. */
const TEXTS: readonly TextsOfBuild[] = [
  {
    name: 'styles',
    files: /\/src\/ui\/.*\.ts$/,
    each: /\bcss`([^`$\\]*)`/g,
    // As lit would have been given them: the parts of a template that has one part.
    kept: (text) => [compactStyles(text)],
    used: (place) => `css(${place})`,
  },
  {
    name: 'rules',
    files: /\/src\/trade\/catalog-\w+\.ts$/,
    each: /(?<=\b(?:meaning|equation|source|caution):\s+|^const [A-Z_]+ =\s+)'([^'\\\n]+)'/gm,
    kept: (text) => text,
    used: (place) => place,
  },
];

interface TextsOfBuild {
  readonly name: string;
  /** The sources that have such texts. */
  readonly files: RegExp;
  /** Each such text in a source. */
  readonly each: RegExp;
  readonly kept: (text: string) => unknown;
  /** What stands in its place. */
  readonly used: (place: string) => string;
}

/** Puts texts of one sort into a file that the page fetches as JSON, and their places in it into the script. */
function textsAsData(): Plugin[] {
  return TEXTS.map(({ name, files, each, kept, used }) => {
    const module = `virtual:${name}`;
    const places = new Map<string, number>();
    return {
      name: `${name}-as-data`,
      apply: 'build',
      enforce: 'pre',
      // In the order of their files, so that the same sources make the same build.
      async buildStart() {
        const paths = await readdir(SOURCES, { recursive: true });
        for (const path of paths.map((path) => join(SOURCES, path)).sort())
          if (files.test(path.replaceAll('\\', '/')))
            for (const [, text = ''] of (await readFile(path, 'utf8')).matchAll(each))
              if (!places.has(text)) places.set(text, places.size);
      },
      resolveId: (id) => (id === module ? `\0${module}` : undefined),
      load(id) {
        if (id !== `\0${module}`) return undefined;
        const all = [...places.keys()].map(kept);
        return fetchedData(this, `${name}.json`, all);
      },
      transform: {
        filter: { id: files },
        handler(code) {
          const script = code.replaceAll(each, (_, text: string) =>
            used(`texts[${String(places.get(text))}]`),
          );
          if (script === code) return undefined;
          return { code: `import texts from '${module}';${script}`, map: null };
        },
      },
    };
  });
}

/** Has the styles fetched beside the script, and not once it runs. */
function earlyStyles(): Plugin {
  return {
    name: 'early-styles',
    apply: 'build',
    transformIndexHtml: {
      // Before that, the files have no names.
      order: 'post',
      handler: (_, { bundle = {} }) =>
        Object.keys(bundle)
          .filter((path) => /\bstyles-[\w-]+\.json$/.test(path))
          .map((path) => ({
            tag: 'link',
            attrs: { rel: 'preload', as: 'fetch', crossorigin: '', href: `/${path}` },
          })),
    },
  };
}

/**
 * Takes the indentation out of the elements' templates, which the minifier keeps as text. To HTML one line end is as
 * good as a line end and ten spaces.
 */
function compactTemplates(): Plugin {
  return {
    name: 'compact-templates',
    apply: 'build',
    enforce: 'pre',
    transform: {
      filter: { id: /\/src\/ui\/.*\.ts$/ },
      handler: (code) => ({ code: code.replaceAll(/\n[ \t]+/g, '\n'), map: null }),
    },
  };
}

/** Leaves the needed spaces of styles, and no comments. */
function compactStyles(styles: string): string {
  return styles
    .trim()
    .replaceAll(/\/\*.*?\*\//gs, '')
    .replaceAll(/\s+/g, ' ')
    .replaceAll(/ ?([{};,]) ?/g, '$1')
    .replaceAll(': ', ':')
    .replaceAll(';}', '}');
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
