// @ts-check
// Rows that show themselves in a picture when pointed at or stepped to with the arrow keys.

import { around } from './dom.js';
import { look } from './fields.js';

export function followRows() {
  document.addEventListener('pointerover', lookAtRow);
  document.addEventListener('focusin', lookAtRow);
  document.addEventListener('keydown', step);
}

/** @param {Event} event */
function lookAtRow(event) {
  const row = around(event, '[data-puts]');
  if (row) look(String(row.dataset.puts), String(row.dataset.value));
}

/** @param {KeyboardEvent} event */
function step(event) {
  const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!by) return;
  const rows = rowsAround(event);
  if (rows.length === 0) return;
  event.preventDefault();
  const here = rows.indexOf(/** @type {HTMLElement} */ (event.target));
  rows[Math.max(0, Math.min(rows.length - 1, here + (here < 0 ? 1 : by)))].focus();
}

/**
 * The rows of the table that a key was pressed in.
 * @param {Event} event
 * @returns {HTMLElement[]}
 */
function rowsAround(event) {
  const table = around(event, '.scroll, [data-puts]')?.closest('.scroll');
  return [...(table?.querySelectorAll('[data-puts]') ?? [])].map((row) => /** @type {HTMLElement} */ (row));
}
