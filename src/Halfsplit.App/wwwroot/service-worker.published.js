// Keeps the whole app on the device: everything of one version in one cache, filled before it is used.

self.importScripts('./service-worker-assets.js');

const prefix = 'halfsplit-app-';
const cacheName = prefix + self.assetsManifest.version;
const wanted = [/\.dll$/, /\.wasm$/, /\.js$/, /\.json$/, /\.html$/, /\.css$/, /\.svg$/, /\.png$/, /\.webmanifest$/, /\.dat$/, /\.blat$/];
const unwanted = [/^service-worker/];

self.addEventListener('install', event => event.waitUntil((async () => {
  const assets = self.assetsManifest.assets
    .filter(asset => wanted.some(pattern => pattern.test(asset.url)) && !unwanted.some(pattern => pattern.test(asset.url)))
    // The hash makes sure that a cache never mixes two versions; "no-cache" asks anew but need not fetch what is the same.
    .map(asset => new Request(asset.url, { integrity: asset.hash, cache: 'no-cache' }));
  await (await caches.open(cacheName)).addAll(assets);
})()));

self.addEventListener('activate', event => event.waitUntil((async () => {
  const old = (await caches.keys()).filter(name => name.startsWith(prefix) && name !== cacheName);
  await Promise.all(old.map(name => caches.delete(name)));
  // The first visit is served by this worker from now on, without a reload.
  await self.clients.claim();
})()));

// A new version waits until the page says so.
self.addEventListener('message', event => {
  if (event.data === 'take-over') self.skipWaiting();
});

self.addEventListener('fetch', event => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith((async () => {
    const cache = await caches.open(cacheName);
    const kept = await cache.match(request.mode === 'navigate' ? 'index.html' : request, { ignoreSearch: true });
    return kept ?? fetch(request);
  })());
});
