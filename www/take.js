// @ts-check
// Pictures to take along: one menu saves or copies the picture whose button opened it, or the whole board.

import { publicLink } from './address.js';
import { all, around, find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { flush } from './fields.js';
import { settleLap } from './lap.js';
import { place } from './menus.js';
import { stopAtFirst } from './roving.js';
import { show } from './update.js';

const PNG = 'image/png';
/** Pixels to the CSS pixel: on a screen, and for 300 to the inch. */
const SCREEN = 2;
const PAPER = 300 / 96;
/** Where the first block of a PNG ends, and the block that says 11811 pixels to the metre, which is 300 to the inch. */
const HEAD = 33;
const DENSITY = Uint8Array.of(0, 0, 0, 9, 112, 72, 89, 115, 0, 0, 46, 35, 0, 0, 46, 35, 1, 120, 165, 63, 118);
/** The button that the menu was opened by. @type {HTMLElement} */
let opener;
/** What a file of the picture is called, and its size in CSS pixels. @type {[string, number, number]} */
let taken;

export function offerPictures() {
  const menu = find('take');
  document.addEventListener('click', (event) => {
    const button = around(event, '[data-save]');
    if (button) opener = button;
    const how = around(event, '[data-as]')?.dataset.as;
    if (how) take(how);
  });
  menu.addEventListener('beforetoggle', ({ newState }) => {
    if (newState === 'open') furnish(menu);
  });
  menu.addEventListener('toggle', (event) => {
    if (/** @type {ToggleEvent} */ (event).newState !== 'open') return;
    place(menu, opener);
    /** @type {HTMLElement} */ (menu.querySelector('button')).focus();
  });
}

/** @param {HTMLElement} menu */
function furnish(menu) {
  const [copy, said] = [/** @type {HTMLElement} */ (menu.querySelector('[data-as=copy]')), find('taken')];
  copy.hidden = !globalThis.ClipboardItem;
  said.textContent = copy.hidden ? String(said.dataset.lacking) : '';
  find('take-what').textContent = title();
  stopAtFirst(/** @type {HTMLElement} */ (copy.parentElement));
}

/** What is taken along: the heading of the picture, or the name of the board. */
function title() {
  const { save: name } = opener.dataset;
  const [board] = all('.board');
  return String(name ? all(`[data-picture='${name}'] figcaption > b`)[0].textContent : board.ariaLabel);
}

/** @param {string} how */
function take(how) {
  flush();
  settleLap();
  show(engine.writeUnfolded());
  taken = engine.preparePoster(String(opener.dataset.save), title(), publicLink());
  if (how === 'copy') return copy();
  if (how === 'svg') save(`${taken[0]}.svg`, engine.posterSvg(), 'image/svg+xml');
  else savePng(how === 'print');
  find('take').hidePopover();
}

/**
 * What was made up, drawn with so many pixels to the CSS pixel.
 * @param {number} ratio
 * @returns {Promise<Blob>}
 */
function png(ratio) {
  const canvas = document.createElement('canvas');
  const [, width, height] = taken;
  [canvas.width, canvas.height] = [Math.round(width * ratio), Math.round(height * ratio)];
  engine.paintPoster(canvas, ratio);
  return new Promise((done, failed) => canvas.toBlob((blob) => (blob ? done(blob) : failed()), PNG));
}

/** @param {boolean} isForPaper */
async function savePng(isForPaper) {
  const [name] = taken;
  const drawn = await png(isForPaper ? PAPER : SCREEN);
  const parts = isForPaper ? [drawn.slice(0, HEAD), DENSITY, drawn.slice(HEAD)] : [drawn];
  save(`${name}${isForPaper ? '-170mm' : ''}.png`, new Blob(parts), PNG);
}

async function copy() {
  const { dataset } = find('taken');
  let said = dataset.copied;
  // Some browsers copy only what is promised before the press is over.
  await navigator.clipboard.write([new ClipboardItem({ [PNG]: png(SCREEN) })]).catch(() => {
    said = dataset.refused;
  });
  find('taken').textContent = String(said);
}
