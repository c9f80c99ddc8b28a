/**
 * The service worker: answers the app's files from the device. A new build is fetched whole beside the running one and waits:
 * it is used from the next start on, or when the page says so, never in the middle of a job.
 */
import { type Build, pageCache } from './page-cache.ts';

declare const self: ServiceWorkerGlobalScope;
/** Put in by the build (tools/offline-files.ts). */
declare const __BUILD__: Build;

/** !!! Pages of other versions say this: DO NOT CHANGE it. */
const USE_NOW = 'use now';

const cache = pageCache(__BUILD__, {
  caches: self.caches,
  fetch: (request) => self.fetch(request),
  scope: self.registration.scope,
});

self.addEventListener('install', (event) => event.waitUntil(cache.install()));
self.addEventListener('activate', (event) => event.waitUntil(cache.clean().then(() => self.clients.claim())));
self.addEventListener('message', ({ data }) => {
  if (data === USE_NOW) void self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  if (cache.concerns(event.request)) event.respondWith(cache.answer(event.request));
});
