// @ts-check
// The address of the page: the bench as a link, or a place on the page.

import { around, find } from './dom.js';
import * as engine from './engine.js';
import { flush, forgetTyped } from './fields.js';
import { unfoldAround } from './folds.js';
import { hold } from './fragments.js';
import { keepBench, lastBench, leaveBehind, leftBehind } from './storage.js';
import { change } from './update.js';

const LINK_PAUSE = 200; // milliseconds
const JUMP_SETTLES = 2000; // milliseconds

let due = 0;
/** The link that is not yet in the address. @type {string | null} */
let waiting = null;
let letGo = () => {};

/**
 * Puts the link into the address once typing pauses: browsers take many milliseconds over it and refuse it when it comes
 * too often.
 * @type {import('./update.js').Part}
 */
export function showLink({ link }) {
  if (link === null) return;
  waiting = link;
  clearTimeout(due);
  due = setTimeout(writeLink, LINK_PAUSE);
}

function writeLink() {
  clearTimeout(due);
  if (waiting === null) return;
  history.replaceState(null, '', `#${waiting}`);
  keepBench(waiting);
  waiting = null;
}

/** The page's address without the bench. */
const here = () => location.href.split('#')[0];

/** Where others find the page: where it is, or for a file what it was built for; empty where nobody else has it. */
export function home() {
  if (location.protocol !== 'file:') return here();
  const link = /** @type {HTMLLinkElement | null} */ (document.querySelector('link[rel=canonical]'));
  return link?.href ?? '';
}

/** The address that holds the bench; empty where nobody else has the page. */
export const publicLink = () => home() && `${home()}#${engine.link()}`;

/** The bench as an address, which opens on this machine at least. */
export const address = () => `${home() || here()}#${engine.link()}`;

/** Opens the bench that the address holds. */
const open = () => engine.open(placeOf(location.hash) ? '' : location.hash);

/**
 * Opens what the page shows first, which is still to be shown: after a reload what was changed just before it, and where the address
 * holds no bench the one that was last on this page.
 */
export function openFirst() {
  const left = leftBehind();
  const [visit] = /** @type {PerformanceNavigationTiming[]} */ (performance.getEntriesByType('navigation'));
  if (left !== null && visit?.type === 'reload') history.replaceState(null, '', `#${left}`);
  const [place, last] = [placeOf(location.hash), lastBench()];
  if (place || !location.hash) {
    if (last !== null) return engine.reopen(last);
    hold();
  }
  return open();
}

/** Shows the place that the address names, if it names one. */
export function showPlace() {
  const place = placeOf(location.hash);
  if (!place) return;
  unfoldAround(place);
  jump(place);
}

/** Follows changes of the address and links to places, and leaves no change behind when the page is left. */
export function followAddress() {
  addEventListener('hashchange', () => {
    if (placeOf(location.hash)) return;
    waiting = null;
    forgetTyped();
    change(open());
  });
  addEventListener('pagehide', leave);
  // A phone may end a page in the background without another word.
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) return;
    flush();
    writeLink();
  });
  document.addEventListener('click', follow);
  for (const act of ['wheel', 'touchstart', 'pointerdown', 'keydown']) {
    addEventListener(act, () => letGo(), { passive: true });
  }
}

function leave() {
  flush();
  if (waiting === null) return;
  leaveBehind(waiting);
  writeLink();
}

/**
 * The section or field that an address on this page names, if it names one; else it holds a bench.
 * @param {string} hash
 */
function placeOf(hash) {
  const element = find(hash.slice(1));
  return element?.matches('main > section, main h3, #bench, [data-field]') ? element : null;
}

/** @param {MouseEvent} event */
function follow(event) {
  const target = placeOf(around(event, "a[href^='#']")?.getAttribute('href') ?? '');
  if (!target) return;
  event.preventDefault();
  unfoldAround(target);
  const isField = target.matches('[data-field]');
  jump(isField ? /** @type {HTMLElement} */ (target.closest('.field')) : target);
  if (!isField) target.tabIndex = -1;
  target.focus({ preventScroll: true });
}

/**
 * Brings an element to the top and keeps it there while what stands above it gets its height, unless the user moves on.
 * @param {HTMLElement} element
 */
function jump(element) {
  letGo();
  element.scrollIntoView();
  const growing = new ResizeObserver(() => element.scrollIntoView());
  growing.observe(/** @type {HTMLElement} */ (document.querySelector('main')));
  letGo = () => growing.disconnect();
  setTimeout(letGo, JUMP_SETTLES);
}
