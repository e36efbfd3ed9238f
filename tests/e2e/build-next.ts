import { build } from 'vite';

// Builds the app as its next version would be: with one more line in its main script.
const outDir = process.argv[process.argv.indexOf('--outDir') + 1];
if (outDir === undefined) throw new Error('Say where to, with --outDir.');
await build({
  logLevel: 'error',
  build: { outDir },
  plugins: [
    {
      name: 'next-version',
      enforce: 'pre',
      transform: (code, id) =>
        id.endsWith('/src/main.ts')
          ? `${code}\ndocument.documentElement.dataset.version = 'next';`
          : undefined,
    },
  ],
});
