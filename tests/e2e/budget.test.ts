import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, inject, it } from 'vitest';

const KB = 1000;
// The first screen is the start; an open job fetches the rest.
const FIRST_SCREEN = 100 * KB;
const WHOLE_APP = 200 * KB;
// Sheets, markup, styles and words are fetched as data: what leaves the script must not grow there unseen.
const WITH_DATA = 300 * KB;

describe('the built scripts, as a browser fetches them', () => {
  it(`need no more than ${String(FIRST_SCREEN / KB)} KB for the first screen`, async () => {
    const page = await readFile(join(inject('built'), 'index.html'), 'utf8');
    const first = [...page.matchAll(/(?:src|href)="\/?([^"]+\.js)"/g)].map(
      ([, path]) => path ?? '',
    );
    expect(first.length).toBeGreaterThan(0);
    expect(await packedSize(await withStaticImports(first))).toBeLessThanOrEqual(FIRST_SCREEN);
  });

  it(`need no more than ${String(WHOLE_APP / KB)} KB in all`, async () => {
    const all = await readdir(inject('built'), { recursive: true });
    const scripts = all.filter((path) => path.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(0);
    expect(await packedSize(scripts)).toBeLessThanOrEqual(WHOLE_APP);
  });

  it(`need no more than ${String(WITH_DATA / KB)} KB with the data they fetch`, async () => {
    const all = await readdir(inject('built'), { recursive: true });
    const data = all.filter((path) => /\.js(?:on)?$/.test(path));
    expect(data.some((path) => /\bpage-[\w-]+\.json$/.test(path))).toBe(true);
    expect(await packedSize(data)).toBeLessThanOrEqual(WITH_DATA);
  });
});

async function withStaticImports(first: readonly string[]): Promise<string[]> {
  const seen = new Set<string>();
  const waiting = [...first];
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (seen.has(path)) continue;
    seen.add(path);
    const text = await readFile(join(inject('built'), path), 'utf8');
    // `import(...)` is fetched later; `import ... from "./x.js"` and `import "./x.js"` are not.
    for (const [, name] of text.matchAll(/\b(?:from|import)\s*["']\.\/([^"']+\.js)["']/g))
      waiting.push(join(path, '..', name ?? ''));
  }
  return [...seen];
}

async function packedSize(paths: readonly string[]): Promise<number> {
  const files = await Promise.all(paths.map((path) => readFile(join(inject('built'), path))));
  return files.reduce((sum, file) => sum + gzipSync(file, { level: 9 }).length, 0);
}
