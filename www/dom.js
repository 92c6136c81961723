// @ts-check
// Elements of the page, as the types know them.

/**
 * The element of this id, which `index.html` or a form of the engine is sure to hold.
 * @param {string} id
 */
export const find = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

/**
 * The field with this key. Lists and text areas have what is used here of an input, too.
 * @param {string} key
 */
export const field = (key) => /** @type {HTMLInputElement} */ (document.getElementById(key));

/**
 * All elements that match.
 * @param {string} selector
 */
export const all = (selector) => /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll(selector));

/**
 * The element that matches where an event happened, or the nearest round it.
 * @param {Event} event
 * @param {string} selector
 */
export function around({ target }, selector) {
  return target instanceof Element ? /** @type {HTMLElement | null} */ (target.closest(selector)) : null;
}
