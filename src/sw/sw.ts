// The service worker: a table of what is kept, and one message. All that the build made is kept on the first visit, the
// decoder's wasm too; data never passes through here. A new version waits until a page says that nobody is in a task.

import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { takePush } from './push.ts';

declare const self: ServiceWorkerGlobalScope & {
  readonly __WB_MANIFEST: { readonly url: string; readonly revision: string | null }[];
};

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();

// Addresses inside the app answer with the app; what the server answers itself is left alone.
registerRoute(
  new NavigationRoute(createHandlerBoundToURL('index.html'), {
    denylist: [/^\/api\//, /^\/ca/, /^\/export/, /^\/demo\//, /^\/health/, /^\/metrics/],
  }),
);

takePush();

self.addEventListener('message', (event) => {
  if ((event.data as { type?: string } | null)?.type === 'SKIP_WAITING') void self.skipWaiting();
});

// Pages of the very first visit are served by the worker at once: offline works without a second visit.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
