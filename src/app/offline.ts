/** Keeps the app itself on the device, and tells when a newer one is ready. Only in a build: see src/offline. */
import { trustedScript } from './own-worker.ts';

/** !!! Service workers of other versions listen for this: DO NOT CHANGE it. */
const USE_NOW = 'use now';

/**
 * Starts it, once the page has time.
 *
 * @param onReady a newer build is complete; `use` changes over to it and loads the page again
 */
export async function startOffline(onReady: (use: () => void) => void): Promise<void> {
  if (import.meta.env.DEV || !('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  // Some browsers keep no workers for this page (a private window, a setting): then it works with a network only.
  const registration = await serviceWorker
    .register(trustedScript('service-worker.js') as URL, { updateViaCache: 'none' })
    .catch(() => undefined);
  if (registration === undefined) return;
  const tell = () => {
    const { waiting } = registration;
    // Without a controller this is the first build here, not a newer one.
    if (waiting === null || serviceWorker.controller === null) return;
    onReady(() => {
      serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
      waiting.postMessage(USE_NOW);
    });
  };
  tell();
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', tell);
  });
}
