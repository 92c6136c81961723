// @ts-check
// Printing: the workshop sheet on one page, or the bench table of the chain.

import { find } from './dom.js';
import * as engine from './engine.js';
import { settleLap } from './lap.js';
import { show } from './update.js';

/** Sizes of the type in tenths of a point: the largest at which the sheet stays on one page is printed. */
const [SMALLEST, LARGEST] = [62, 90];

/** What the margins of `@page` leave of a sheet of paper, in millimetres, and the style that the type for it goes into. */
const PAPERS = [
  { type: '--a4', width: 190, height: 278.5 },
  { type: '--letter', width: 195.9, height: 260.9 },
];
const MM_PER_PX = 25.4 / 96;

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
  show(engine.rest());
  onPaper((sheet) => {
    for (const paper of PAPERS) sheet.style.setProperty(paper.type, fitting(sheet, paper));
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
  for (const property of ['position', 'width', '--type']) sheet.style.removeProperty(property);
  rules.media = 'print';
  scrollTo({ top: scrolled, behavior: 'instant' });
}

/**
 * The largest type at which the sheet stays on one page, found by halving.
 * @param {HTMLElement} sheet
 * @param {{ width: number, height: number }} paper
 */
function fitting(sheet, { width, height }) {
  sheet.style.width = `${width}mm`;
  let [fits, tooLarge] = [SMALLEST, LARGEST + 1];
  while (tooLarge - fits > 1) {
    const size = Math.floor((fits + tooLarge) / 2);
    sheet.style.setProperty('--type', points(size));
    if (sheet.offsetHeight * MM_PER_PX <= height) fits = size;
    else tooLarge = size;
  }
  return points(fits);
}

/** @param {number} tenths */
const points = (tenths) => `${tenths / 10}pt`;
