// @ts-check
// The hosted copy stays usable without a network.

import { find } from './dom.js';

/** Registers the service worker where there is one. A browser that refuses loses nothing but that. */
export async function keepOffline() {
  if (!document.querySelector('link[rel=manifest]')) return;
  try {
    const registration = await navigator.serviceWorker?.register('sw.js');
    registration?.addEventListener('updatefound', () => follow(registration));
  } catch {
    // In a sandbox even asking for it throws.
  }
}

/**
 * Says that another version has arrived, once it is there whole. The first one is what is already shown.
 * @param {ServiceWorkerRegistration} registration
 */
function follow({ active, installing }) {
  if (!active || !installing) return;
  const newer = find('newer');
  installing.addEventListener('statechange', () => {
    if (installing.state === 'installed') newer.textContent = String(newer.dataset.says);
  });
}
