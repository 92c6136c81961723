// @ts-check
// The bench's link handed on: sent by the system, copied, or shown as a QR code.

import { address, home } from './address.js';
import { find } from './dom.js';
import * as engine from './engine.js';

export function offerLink() {
  const said = find('shared');
  if (canSend()) button().textContent = String(said.dataset.share);
  find('code').addEventListener('toggle', drawCode);
}

const button = () => /** @type {HTMLElement} */ (document.querySelector('[data-act=share]'));
const canSend = () => Boolean(home() && navigator.share);

export async function share() {
  if (!canSend()) return copyLink();
  find('code').hidden = false;
  try {
    await navigator.share({ title: document.title, url: address() });
  } catch (problem) {
    // Whoever closes the system's list wants nothing else.
    if (/** @type {Error} */ (problem).name !== 'AbortError') await copyLink();
  }
}

async function copyLink() {
  const said = find('shared');
  const { copied, refused, file } = said.dataset;
  find('code').hidden = !home();
  try {
    await navigator.clipboard.writeText(address());
    said.textContent = String(home() ? copied : file);
  } catch {
    said.textContent = String(refused);
  }
}

/**
 * The code follows the bench while it is shown.
 * @type {import('./update.js').Part}
 */
export function showCode({ link }) {
  if (link !== null) drawCode();
}

function drawCode() {
  const { open } = /** @type {HTMLDetailsElement} */ (find('code'));
  if (open) find('link-code').innerHTML = engine.codeOf(address(), false);
}
