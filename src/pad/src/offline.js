// Beside the page on a web host: keeps the page on the device, so that it opens without a network.
const KEPT = 'fairfoot';
addEventListener('install', (event) => event.waitUntil(skipWaiting()));
addEventListener('activate', (event) => event.waitUntil(clients.claim()));
addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  event.respondWith(
    caches.open(KEPT).then(async (kept) => {
      try {
        const fresh = await fetch(event.request);
        if (fresh.ok) await kept.put(event.request, fresh.clone());
        return fresh;
      } catch (error) {
        const old = await kept.match(event.request, { ignoreSearch: true });
        if (old) return old;
        throw error;
      }
    }),
  );
});
addEventListener('message', (event) => {
  // The page that is open when the worker comes is kept too.
  event.waitUntil(caches.open(KEPT).then((kept) => kept.add(event.data)));
});
