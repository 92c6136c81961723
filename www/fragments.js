// @ts-check
// Fragments of the page, as the engine wrote them.

import { morph } from '../crates/packer/node/libraries.mjs';
import { find } from './dom.js';

/** What stands in the page since it was built, and tells of the lap. */
const BUILT = new Set(['board-says', 'decide-ride', 'at-ride', 'decide-lap', 'at-lap']);

/** What the engine says of that meanwhile, while it stays as it was built. @type {Map<string, string> | null} */
let held = null;

/** @type {import('./update.js').Part} */
export function showFragments({ html }) {
  for (const [id, text] of html) {
    if (held && BUILT.has(id)) held.set(id, text);
    else replace(find(id), text);
    if (id.startsWith('value-')) tellSlider(id);
  }
}

/** Leaves the demo's first screen as it was built, with its lap ridden: the engine comes to the same once workers have ridden it. */
export function hold() {
  held = new Map();
}

/** Shows all that the engine has said meanwhile. */
export function unhold() {
  const html = [...(held ?? [])];
  held = null;
  for (const [id, text] of html) replace(find(id), text);
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
  if (html === '' && !element.hasChildNodes()) return;
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
