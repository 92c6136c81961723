// @ts-check
// The rack: bikes kept in this browser, which another window may change at any time, or saved as a file.

import { all, around, field, find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { flush, write } from './fields.js';
import { bikeOf, readRack, written } from './rack-file.js';
import { bikes, forgetBike, keepBike, whenBikesChange } from './storage.js';
import { show } from './update.js';

const FILE = 'remount-rack.json';
const BOX = 'box-parts';

/** Shows what the browser keeps now. */
export function showRack() {
  show(engine.readRack([...bikes()].map(([name, text]) => [name, bikeIn(text)])));
  showComparison();
}

/** All bikes side by side are worth a section once one is kept. */
function showComparison() {
  const isEmpty = engine.filedRack().length === 0;
  for (const shown of all('#bikes, a[href="#bikes"]')) shown.hidden = isEmpty;
}

/**
 * The one bike that a kept text holds, null where it is none.
 * @param {string} text
 */
function bikeIn(text) {
  const read = readRack(text);
  if ('fault' in read) return null;
  const [bike, ...more] = read.bikes;
  return bike && more.length === 0 ? bike : null;
}

export function offerRack() {
  const fold = find('rack');
  fold.addEventListener('click', (event) => {
    const button = around(event, '[data-rack]');
    if (button) act(button);
  });
  fold.addEventListener('keydown', pressFor);
  find('save-rack').addEventListener('click', saveRack);
  whenBikesChange(showRack);
}

/**
 * Enter and Escape in a field for a name press the buttons beside it.
 * @param {KeyboardEvent} event
 */
function pressFor(event) {
  const place = { Enter: 'button', Escape: 'button[data-rack=leave]' }[event.key];
  if (!place || !around(event, 'input[type=text]')) return;
  const button = around(event, '.rack-name')?.querySelector(place);
  // The same key would press what then has the focus.
  event.preventDefault();
  if (button instanceof HTMLElement) button.click();
}

/** @param {HTMLElement} button */
function act({ dataset: { rack: name = '', bike = '', typed } }) {
  flush();
  // What another window has changed counts before what is done here.
  showRack();
  change(engine.actOnRack(name, bike, typed ? field(typed).value : ''));
  goOn();
}

/**
 * Shows an answer, and lets the browser keep what it has changed.
 * @param {engine.Update} update
 */
function change(update) {
  show(update);
  const done = engine.rackChanges().map(([name, bike]) => (bike ? keepBike(name, written([bike])) : forgetBike(name)));
  if (done.includes(false)) show(engine.rackUnkept());
  showRack();
}

/** A button that is gone when it is done leaves the focus to what comes next. */
function goOn() {
  const next = /** @type {HTMLElement | null} */ (find('rack').querySelector('[data-next]'));
  next?.focus();
  if (next instanceof HTMLInputElement) next.select();
  if (document.activeElement === document.body) find('rack').querySelector('summary')?.focus();
}

/**
 * Keeps what was found of the box of parts as a bike; gives what is said of that.
 * @param {string} key
 */
export function keepFound(key) {
  flush();
  showRack();
  change(engine.actOnRack('keep-box', key, ''));
  return find('rack-says').textContent ?? '';
}

function saveRack() {
  flush();
  const [all, box] = [engine.filedRack(), field(BOX).value];
  if (all.length > 0 || box) save(FILE, written(all, box), 'application/json');
  show(engine.rackSaved(FILE));
}

/**
 * Takes a file as a rack, or says why not.
 * @param {File} file
 * @param {string | null} text What it holds.
 */
export function takeRack(file, text) {
  if (file.size > Number(find('rack-file').dataset.largest)) return refuse(file, engine.RackFileFault.TooLarge);
  if (text === null) return refuse(file, engine.RackFileFault.Unreadable);
  const read = readRack(text);
  if ('fault' in read) return refuse(file, read.fault);
  showRack();
  change(engine.openRack(file.name, read.bikes, read.strange));
  if (read.box) putInBox(read.box);
}

/**
 * Puts the bikes of a file that holds more than them on the rack.
 * @param {string} file
 * @param {unknown[]} bikes
 */
export function openBikes(file, bikes) {
  /** @type {string[]} */
  const strange = [];
  showRack();
  const filed = bikes.map((bike) => bikeOf(bike, strange));
  change(engine.openRack(file, filed, strange));
}

/**
 * Puts the lines of a file's box behind those that are in the box, but for those that are there.
 * @param {string} box
 */
function putInBox(box) {
  const lines = `${field(BOX).value}\n${box}`.split('\n').filter(Boolean);
  write(BOX, [...new Set(lines)].join('\n'));
}

/**
 * @param {File} file
 * @param {engine.RackFileFault} why
 */
const refuse = (file, why) => show(engine.refuseRack(file.name, why));
