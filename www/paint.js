// @ts-check
// A stretch of the lap, marked on its picture by pointer, finger or keys, and painted. Fingers scroll the page up and down as ever.

import { field, find } from './dom.js';
import * as engine from './engine.js';
import { flush } from './fields.js';
import { change } from './update.js';

/** Less is a press, no drag, CSS pixels. */
const NEAR = 6;

/** @type {HTMLElement} */
let plot;
/** @type {HTMLElement} */
let band;
/** Where a stretch begins whose other end is looked for, as the place of a spot, which is a metre of the lap. */
let begun = '';
/** Whether that is shown: a pointer may have gone down only to press. */
let isMarking = false;
let downAt = 0;

export function offerPaint() {
  plot = /** @type {HTMLElement} */ (document.querySelector('[data-picture=profile] .plot'));
  band = document.createElement('div');
  band.className = 'band';
  band.hidden = true;
  plot.append(band);
  plot.addEventListener('pointerdown', press);
  plot.addEventListener('pointermove', drag);
  plot.addEventListener('pointerup', drop);
  plot.addEventListener('pointercancel', giveUp);
  plot.addEventListener('keydown', mark);
  plot.addEventListener('blur', giveUp);
  new ResizeObserver(showBand).observe(find('brush').parentElement ?? plot);
  find('brush').addEventListener('submit', paint);
  find('brush').addEventListener('input', showBand);
  find('brush-coat').addEventListener('change', askMore);
  find('brush-done').addEventListener('click', putAway);
}

const here = () => plot.dataset.spot ?? '';

/** @param {PointerEvent} event */
function press({ button, isPrimary, clientX, pointerId }) {
  if (button !== 0 || !isPrimary) return;
  [begun, downAt, isMarking] = [here(), clientX, false];
  plot.setPointerCapture(pointerId);
}

/** @param {PointerEvent} event */
function drag({ buttons, clientX }) {
  if (buttons === 0 || !begun) return;
  isMarking ||= Math.abs(clientX - downAt) >= NEAR;
  showBand();
}

function drop() {
  if (isMarking) choose();
  giveUp();
}

/** Shows again what was marked before. */
function giveUp() {
  [begun, isMarking] = ['', false];
  showBand();
}

/** @param {KeyboardEvent} event */
function mark(event) {
  if (event.key === 'Escape') giveUp();
  else if (event.key === 'Enter' && here()) {
    event.preventDefault();
    if (isMarking) {
      choose();
      return find('brush-coat').focus();
    }
    [begun, isMarking] = [here(), true];
  }
  showBand();
}

/** What is marked becomes the stretch to be painted. */
function choose() {
  const ends = [begun, here()].sort((a, b) => Number(a) - Number(b));
  if (ends[0] === ends[1]) return;
  [field('brush-from').value, field('brush-to').value] = ends;
  forgetSaid();
  find('brush').hidden = false;
  find('brush').scrollIntoView({ block: 'nearest' });
}

/**
 * Shows the band between two places, in metres.
 * @param {string} from
 * @param {string} to
 */
function showBetween(from, to) {
  const found = engine.stretch(plot.clientWidth, plot.clientHeight, `${from};${to}`);
  band.hidden = !found;
  if (found) for (const side of /** @type {const} */ (['left', 'top', 'width', 'height'])) band.style[side] = `${found[side]}px`;
  return found;
}

/** Shows the stretch that is being marked, and says what it is; else that which is to be painted. */
export function showBand() {
  const reading = plot.parentElement?.querySelector('.reading');
  if (isMarking && reading) reading.textContent = showBetween(begun, here())?.text ?? '';
  else if (find('brush').hidden) band.hidden = true;
  else showBetween(field('brush-from').value, field('brush-to').value);
}

/** Asks for the number that belongs to what the stretch becomes. */
function askMore() {
  const { number, unit, usual = '' } = /** @type {HTMLSelectElement} */ (find('brush-coat')).selectedOptions[0].dataset;
  const more = find('brush-more');
  more.hidden = !number;
  more.children[0].textContent = number ?? '';
  field('brush-number').value = usual;
  more.children[2].textContent = unit ?? '';
}

/** @param {Event} event */
function paint(event) {
  event.preventDefault();
  flush();
  const [from, to, coat, number] = ['from', 'to', 'coat', 'number'].map((name) => field(`brush-${name}`).value);
  change(engine.paintStretch(`${from};${to};${coat} ${number}`));
}

/** What was said of the stretch is of before. */
export function forgetSaid() {
  find('brush-says').textContent = '';
}

function putAway() {
  find('brush').hidden = true;
  showBand();
  plot.focus({ preventScroll: true });
}
