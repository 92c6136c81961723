// @ts-check
// The hosted copy stays usable without a network.

/** Registers the service worker where there is one. A browser that refuses loses nothing but that. */
export async function keepOffline() {
  if (!document.querySelector('link[rel=manifest]')) return;
  try {
    await navigator.serviceWorker?.register('sw.js');
  } catch {
    // In a sandbox even asking for it throws.
  }
}
