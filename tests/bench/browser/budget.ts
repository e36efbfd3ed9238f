import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { atMost, told, type Figure } from '../figure.ts';

const KB = 1000;

/** Script sent to the browser, packed. */
export function budgetFigures(built: string): readonly Figure[] {
  const scripts = readdirSync(built, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.js'),
  );
  const page = readFileSync(join(built, 'index.html'), 'utf8');
  const first = [...page.matchAll(/(?:src|href)="\/?([^"]+\.js)"/g)].map(([, path]) => path ?? '');
  const sizes = [
    { what: 'script for the first screen', kb: packed(built, first), most: 100 },
    { what: 'script in all', kb: packed(built, scripts), most: 200 },
  ];
  const ofJob = scripts.filter((path) => /\b(job-screen|engine|opened)-/.test(path));
  const job = packed(built, [...first, ...ofJob]);
  const figures = sizes.map(({ what, kb, most }) =>
    atMost(1, kb / most, {
      part: 'open',
      what,
      size: 'gzip -9',
      found: `${kb.toFixed(1)} KB`,
      against: `budget ${String(most)} KB`,
      how: 'files of the built app; the first screen is the start, with all it imports at once. The built app’s tests hold the budget',
    }),
  );
  return [
    ...figures,
    told({
      part: 'open',
      what: 'script for an open job',
      size: 'gzip -9',
      found: `${job.toFixed(1)} KB`,
      against: `the start alone ${packed(built, first).toFixed(1)} KB`,
      how: 'the first screen, and the sheets, the engine and the shelf that it fetches beside itself',
    }),
  ];
}

function packed(built: string, paths: readonly string[]): number {
  const seen = new Set<string>();
  const waiting = [...paths];
  let bytes = 0;
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (seen.has(path)) continue;
    seen.add(path);
    const file = readFileSync(join(built, path));
    bytes += gzipSync(file, { level: 9 }).length;
    const imports = file.toString().matchAll(/\b(?:from|import)\s*["']\.\/([^"']+\.js)["']/g);
    for (const [, name] of imports) waiting.push(join(path, '..', name ?? ''));
  }
  return bytes / KB;
}
