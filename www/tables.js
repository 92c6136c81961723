// @ts-check
// Every table taken along: saved as CSV (RFC 4180), copied for a spreadsheet, printed alone.

import { around, find } from './dom.js';
import { save } from './download.js';
import { printAlone } from './print.js';

/** A figure with its unit behind it: the unit stands in the head where the figures of a column or of a row all have the same. */
const FIGURE = /^([+−-]?)(\d+(?:[.,]\d+)?)(?:[\u00a0\u2009\u202f](\p{L}\S*|%)|([°%]))?$/u;
const SPACES = /[\s\u00a0\u2009\u202f]+/g;
/** What a spreadsheet would work out. */
const FORMULA = /^[=+@\t-]/;

export function offerTables() {
  document.addEventListener('click', (event) => {
    const button = around(event, '[data-table], [data-prints]');
    if (button?.dataset.prints) return printAlone([find(button.dataset.prints)]);
    const scroll = /** @type {HTMLElement | null} */ (button?.closest('.scroll'));
    if (button && scroll) take(scroll, button);
  });
}

/**
 * @param {HTMLElement} scroll
 * @param {HTMLElement} button
 */
function take(scroll, button) {
  const table = /** @type {HTMLTableElement} */ (scroll.querySelector('table'));
  const { table: how } = button.dataset;
  if (how === 'print') printAlone([scroll]);
  else if (how === 'csv') save(nameOf(scroll), asCsv(rowsOf(table)), 'text/csv;charset=utf-8');
  else copy(asTsv(rowsOf(table)), button);
}

/** @param {HTMLElement} scroll */
function nameOf(scroll) {
  const title = String(scroll.getAttribute('aria-label')).toLowerCase();
  return `remount-${title
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 80)}.csv`;
}

/**
 * @param {string} text
 * @param {HTMLElement} button
 */
async function copy(text, button) {
  try {
    await navigator.clipboard.writeText(text);
    button.textContent = String(button.dataset.copied);
  } catch {
    button.textContent = String(button.dataset.refused);
  }
}

/**
 * What a cell says, without what is pressed in it.
 * @param {HTMLTableCellElement} cell
 */
function words(cell) {
  const copy = /** @type {HTMLElement} */ (cell.cloneNode(true));
  if (!cell.closest('thead')) for (const button of copy.querySelectorAll('button')) button.remove();
  return String(copy.textContent).trim();
}

/**
 * The cells as they are read, the first row the head; figures as numbers, their units in the head of the column or the row.
 * @param {HTMLTableElement} table
 */
export function rowsOf(table) {
  const rows = [...table.rows].map((row) => [...row.cells].map(words));
  const [head, ...body] = rows;
  head.forEach((_, column) => {
    const cells = body.map((_, row) => /** @type {Place} */ ([row + 1, column]));
    unitInto(rows, cells, [0, column]);
  });
  body.forEach((_, row) => {
    const cells = head.slice(1).map((_, column) => /** @type {Place} */ ([row + 1, column + 1]));
    unitInto(rows, cells, [row + 1, 0]);
  });
  return rows.map((row) => row.map(plain));
}

/** @typedef {[row: number, column: number]} Place */

/**
 * Takes the unit that all figures of some cells have in common out of them and puts it behind a head.
 * @param {string[][]} rows
 * @param {Place[]} cells
 * @param {Place} head
 */
function unitInto(rows, cells, [headRow, headColumn]) {
  const full = cells.filter(([row, column]) => rows[row][column]);
  const said = full.filter(([row, column]) => unitOf(rows[row][column]));
  const units = new Set(said.map(([row, column]) => unitOf(rows[row][column])));
  const [unit] = units;
  // Beside words a unit is taken out only where the words are the exception.
  if (units.size !== 1 || said.length * 2 <= full.length) return;
  for (const [row, column] of said) rows[row][column] = number(rows[row][column]);
  rows[headRow][headColumn] = `${rows[headRow][headColumn]} (${unit})`.trim();
}

/** @param {string} text */
const isNumber = (text) => FIGURE.test(text) && !unitOf(text);

/** @param {string} text */
function unitOf(text) {
  const [, , , unit, sign] = FIGURE.exec(text) ?? [];
  return unit ?? sign ?? '';
}

/** @param {string} text */
function number(text) {
  const [, sign, digits] = /** @type {RegExpExecArray} */ (FIGURE.exec(text));
  return (sign === '' || sign === '+' ? '' : '-') + digits.replace(',', '.');
}

/** @param {string} text */
function plain(text) {
  if (isNumber(text)) return number(text);
  const flat = text.replace(SPACES, ' ').replace(/−(?=\d)/g, '-');
  return FORMULA.test(flat) ? ` ${flat}` : flat;
}

/** @param {string[][]} rows */
const asCsv = (rows) => rows.map((row) => `${row.map(quoted).join(',')}\r\n`).join('');

/** @param {string} text */
const quoted = (text) => (/[",\r\n]|^\s/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

/** @param {string[][]} rows */
const asTsv = (rows) => rows.map((row) => row.join('\t')).join('\n');
