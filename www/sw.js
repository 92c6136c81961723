// The build writes CACHE, named after the content it holds, and FILES above this line.

const PREFIX = 'remount-';

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

async function dropOldCaches() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true });
  if (kept) return kept;
  if (request.mode !== 'navigate') return fetch(request);
  return fetch(request).catch(() => cache.match('./'));
}
