// @ts-check
// The pictures: drawn when they are in sight, read by pointer, finger and keys.

import { all } from './dom.js';
import * as engine from './engine.js';
import { look } from './fields.js';
import { stopAtFirst } from './roving.js';

/** @typedef {import('./engine.js').Spot} Spot */
/**
 * @typedef {object} Picture
 * @property {string} name
 * @property {HTMLElement} figure All of it, with its caption.
 * @property {HTMLElement} plot What is pointed at and stepped through.
 * @property {HTMLCanvasElement} canvas
 * @property {HTMLElement} mark Frames the spot being looked at.
 * @property {HTMLElement} reading Says what stands there.
 * @property {boolean} isFresh Whether it shows the bench as it is.
 * @property {boolean} isNear Whether it is in sight or nearly so.
 */

const NEAR = '200px';
/** A dark screen, and colours chosen by the system: then pictures are in plain ink. */
const DARK = '(prefers-color-scheme: dark)';
const PLAIN = '(forced-colors: active)';

/** @type {Map<string, Picture>} */
const pictures = new Map();

/** Puts a canvas into every figure, and follows what is done to them. */
export function furnishPictures() {
  for (const figure of all('[data-picture]')) furnish(figure);
  for (const query of [DARK, PLAIN]) matchMedia(query).addEventListener('change', repaint);
  watchRatio();
  document.addEventListener('unfolded', ({ target }) => freshen(/** @type {HTMLElement} */ (target)));
}

/** Says anew what the pictures in a panel show that was opened; they are drawn when they come near. @param {HTMLElement} panel */
function freshen(panel) {
  for (const picture of pictures.values()) {
    if (!panel.contains(picture.plot)) continue;
    picture.isFresh = false;
    label(picture);
    if (picture.isNear) paint(picture);
  }
}

/** Draws what is near anew; the others when they come near. */
export function repaint() {
  for (const picture of pictures.values()) {
    picture.isFresh = false;
    if (picture.isNear) paint(picture);
  }
}

/** Says anew what the pictures show that are not near. */
export function labelAway() {
  for (const picture of pictures.values()) {
    if (!picture.isNear && !picture.plot.closest('[data-panel][hidden]')) label(picture);
  }
}

/** Says for the first time what the pictures of a section show. @param {HTMLElement} section */
export function labelIn(section) {
  for (const picture of pictures.values()) if (section.contains(picture.plot)) label(picture);
}

function watchRatio() {
  const ratio = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
  const again = () => {
    repaint();
    watchRatio();
  };
  ratio.addEventListener('change', again, { once: true });
}

/** @param {HTMLElement} figure */
function furnish(figure) {
  const name = String(figure.dataset.picture);
  const caption = /** @type {HTMLElement} */ (figure.querySelector('figcaption'));
  const plot = /** @type {HTMLElement} */ (figure.querySelector('.plot'));
  caption.id = `caption-${name}`;
  plot.innerHTML = '<canvas role="img"></canvas><div class="mark" hidden></div>';
  plot.tabIndex = -1;
  plot.setAttribute('role', 'group');
  plot.setAttribute('aria-labelledby', caption.id);
  plot.setAttribute('aria-describedby', 'keys');
  const [canvas, mark] = /** @type {[HTMLCanvasElement, HTMLElement]} */ ([...plot.children]);
  const [reading, button] = /** @type {HTMLElement[]} */ ([...figure.querySelectorAll('.figure-foot > *')]);
  canvas.addEventListener('contextrestored', () => engine.paint(name, canvas, devicePixelRatio || 1));
  /** @type {Picture} */
  const picture = { name, figure, plot, canvas, mark, reading, isFresh: false, isNear: false };
  pictures.set(name, picture);
  followPointer(picture);
  followKeys(picture);
  followSight(picture);
  // The picture that leads a section is saved by a button of the section's row.
  if (document.querySelector(`.folds [data-save='${name}']`)) button.remove();
}

