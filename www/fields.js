// @ts-check
// The fields: what is typed into them goes to the engine once a frame, and what the engine says of them is shown.

import { all, field, find } from './dom.js';
import * as engine from './engine.js';
import { unfoldAround } from './folds.js';
import { change } from './update.js';
import { noteUsed } from './used.js';

/** What was typed since the last frame. @type {Map<string, string>} */
const typed = new Map();
let frame = 0;

/**
 * Takes a new text for a field; the page follows with the next frame.
 * @param {string} key
 * @param {string} text
 */
export function enter(key, text) {
  typed.set(key, text);
  frame ||= requestAnimationFrame(flush);
}

/** Hands over now what was typed. */
export function flush() {
  cancelAnimationFrame(frame);
  frame = 0;
  const edits = [...typed];
  typed.clear();
  if (edits.length > 0) change(engine.edit(edits));
}

/**
 * The fields that were changed before the page could hear of it, with what they hold.
 * @returns {[string, string][]}
 */
export function typedSoFar() {
  const fields = /** @type {NodeListOf<HTMLInputElement>} */ (all('input[data-field]:not([type=range])'));
  const changed = [...fields].filter(({ value, defaultValue }) => value !== defaultValue);
  return changed.map(({ id, value }) => [id, value]);
}

/** @param {[string, string][]} typed */
export function enterAgain(typed) {
  for (const [key, text] of typed) write(key, text);
}

/** What was typed is no longer wanted: another bench is opened. */
export const forgetTyped = () => typed.clear();

/**
 * Puts what is being looked at into its field; the drawing follows with the next frame.
 * @param {string} key
 * @param {string} value
 */
export function look(key, value) {
  if (field(key).value !== value) enter(key, value);
}

/**
 * Puts a ready-made value into a field, as one step for undo. It is in the field's metric unit, whichever is shown.
 * @param {string} key
 * @param {string} value
 */
export function write(key, value) {
  typed.delete(key);
  flush();
  engine.pause();
  change(engine.put(key, value));
}

/** Follows what is typed, chosen and slid. */
export function takeInput() {
  document.addEventListener('input', hear);
  document.addEventListener('pointerdown', selectWhole);
  // A slider changes with every step of a run along it, which undo takes back as one.
  document.addEventListener('change', ({ target }) => {
    if (typed.size > 0) flush();
    if (!(target instanceof HTMLInputElement && target.type === 'range')) engine.pause();
  });
}

/**
 * A first touch of a field of the first screen selects all that stands in it, so that typing replaces it.
 * @param {PointerEvent} event
 */
function selectWhole({ target }) {
  const entry = target instanceof HTMLInputElement && target.closest('.cell, .sides') ? target : null;
  if (!entry || entry === document.activeElement) return;
  entry.addEventListener('click', () => entry.select(), { once: true });
}

/** @param {Event} event */
function hear({ target }) {
  const entry = /** @type {HTMLInputElement} */ (target);
  const { field: key, sets } = entry.dataset;
  if (sets && entry.value !== '') pick(entry, sets);
  if (key) enter(key, entry.value);
}

/**
 * A value from a list goes into its field, and the list is ready for the next.
 * @param {HTMLInputElement} list
 * @param {string} key
 */
function pick(list, key) {
  noteUsed(key, list.value);
  write(key, list.value);
  list.value = '';
}

const MAY_BE_WHOLE = 600; // milliseconds

/** Keys of the fields that are marked as wrong. @type {string[]} */
let marked = [];

/** @type {import('./update.js').Part} */
export function showFields({ empty, most, values, wrong }) {
  for (const [key, meaning] of empty) sayWhileEmpty(field(key), meaning);
  for (const [key, value] of most) set(field(key), 'max', String(value));
  for (const [key, text] of values) set(field(key), 'value', text);
  for (const key of marked) if (!wrong.includes(key)) field(key).removeAttribute('aria-invalid');
  for (const key of wrong) mark(field(key));
  marked = wrong;
}

/**
 * Sets a property where it is another: the browser lays a field out again for the same.
 * @template {object} T
 * @template {keyof T} K
 * @param {T} element
 * @param {K} property
 * @param {T[K]} value
 */
function set(element, property, value) {
  if (element[property] !== value) element[property] = value;
}

/**
 * @param {HTMLElement} entry
 * @param {string} meaning
 */
function sayWhileEmpty(entry, meaning) {
  if (entry instanceof HTMLSelectElement) set(entry.options[0], 'textContent', meaning);
  else if (entry instanceof HTMLInputElement) set(entry, 'placeholder', meaning);
}

/**
 * Marks a field as wrong and opens what it is folded away in; what is being typed beside an answer may be whole in a moment.
 * @param {HTMLElement} entry
 */
function mark(entry) {
  entry.setAttribute('aria-invalid', 'true');
  if (document.querySelector('.edit')) setTimeout(showWrong, MAY_BE_WHOLE, entry);
  else unfoldAround(entry);
}

/** @param {HTMLElement} entry */
function showWrong(entry) {
  if (entry.hasAttribute('aria-invalid')) unfoldAround(entry);
}

/** @type {import('./update.js').Part} */
export function showUndo({ undo }) {
  const buttons = /** @type {NodeListOf<HTMLButtonElement>} */ (all('[data-act=undo]'));
  for (const button of buttons) {
    if (document.activeElement === button && !undo) (button.form ?? find('bench')).querySelector('input')?.focus();
    button.disabled = !undo;
  }
}
