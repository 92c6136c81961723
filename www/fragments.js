// @ts-check
// Fragments of the page, as the engine wrote them.

import { morph } from '../crates/packer/node/libraries.mjs';
import { find } from './dom.js';

/** @type {import('./update.js').Part} */
export function showFragments({ html }) {
  for (const [id, text] of html) {
    replace(find(id), text);
    if (id.startsWith('value-')) tellSlider(id);
  }
}

/**
 * A slider is read out as the words beside it, not as its bare number.
 * @param {string} id
 */
function tellSlider(id) {
  find(id.slice('value-'.length)).setAttribute('aria-valuetext', String(find(id).textContent));
}

/**
 * Brings content up to date, touching only what differs: folds, focus, scrolling and marked text stay as they are.
 * @param {HTMLElement} element
 * @param {string} html
 */
function replace(element, html) {
  const next = /** @type {HTMLElement} */ (element.cloneNode());
  next.innerHTML = html;
  if (!element.hasChildNodes()) return element.replaceChildren(...next.childNodes);
  morph(element, next, { childrenOnly: true, getNodeKey: keyOf, onBeforeElUpdated: keepFolds });
}

/**
 * What an element is known by wherever it stands.
 * @param {Node} node
 */
const keyOf = (node) => (node instanceof Element ? node.getAttribute('data-key') || node.id : '');

/**
 * @param {HTMLElement} was
 * @param {HTMLElement} will
 */
function keepFolds(was, will) {
  if (was.isEqualNode(will)) return false;
  if (was instanceof HTMLDetailsElement) will.toggleAttribute('open', was.open);
  return true;
}