/** Says what it shows; without anything to say it has nothing to show. @param {Picture} picture */
function label({ name, canvas, figure }) {
  const text = engine.pictureLabel(name);
  canvas.setAttribute('aria-label', text);
  if (figure.hidden === (text === '')) return;
  figure.hidden = text === '';
  for (const button of buttonsOf(name)) {
    button.hidden = figure.hidden;
    stopAtFirst(/** @type {HTMLElement} */ (button.parentElement));
  }
}

/** What reads and saves a picture in the row under its section. @param {string} name */
const buttonsOf = (name) => all(`.folds :is([data-read='${name}'], [data-save='${name}'])`);

/** @param {Picture} picture */
function paint(picture) {
  const { name, plot, canvas } = picture;
  const width = plot.clientWidth;
  if (width === 0) return;
  const ratio = devicePixelRatio || 1;
  const height = engine.pictureHeight(name, width);
  const differs = engine.preparePicture(name, width, height, matchMedia(DARK).matches, matchMedia(PLAIN).matches);
  const [across, down] = [Math.round(width * ratio), Math.round(height * ratio)];
  const isResized = canvas.width !== across || canvas.height !== down;
  if (isResized) {
    [canvas.width, canvas.height] = [across, down];
    canvas.style.height = `${height}px`;
  } else if (differs) canvas.getContext('2d')?.clearRect(0, 0, across, down);
  if (isResized || differs) engine.paint(name, canvas, ratio);
  label(picture);
  picture.isFresh = true;
  if (plot.dataset.spot) read(picture, engine.spotAgain(name, width, height, Number(plot.dataset.spot)));
}

/**
 * Width and height that a picture is drawn in, CSS pixels.
 * @param {Picture} picture
 * @returns {[number, number]}
 */
const size = ({ plot, canvas }) => [plot.clientWidth, canvas.clientHeight];

/**
 * Shows which spot of a picture is being looked at, or none.
 * @param {Picture} picture
 * @param {Spot | null} spot
 */
function read({ plot, mark, reading }, spot) {
  mark.hidden = !spot;
  reading.textContent = spot ? spot.text : '';
  if (!spot) {
    delete plot.dataset.spot;
    return;
  }
  plot.dataset.spot = String(spot.index);
  for (const side of /** @type {const} */ (['left', 'top', 'width', 'height'])) mark.style[side] = `${spot[side]}px`;
}

/**
 * Reads a spot that was just chosen, and shows it elsewhere too where it has a field.
 * @param {Picture} picture
 * @param {Spot | null} spot
 */
function choose(picture, spot) {
  read(picture, spot);
  if (spot?.puts) look(...spot.puts);
}

/** @param {Picture} picture */
function followPointer(picture) {
  const { name, plot } = picture;
  const point = (/** @type {PointerEvent} */ event) => {
    const box = plot.getBoundingClientRect();
    choose(picture, engine.spotAt(name, ...size(picture), event.clientX - box.left, event.clientY - box.top));
  };
  plot.addEventListener('pointermove', point);
  plot.addEventListener('pointerdown', point);
  plot.addEventListener('pointerleave', ({ pointerType }) => {
    if (pointerType !== 'touch' && document.activeElement !== plot) read(picture, null);
  });
  plot.addEventListener('blur', () => read(picture, null));
}

/** @param {Picture} picture */
function followKeys(picture) {
  const { name, plot } = picture;
  plot.addEventListener('keydown', (event) => {
    const key = (event.shiftKey ? 'Shift+' : '') + event.key;
    const spot = engine.spotByKey(name, ...size(picture), Number(plot.dataset.spot ?? -1), key);
    if (!spot) return;
    event.preventDefault();
    choose(picture, spot);
  });
}

/** Draws a picture when it comes near, and anew when its width changes. @param {Picture} picture */
function followSight(picture) {
  const near = new IntersectionObserver(
    ([entry]) => {
      picture.isNear = entry.isIntersecting;
      if (picture.isNear && !picture.isFresh) paint(picture);
    },
    { rootMargin: NEAR },
  );
  const width = new ResizeObserver(() => {
    if (picture.isNear) paint(picture);
    else picture.isFresh = false;
  });
  near.observe(picture.plot);
  width.observe(picture.plot);
}
