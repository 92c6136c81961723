// @ts-check
// Printing: the workshop sheet on one page, or the bench table of the chain.

import { find } from './dom.js';
import * as engine from './engine.js';
import { settleLap } from './lap.js';
import { show } from './update.js';

/** Sizes of the type in tenths of a point: the largest at which the sheet stays on one page is printed. */
const [SMALLEST, LARGEST] = [85, 90];

/** What the margins of `@page` leave of a sheet of paper, in millimetres, and the style that the type for it goes into. */
const PAPERS = [
  { name: 'a4', width: 190, height: 278.5, columns: 2 },
  { name: 'letter', width: 195.9, height: 260.9, columns: 2 },
  { name: 'letter-wide', width: 259.4, height: 197.4, columns: 3 },
  { name: 'a4-wide', width: 277, height: 191.5, columns: 3 },
];
const MM_PER_PX = 25.4 / 96;

/** What may be left out, the least needed first; of the same kind the last goes first. */
const SPARED = ['.open', '.link', '.concern ul:not(.ticked) li', '.grids table', 'dl > div:not(.warns)', '.concern li'];
/** What has nothing left to say once all of these in it are left out. */
const HOLDERS = { '.block': 'dl > div, .grids table', '.concern': 'li' };

/**
 * Prints these elements and nothing else.
 * @param {Element[]} elements
 */
export function printAlone(elements) {
  const alone = document.createElement('div');
  alone.id = 'alone';
  alone.append(...elements.map((element) => element.cloneNode(true)));
  document.body.append(alone);
  document.documentElement.dataset.print = 'alone';
  print();
}

export const printSheet = () => print();

export function readyToPrint() {
  addEventListener('beforeprint', prepare);
  matchMedia('print').addEventListener('change', ({ matches }) => matches && prepare());
  addEventListener('afterprint', () => {
    delete document.documentElement.dataset.print;
    document.getElementById('alone')?.remove();
  });
}

function prepare() {
  if (document.documentElement.dataset.print) return;
  settleLap();
  show(engine.rest());
  onPaper((sheet) => {
    // Nothing that is left out on one paper may be missing while another is measured, even where the page is on paper already.
    for (const { name } of PAPERS) leaveOut(sheet, new Set(), `not-${name}`);
    const fitting = PAPERS.map((paper) => ({ paper, ...fit(sheet, paper) }));
    for (const { paper, size, left } of fitting) {
      leaveOut(sheet, left, `not-${paper.name}`);
      sheet.classList.toggle(`all-${paper.name}`, left.size === 0);
      sheet.style.setProperty(`--${paper.name}`, points(size));
    }
  });
}

/**
 * Lays the sheet out as it is printed while `measure` runs.
 * @param {(sheet: HTMLElement) => void} measure
 */
function onPaper(measure) {
  const sheet = find('sheet-page');
  const rules = /** @type {HTMLStyleElement} */ (find('print-type'));
  const scrolled = scrollY;
  rules.media = 'all';
  sheet.style.position = 'absolute';
  measure(sheet);
  for (const property of ['position', 'width', '--type', '--columns']) sheet.style.removeProperty(property);
  rules.media = 'print';
  scrollTo({ top: scrolled, behavior: 'instant' });
}

/**
 * The largest type at which the sheet stays on one page, and what has to be left out where the smallest is still too large.
 * @param {HTMLElement} sheet
 * @param {typeof PAPERS[number]} paper
 */
function fit(sheet, { width, height, columns }) {
  sheet.style.width = `${width}mm`;
  sheet.style.setProperty('--columns', String(columns));
  const fits = () => sheet.offsetHeight * MM_PER_PX <= height;
  const inType = (/** @type {number} */ size) => {
    sheet.style.setProperty('--type', points(size));
    return fits();
  };
  const least = leastNeeded(sheet);
  const without = (/** @type {number} */ count) => {
    leaveOut(sheet, new Set(least.slice(0, count)), 'spared');
    return fits();
  };
  const larger = (/** @type {number} */ less) => inType(LARGEST - less);
  const size = inType(SMALLEST) ? LARGEST - first(LARGEST - SMALLEST, larger) : SMALLEST;
  const count = inType(size) ? 0 : first(least.length, without);
  leaveOut(sheet, new Set(), 'spared');
  return { size, left: new Set(least.slice(0, count)) };
}

/**
 * The smallest number up to `most` that will do, found by halving; `most` if none does.
 * @param {number} most
 * @param {(number: number) => boolean} does
 */
function first(most, does) {
  let [low, high] = [0, most];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (does(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** @param {HTMLElement} sheet */
function leastNeeded(sheet) {
  const found = SPARED.flatMap((kind) => [...sheet.querySelectorAll(kind)].reverse());
  return [...new Set(found)];
}

/**
 * Marks what is left out, and what would stand there empty.
 * @param {HTMLElement} sheet
 * @param {Set<Element>} left
 * @param {string} mark
 */
function leaveOut(sheet, left, mark) {
  for (const marked of sheet.querySelectorAll(`.${mark}`)) marked.classList.remove(mark);
  for (const element of left) element.classList.add(mark);
  for (const [holder, parts] of Object.entries(HOLDERS)) {
    for (const held of sheet.querySelectorAll(holder)) {
      const all = [...held.querySelectorAll(parts)];
      if (all.length > 0 && all.every((part) => left.has(part))) held.classList.add(mark);
    }
  }
}

/** @param {number} tenths */
const points = (tenths) => `${tenths / 10}pt`;
