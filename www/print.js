// @ts-check
// Printing: the workshop sheet on one page, or the bench table of the chain.

import { find } from './dom.js';
import { settleLap } from './lap.js';

/** Sizes of the type in tenths of a point: the largest at which the sheet stays on one page is printed. */
const [SMALLEST, LARGEST] = [58, 84];

/** What is left of A4 across and of Letter down within the margins of `@page`, the lesser of both, in millimetres. */
const PAPER = { width: 190, height: 261 };

/** What is printed is the workshop sheet, unless this asks for the bench table of the chain once. */
export function printBench() {
  document.documentElement.dataset.print = 'bench';
  print();
}

export const printSheet = () => print();

export function readyToPrint() {
  addEventListener('beforeprint', prepare);
  matchMedia('print').addEventListener('change', ({ matches }) => matches && prepare());
  addEventListener('afterprint', () => delete document.documentElement.dataset.print);
}

function prepare() {
  settleLap();
  onPaper(fit);
}

/**
 * Lays the sheet out as it is printed while `measure` runs.
 * @param {(sheet: HTMLElement) => void} measure
 */
function onPaper(measure) {
  const [sheet, type] = [find('sheet-page'), /** @type {HTMLStyleElement} */ (find('print-type'))];
  const scrolled = scrollY;
  type.media = 'all';
  Object.assign(sheet.style, { position: 'absolute', width: `${PAPER.width}mm` });
  measure(sheet);
  Object.assign(sheet.style, { position: '', width: '' });
  type.media = 'print';
  scrollTo({ top: scrolled, behavior: 'instant' });
}

/**
 * Gives the sheet the largest type at which it stays on one page, found by halving.
 * @param {HTMLElement} sheet
 */
function fit(sheet) {
  let [fits, tooLarge] = [SMALLEST, LARGEST + 1];
  while (tooLarge - fits > 1) {
    const size = Math.floor((fits + tooLarge) / 2);
    if (heightAt(sheet, size) <= PAPER.height) fits = size;
    else tooLarge = size;
  }
  heightAt(sheet, fits);
}

/**
 * Height of the sheet in millimetres, once its type is this many tenths of a point.
 * @param {HTMLElement} sheet
 * @param {number} size
 */
function heightAt(sheet, size) {
  sheet.style.setProperty('--type', `${size / 10}pt`);
  return (sheet.offsetHeight / 96) * 25.4;
}
