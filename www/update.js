// @ts-check
// An answer of the engine goes round to everything that shows a part of it.

/** @typedef {import('./engine.js').Update} Update */
/** @typedef {(update: Update) => void} Part */

/** @type {Part[]} */
const shown = [];
/** @type {Part[]} */
const changed = [];

/**
 * Parts that every answer is shown by, in this order.
 * @param {...Part} parts
 */
export const whenShown = (...parts) => shown.push(...parts);

/**
 * Parts that hear of it when the bench or the course has changed.
 * @param {...Part} parts
 */
export const whenChanged = (...parts) => changed.push(...parts);

/** @type {Part} */
export function show(update) {
  for (const part of shown) part(update);
}

/**
 * Shows an answer after which the lap may be another one.
 * @type {Part}
 */
export function change(update) {
  for (const part of changed) part(update);
  show(update);
}
