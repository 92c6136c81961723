// @ts-check
// Rows of links or buttons that are one stop of the Tab key: the arrow keys go along them.

import { around } from './dom.js';

const ROWS = '[role=toolbar], [data-roving]';

export function rove() {
  document.addEventListener('keydown', step);
  document.addEventListener('focusin', (event) => {
    const row = around(event, ROWS);
    if (row && event.target instanceof HTMLElement && itemsOf(row).includes(event.target)) stopAt(row, event.target);
  });
}

/**
 * @param {HTMLElement} row
 * @returns {HTMLElement[]}
 */
const itemsOf = (row) => [
  .../** @type {NodeListOf<HTMLElement>} */ (row.querySelectorAll(':scope > :is(a, button):not([hidden])')),
];

/**
 * Makes the first of a row its stop, where that has come or gone.
 * @param {HTMLElement} row
 */
export const stopAtFirst = (row) => stopAt(row, itemsOf(row)[0]);

/**
 * @param {HTMLElement} row
 * @param {HTMLElement} item
 */
function stopAt(row, item) {
  for (const other of itemsOf(row)) other.tabIndex = other === item ? 0 : -1;
}

/** @param {KeyboardEvent} event */
function step(event) {
  const row = around(event, ROWS);
  const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  if (!row || !by || !(event.target instanceof HTMLElement)) return;
  const items = itemsOf(row).filter((item) => !(item instanceof HTMLButtonElement && item.disabled));
  const here = items.indexOf(event.target);
  if (here < 0) return;
  event.preventDefault();
  items[(here + by + items.length) % items.length].focus();
}
