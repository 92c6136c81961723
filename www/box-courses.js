// @ts-check
// Kept courses that count, each by its weight, when it is asked what of the box is least regretted.

import { rowsOf } from './course.js';
import { all, find } from './dom.js';
import { kept } from './storage.js';

const rows = () => [...all('#box-courses [data-course]')];

/**
 * @param {Element} row
 * @param {'input' | 'select' | 'span'} kind
 */
const part = (row, kind) => /** @type {HTMLInputElement} */ (row.querySelector(kind));

/** Names of those that are ticked, with their weights. @returns {[string, number][]} */
export const ticked = () =>
  rows()
    .filter((row) => part(row, 'input').checked)
    .map((row) => [String(row.dataset.course), Number(part(row, 'select').value)]);

/**
 * The same with what they are in place of their names.
 * @param {[string, number][]} courses
 * @returns {[string, number][]}
 */
export const ridden = (courses) => courses.map(([name, weight]) => [rowsOf(kept(name) ?? '') ?? '', weight]);

/**
 * Lists what is kept, with what was ticked before.
 * @param {string[]} names
 */
export function listCourses(names) {
  const list = find('box-courses');
  const { content } = /** @type {HTMLTemplateElement} */ (list.querySelector('template'));
  const chosen = new Map(ticked());
  for (const row of rows()) row.remove();
  for (const name of names) {
    const row = /** @type {HTMLElement} */ (content.firstElementChild?.cloneNode(true));
    row.dataset.course = name;
    part(row, 'span').textContent = name;
    part(row, 'input').checked = chosen.has(name);
    if (chosen.has(name)) part(row, 'select').value = String(chosen.get(name));
    list.append(row);
  }
  list.hidden = names.length === 0;
}
