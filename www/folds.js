// @ts-check
// What unfolds in place, and stays as it was left. A panel is written while it is open; what is folded away is written once
// typing rests, so that a word in it can be found.

import { breath } from './breath.js';
import { all, around, find } from './dom.js';
import * as engine from './engine.js';
import { showFragments } from './fragments.js';
import { unpressed } from './press.js';
import { showHome } from './sheet.js';
import { keepFolds, openFolds } from './storage.js';

const REST_AFTER = 1000; // milliseconds

/** What a reader does before looking for a word. */
const TOUCHED = ['pointerdown', 'pointermove', 'keydown', 'wheel'];

let resting = 0;
let isTouched = false;

/** @param {string} panel */
const buttonOf = (panel) => /** @type {HTMLElement} */ (document.querySelector(`[data-unfolds='${panel}']`));

/**
 * Opens or closes a panel; what is in it is not written yet.
 * @param {HTMLElement} panel
 * @param {boolean} isOpen
 */
function turn(panel, isOpen) {
  if (isOpen) panel.removeAttribute('hidden');
  else panel.setAttribute('hidden', 'until-found');
  buttonOf(panel.id).setAttribute('aria-expanded', String(isOpen));
  engine.unfold(panel.id, isOpen);
}

/**
 * Opens or closes a panel.
 * @param {HTMLElement} panel
 * @param {boolean} isOpen
 */
function setOpen(panel, isOpen) {
  turn(panel, isOpen);
  showFragments(engine.writeUnfolded());
  showHome();
  panel.dispatchEvent(new CustomEvent('unfolded', { bubbles: true }));
  keepFolds([...all('[data-panel]:not([hidden])')].map(({ id }) => id));
}

/**
 * Opens all that an element is folded away in.
 * @param {HTMLElement} element
 */
export function unfoldAround(element) {
  for (const fold of all('details')) if (fold.contains(element)) fold.setAttribute('open', '');
  const panel = /** @type {HTMLElement | null} */ (element.closest('[data-panel][hidden]'));
  if (panel) setOpen(panel, true);
}

/** Opens what was open when the page was left; it is written with the bench. */
export function openAsLeft() {
  for (const id of openFolds()) {
    const panel = find(id);
    if (panel?.matches('[data-panel]')) turn(panel, true);
  }
}

export function followFolds() {
  for (const touched of TOUCHED) addEventListener(touched, firstTouched, { passive: true });
  document.addEventListener('click', (event) => {
    const button = around(event, '[data-unfolds]');
    if (button) press(button);
    const picture = around(event, '[data-read]')?.dataset.read;
    if (picture) readPicture(picture);
  });
  document.addEventListener('beforematch', (event) => {
    const panel = around(event, '[data-panel]');
    if (panel) setOpen(panel, true);
  });
}

/** @param {HTMLElement} button */
function press(button) {
  const panel = find(String(button.dataset.unfolds));
  const isOpen = panel.hasAttribute('hidden');
  setOpen(panel, isOpen);
  if (isOpen) panel.scrollIntoView({ block: 'nearest' });
}

/** @param {string} name */
function readPicture(name) {
  const plot = /** @type {HTMLElement} */ (document.querySelector(`[data-picture='${name}'] .plot`));
  plot.focus();
}

function firstTouched() {
  isTouched = true;
  for (const touched of TOUCHED) removeEventListener(touched, firstTouched);
  restDue();
}

/** Writes what is folded away once nothing has changed for a while, and the page has been touched at all. */
export function restDue() {
  if (!isTouched) return;
  clearTimeout(resting);
  resting = setTimeout(unpressed, REST_AFTER, writeRest);
}

/** Section by section: together they take a slow phone half a second. */
async function writeRest() {
  const due = resting;
  for (const { id } of all('main > section')) {
    showFragments(engine.rest(id));
    await breath();
    if (resting !== due) return;
  }
  showHome();
}
