// The service worker of the phone page: a plain script, for not every browser takes a worker that is a module. The
// server puts two constants before it.

/** The worker's own global object by its true type. */
declare const worker: ServiceWorkerGlobalScope;

/** The files that the page needs, and a name for exactly this set of them. */
declare const SHELL: { readonly version: string; readonly files: readonly string[] };

const PAGE = '/phone';
const CACHE = `tackleroom-phone-${SHELL.version}`;

worker.addEventListener('install', (event) => event.waitUntil(fetchShell()));
worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  const isOurs = request.method === 'GET' && origin === worker.location.origin;
  if (isOurs && (pathname === PAGE || SHELL.files.includes(pathname))) event.respondWith(fromShell(pathname));
});

/** All or nothing: a set with a file missing, or with the sign-in page in place of one, is not taken. */
async function fetchShell(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(
    [PAGE, ...SHELL.files].map(async (path) => {
      const answer = await fetch(path, { cache: 'reload', redirect: 'error' });
      if (!answer.ok) throw new Error(`${path} answered ${answer.status}`);
      await cache.put(path, answer);
    }),
  );
  await worker.skipWaiting();
}

async function takeOver(): Promise<void> {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith('tackleroom-phone-') && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/** The files of one build belong together: what is cached goes first, and the network only where the cache was cleared. */
async function fromShell(path: string): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(path)) ?? fetch(path);
}
