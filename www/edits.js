// @ts-check
// The fields that decide a section, changed beside its answer: a button with a value becomes the field while that is changed.

import { all, around, field } from './dom.js';
import { enter } from './fields.js';

/** A field that is left stays for so long, milliseconds. */
const STAYS = 300;

export function offerEdits() {
  document.addEventListener('click', (event) => {
    const button = around(event, '[data-edits]');
    if (button) edit(button, String(button.dataset.edits));
  });
}

/**
 * @param {HTMLElement} button
 * @param {string} key
 */
function edit(button, key) {
  const row = /** @type {HTMLElement} */ (button.parentElement);
  for (const other of all('.edit')) other.remove();
  const entry = field(key);
  const copy = /** @type {HTMLInputElement} */ (entry.cloneNode(true));
  for (const name of ['id', 'data-field', 'aria-describedby']) copy.removeAttribute(name);
  copy.setAttribute('aria-label', String(button.firstElementChild?.textContent));
  copy.className = 'edit';
  copy.value = entry.value;
  copy.addEventListener('input', () => {
    entry.value = copy.value;
    enter(key, copy.value);
  });
  copy.addEventListener('keydown', (event) => {
    if (!['Enter', 'Escape'].includes(event.key)) return;
    event.preventDefault();
    // The row was written anew with the value.
    /** @type {HTMLElement | null} */ (row.querySelector(`[data-edits=${key}]`))?.focus();
    copy.remove();
  });
  // Not at once: what is being pressed would move away from beneath the finger.
  copy.addEventListener('blur', () => setTimeout(() => copy.remove(), STAYS), { once: true });
  row.after(copy);
  copy.focus();
  if (copy.select) copy.select();
}
