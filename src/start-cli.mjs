import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

// Starts the command line. `npm ci` leaves all of it in one file, which starts in a fifth of the
// time; where a source is newer than that file, or it is not there, the sources run as they stand.

const home = fileURLToPath(new URL('..', import.meta.url));
const bundle = join(home, 'node_modules', '.cache', 'backplumb', 'cli.mjs');
const sources = ['src', 'worksheets', 'package-lock.json', 'vite.config.ts'];

if (isCurrent()) await import(pathToFileURL(bundle).href);
else {
  const { register } = await import('tsx/esm/api');
  register();
  await import(new URL('cli.ts', import.meta.url).href);
}

function isCurrent() {
  const made = statSync(bundle, { throwIfNoEntry: false })?.mtimeMs;
  return made !== undefined && sources.every((name) => isOlder(join(home, name), made));
}

// A folder is newer once something in it was added, renamed or removed.
function isOlder(path, made) {
  const found = statSync(path);
  if (found.mtimeMs > made) return false;
  return !found.isDirectory() || readdirSync(path).every((name) => isOlder(join(path, name), made));
}
