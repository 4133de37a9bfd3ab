// Keeps one whole version of the app on the phone. VERSION and FILES stand before this by the server.
// What is entered lies in IndexedDB, which nothing here touches: a new version can lose no entry.
const CACHE = 'dock-' + VERSION;
const PAGE = '/dock/?v=' + VERSION;
const MANIFEST = '/dock/manifest.webmanifest';

self.addEventListener('install', event => {
  event.waitUntil((async () => {
    // All of them before any is kept. While the office is renewed, one may come of another version, and half an app would be none: it is tried again later.
    const answers = await Promise.all(FILES.map(async file => {
      const answer = await fetch(file);
      await check(file, answer.clone());
      return answer;
    }));
    const cache = await caches.open(CACHE);
    await Promise.all(answers.map((answer, n) => cache.put(FILES[n], answer)));
  })());
});

/** Whether it is the file of this very version, and no sign-in page of a network. */
async function check(file, answer) {
  const page = file === PAGE;
  const html = (answer.headers.get('Content-Type') ?? '').startsWith('text/html');
  if (!answer.ok || answer.redirected || html !== page) throw new Error(`${file}: ${answer.status}`);
  if (page && !(await answer.text()).includes(`data-version="${VERSION}"`)) throw new Error('a page of another version');
}

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
    if (url.pathname === '/dock' || url.pathname.startsWith('/dock/')) event.respondWith(kept(PAGE, event.request));
  } else if (url.pathname === MANIFEST) {
    event.respondWith(kept(MANIFEST + '?v=' + VERSION, event.request));
  } else if (url.pathname.startsWith('/a/') || url.pathname === '/dock/texts.json') {
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
