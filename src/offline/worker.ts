// The service worker: a script of its own, built after the page, that answers the page's requests from this device.
// It keeps whole versions only, and never puts a new one in the place of a page that is open.

/** What the build writes in: the path of every built file, the page itself as `/`, and what tells them from any other's. */
declare const BUILT: { readonly files: readonly string[]; readonly version: string };

const worker = globalThis as unknown as ServiceWorkerGlobalScope;

const { files, version } = BUILT;
const OURS = 'backplumb-';
const CACHE = OURS + version;
const PAGE = '/';
// The name of such a file changes with what is in it.
const NEVER_CHANGES = '/assets/';

worker.addEventListener('install', (event) => {
  event.waitUntil(keepFiles());
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});

worker.addEventListener('message', ({ data, source }) => {
  // It never pushes the worker before it aside: that one shows the latest page too, and goes when the last window closes.
  if (!files.includes(String(data))) source?.postMessage('newer');
});

worker.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  const { origin, pathname } = new URL(url);
  if (method !== 'GET' || origin !== worker.location.origin) return;
  event.respondWith(answer(event.request, pathname === '/index.html' ? PAGE : pathname));
});

async function keepFiles(): Promise<void> {
  const answers = await Promise.all(
    files.map(async (path): Promise<[string, Response]> => [path, await fetched(path)]),
  );
  // A version that was here before goes to the end of the line, where the latest is looked for.
  await caches.delete(CACHE);
  const cache = await caches.open(CACHE);
  // The page goes last, because a version that has it is taken for whole.
  for (const isPage of [false, true]) {
    const now = answers.filter(([path]) => (path === PAGE) === isPage);
    await Promise.all(now.map(([path, response]) => cache.put(path, response)));
  }
}

async function fetched(path: string): Promise<Response> {
  const isFixed = path.startsWith(NEVER_CHANGES);
  const kept = isFixed ? await fromVersions(path) : undefined;
  if (kept) return kept;
  const response = await fetch(path, { cache: isFixed ? 'default' : 'reload' });
  const isHtml = response.headers.get('content-type')?.startsWith('text/html') ?? false;
  // A guest network's sign-in page, or a server that answers every path with the page, is none of our files.
  if (!response.ok || response.redirected || isHtml !== (path === PAGE))
    throw new Error(`${path} was not fetched.`);
  return response;
}

async function takeOver(): Promise<void> {
  const versions = await keptVersions();
  // The one before stays: a window that still shows it fetches the rest of itself from there.
  const old = versions.slice(0, Math.max(0, versions.indexOf(CACHE) - 1));
  await Promise.all(old.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function answer(request: Request, path: string): Promise<Response> {
  return (await fromVersions(path)) ?? fetch(request);
}

/** A file from the latest whole version that has it. */
async function fromVersions(path: string): Promise<Response | undefined> {
  for (const name of (await keptVersions()).reverse()) {
    const cache = await caches.open(name);
    if (await cache.match(PAGE)) {
      const response = await cache.match(path, { ignoreVary: true });
      if (response) return response;
    }
  }
  return undefined;
}

/** The caches of all versions, the oldest first. */
async function keptVersions(): Promise<string[]> {
  return (await caches.keys()).filter((name) => name.startsWith(OURS));
}

export {};
