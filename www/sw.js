// The build writes VERSION, which is another one once any file is, and FILES above this line.

// Copies of the page in other folders of the same server have caches of their own.
const OWN = `remount ${self.registration.scope} `;
const CACHE = OWN + VERSION;
/** This version and the one before it, which windows may still show. */
const KEPT = 2;

self.addEventListener('install', (event) => {
  event.waitUntil(store().then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(dropOldCaches().then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET') event.respondWith(answer(event.request));
});

async function store() {
  const cache = await caches.open(CACHE);
  // 'reload' passes by the browser's HTTP cache, which may still hold files of the version before.
  await cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })));
}

/** Caches of this copy of the page, the newest last. */
async function ownCaches() {
  const names = await caches.keys();
  return [...names.filter((name) => name.startsWith(OWN) && name !== CACHE), CACHE];
}

async function dropOldCaches() {
  const old = (await ownCaches()).slice(0, -KEPT);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function answer(request) {
  for (const name of (await ownCaches()).reverse()) {
    const cache = await caches.open(name);
    const kept = await cache.match(request, { ignoreSearch: true });
    if (kept) return kept;
  }
  if (request.mode !== 'navigate') return fetch(request);
  return fetch(request).catch(async () => (await caches.open(CACHE)).match('./'));
}
