// Keeps one whole version of the app on the phone. VERSION and FILES stand before this by the server.
// What is entered lies in IndexedDB, which nothing here touches: a new version can lose no entry.
const CACHE = 'dock-' + VERSION;

self.addEventListener('install', event => {
  event.waitUntil(caches.open(CACHE).then(cache => cache.addAll(FILES)));
});

self.addEventListener('activate', event => {
  event.waitUntil((async () => {
    for (const name of await caches.keys()) if (name.startsWith('dock-') && name !== CACHE) await caches.delete(name);
    await self.clients.claim();
  })());
});

// The page asks for the new version when nothing is being typed.
self.addEventListener('message', event => {
  if (event.data === 'take-over') self.skipWaiting();
});

self.addEventListener('fetch', event => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.startsWith('/dock/api/')) return;
  if (event.request.mode === 'navigate') {
    if (url.pathname === '/dock' || url.pathname.startsWith('/dock/')) event.respondWith(kept('/dock/', event.request));
  } else if (url.pathname.startsWith('/a/') || url.pathname === '/dock/texts.json' || url.pathname === '/dock/manifest.webmanifest') {
    event.respondWith(kept(event.request, event.request));
  }
});

async function kept(key, request) {
  const cache = await caches.open(CACHE);
  if (VERSION === 'dev') {
    // Whoever writes the app wants what stands on the disk now.
    try { return await fetch(request); } catch { return (await cache.match(key)) ?? Response.error(); }
  }
  return (await cache.match(key)) ?? (await caches.match(key)) ?? fetch(request);
}
