// @ts-check
// The lists of ready-made values: they are put in once the first screen is painted, and what was picked last stands first.

import { all, around } from './dom.js';
import { keepUsed, used } from './storage.js';

const MOST = 5;

export function fillLists() {
  for (const values of /** @type {NodeListOf<HTMLTemplateElement>} */ (all('.picks > template')))
    values.replaceWith(values.content);
}

/** Alt and the down arrow open a field's list, which is no stop of the Tab key. */
export function openByKey() {
  document.addEventListener('keydown', (event) => {
    if (event.key !== 'ArrowDown' || !event.altKey) return;
    const list = /** @type {HTMLSelectElement | null | undefined} */ (around(event, '.cell')?.querySelector('select.picks'));
    if (!list) return;
    event.preventDefault();
    list.focus();
    list.showPicker?.();
  });
}

/** A and B pick from one list. @param {string} key */
const listOf = (key) => key.replace(/-[ab]$/, '');

/** Puts what was picked last at the top of every list. */
export function showUsed() {
  for (const list of all('select[data-last]')) {
    const values = used(listOf(list.dataset.sets ?? list.id));
    list.querySelector('[data-used]')?.remove();
    if (values.length === 0) continue;
    const group = document.createElement('optgroup');
    group.dataset.used = '';
    group.label = String(list.dataset.last);
    for (const value of values) group.append(new Option(value, value));
    const first = /** @type {HTMLOptionElement | null} */ (list.querySelector('option'));
    if (first?.value) first.before(group);
    else first?.after(group);
  }
}

/**
 * Notes that a value was picked.
 * @param {string} key
 * @param {string} value
 */
export function noteUsed(key, value) {
  const list = listOf(key);
  keepUsed(list, [value, ...used(list).filter((other) => other !== value)].slice(0, MOST));
  showUsed();
}
