// @ts-check
// The box of parts: parts put in by lists, and every combination ridden by workers if there are any.

import { ridden, ticked } from './box-courses.js';
import { rideBox } from './box-worker.js';
import { breath } from './breath.js';
import { crewOf } from './crew.js';
import { around, field, find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { flush, write } from './fields.js';
import { keepFound } from './rack.js';
import { show } from './update.js';
import { noteUsed, showUsed } from './used.js';

const SHOW_EVERY = 400; // milliseconds
/** Combinations tried between two pauses. */
const SORT = 100;
const FIELD = 'box-parts';
const OTHERS_WRONG = `[data-field][aria-invalid]:not(#${FIELD})`;

/** @typedef {import('./box-worker.js').BoxFound} BoxFound */

/**
 * What is going on: for which bench and course, since when, how many laps are still out, and what else is still to come.
 * @typedef {{ box: string, rows: string, courses: [string, number][], began: number, shownAt: number, out: number, asked: number }} Going
 */
/** @type {Going | null} */
let going = null;
let job = 0;
/** The order given last, for the page itself where workers are gone. @type {object} */
let last = {};
const crew = crewOf(take, () => going && rideHere());

export function offerBox() {
  find('box-start').addEventListener('click', begin);
  find('box-stop').addEventListener('click', stop);
  find('save-box').addEventListener('click', saveTable);
  find('box-put').addEventListener('click', putIn);
  find('box-put').addEventListener('focusin', showUsed);
  find('box-table').addEventListener('click', (event) => {
    const key = around(event, '[data-keep]')?.dataset.keep;
    if (key) say(keepFound(key));
  });
}

/** @param {string} words */
function say(words) {
  find('box-left').textContent = words;
}

async function begin() {
  if (going) return;
  flush();
  if (document.querySelector(OTHERS_WRONG)) return say(engine.searchNote(engine.SearchNote.FieldsWrong));
  const [, rows] = engine.course();
  if (!rows) return say(engine.searchNote(engine.SearchNote.NoCourse));
  const now = performance.now();
  /** @type {Going} */
  const mine = { box: engine.link(), rows, courses: [], began: now, shownAt: now, out: 0, asked: 0 };
  going = mine;
  const courses = ticked();
  mine.courses = ridden(courses);
  show(
    engine.beginBox(
      courses.map(([name]) => name),
      Float64Array.from(courses, ([, weight]) => weight),
    ),
  );
  showBusy(true);
  while (engine.sortBox(SORT)) {
    tell(mine);
    await breath();
    if (going !== mine) return;
  }
  goOn(mine);
}

/** @param {boolean} busy */
function showBusy(busy) {
  // Not disabled, which would take the focus away from whoever has just pressed it.
  find('box-start').setAttribute('aria-disabled', String(busy));
  find('box-bar').hidden = !busy;
  find('box-stop').hidden = !busy;
  if (!busy) say('');
}

function end() {
  if (document.activeElement === find('box-stop')) find('box-start').focus();
  going = null;
  showBusy(false);
  show(engine.endBox());
}

/** What is still ridden is no longer wanted: an order of nothing ends it. */
function stop() {
  if (!going) return;
  end();
  order({ box: ' ', rows: '' }, { laps: [] });
}

/**
 * Has the next laps ridden, or asks what the best gain once all are.
 * @param {Going} mine
 */
function goOn(mine) {
  const [laps, inFull] = engine.boxToRide();
  mine.out = laps.length;
  if (laps.length > 0) return order(mine, { laps, inFull });
  showFound(mine);
  const [leading, times, planned] = engine.boxLeading();
  if (leading.length === 0) return end();
  mine.asked = 4;
  tell(mine);
  order(mine, { laps: leading, times, planned, courses: mine.courses });
}

/**
 * @param {{ box: string, rows: string }} whose
 * @param {object} what
 */
function order({ box, rows }, what) {
  last = { box, rows, ...what };
  crew.send(last);
  job += 1;
  if (crew.isGone()) rideHere();
}

function rideHere() {
  const whole = /** @type {import('./box-worker.js').BoxOrder} */ ({ ...last, job, index: 0, count: 1 });
  rideBox(whole, (found) => found.job === job && take(found));
}

/** @param {BoxFound} found */
function take({ laps, gains, onTyres, regrets, offers, none }) {
  const mine = going;
  if (!mine) return;
  if (none) return giveUp();
  if (laps) return takeLaps(mine, laps);
  if (gains) engine.takeBoxGains(gains);
  if (onTyres) engine.takeBoxTyres(onTyres);
  if (regrets) engine.takeBoxRegrets(regrets);
  if (offers) takeOffers(offers);
  mine.asked -= 1;
  if (mine.asked === 0) end();
}

function giveUp() {
  end();
  say(engine.searchNote(engine.SearchNote.NoLap));
}

/** @param {[string, Float64Array][]} offers */
function takeOffers(offers) {
  const numbers = Float64Array.from(offers.flatMap(([, numbers]) => [...numbers]));
  engine.takeBoxOffers(
    offers.map(([said]) => said),
    numbers,
  );
}

/**
 * @param {Going} mine
 * @param {number[]} rows
 */
function takeLaps(mine, rows) {
  engine.takeBox(Float64Array.from(rows));
  mine.out -= rows.length / engine.boxRow();
  tell(mine);
  if (mine.out <= 0) return goOn(mine);
  if (performance.now() - mine.shownAt > SHOW_EVERY) showFound(mine);
}

/** @param {Going} mine */
function showFound(mine) {
  show(engine.showBox());
  mine.shownAt = performance.now();
}

/** @param {Going} mine */
function tell({ began }) {
  const [words, done, total] = engine.boxLeft((performance.now() - began) / 1000);
  const bar = /** @type {HTMLProgressElement} */ (find('box-bar'));
  [bar.max, bar.value] = [Math.max(1, total), done];
  say(words);
}

/**
 * Puts what is chosen in a list behind what lies in the box, in its last line where that holds the same kind.
 * @param {Event} event
 */
function putIn(event) {
  const { puts: from, head } = around(event, '[data-puts]')?.dataset ?? {};
  if (!from) return;
  const chosen = field(from).value;
  noteUsed(from, chosen);
  const before = field(FIELD).value.trimEnd();
  const isOfKind = before.split('\n').at(-1)?.startsWith(`${head} `);
  write(FIELD, isOfKind ? `${before}, ${chosen}` : `${before}\n${head} ${chosen}`.trimStart());
}

function saveTable() {
  const text = engine.boxCsv();
  if (text) save('box.csv', text, 'text/csv');
}
