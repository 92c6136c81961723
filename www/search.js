// @ts-check
// The search for set-ups: its buttons, its bar and what its workers find.

import { find } from './dom.js';
import * as engine from './engine.js';
import { change } from './update.js';
import { helpful, hire } from './workers.js';

const SHOW_EVERY = 400; // milliseconds

/**
 * A search that is going on.
 * @typedef {object} Search
 * @property {Worker[]} workers
 * @property {number} working How many workers have not yet tried, or planned, all of their share.
 * @property {number} total
 * @property {number} tried
 * @property {number} began
 * @property {number} shownAt
 * @property {number[]} waiting Rows that are not yet shown.
 */

/** @type {Search | null} */
let search = null;

export function offerSearch() {
  find('search-start').addEventListener('click', begin);
  find('search-stop').addEventListener('click', () => search && end([]));
}

/** @param {string} words */
function say(words) {
  find('search-left').textContent = words;
}

/** @param {engine.SearchNote} note */
const tell = (note) => say(engine.searchNote(note));

function begin() {
  if (search) return;
  if (document.querySelector('[data-field][aria-invalid]')) return tell(engine.SearchNote.FieldsWrong);
  const [, rows] = engine.course();
  if (!rows) return tell(engine.SearchNote.NoCourse);
  const [update, total] = engine.beginSearch();
  change(update);
  if (total > 0) ride(rows, total);
  else change(engine.endSearch([]));
}

/**
 * @param {string} rows
 * @param {number} total
 */
function ride(rows, total) {
  const now = performance.now();
  const count = helpful(total);
  search = { workers: [], working: count, total, tried: 0, began: now, shownAt: now, waiting: [] };
  showBusy(total);
  const mine = search;
  try {
    search.workers = hire(count, { engine: engine.compiled, link: engine.link(), rows }, (message, worker) => {
      if (search === mine) hear(mine, message, worker);
    });
  } catch (problem) {
    giveUp(/** @type {Error} */ (problem).message);
  }
}

/**
 * Shows whether a search is going on, and out of how many set-ups.
 * @param {number} total None when it is over.
 */
function showBusy(total) {
  const bar = /** @type {HTMLProgressElement} */ (find('search-bar'));
  // Not disabled, which would take the focus away from whoever has just pressed it.
  find('search-start').setAttribute('aria-disabled', String(total > 0));
  find('search-stop').setAttribute('aria-disabled', String(total === 0));
  bar.hidden = total === 0;
  bar.max = Math.max(1, total);
  bar.value = 0;
  say('');
}

/**
 * @param {ArrayLike<number>} finals What the last worker answered; nothing when the search was cancelled.
 */
function end(finals) {
  for (const worker of search?.workers ?? []) worker.terminate();
  search = null;
  showBusy(0);
  change(engine.endSearch(Float64Array.from(finals)));
}

/** @param {string} problem */
function giveUp(problem) {
  end([]);
  say(problem);
}

/**
 * @param {Search} mine
 * @param {import('./worker.js').Message} message
 * @param {Worker} worker
 */
function hear(mine, message, worker) {
  if ('finals' in message) end(message.finals);
  else if ('planned' in message) takePlanned(mine, message.planned, worker);
  else if ('problem' in message) giveUp(message.problem);
  else take(mine, message, worker);
}

/**
 * Takes what a worker found.
 * @param {Search} mine
 * @param {import('./worker.js').Found} found
 * @param {Worker} worker
 */
function take(mine, { rows, tried, done }, worker) {
  mine.waiting.push(...rows);
  mine.tried += tried;
  if (done) mine.working -= 1;
  showProgress(mine);
  if (mine.working === 0 || performance.now() - mine.shownAt > SHOW_EVERY) showFound(mine);
  if (mine.working === 0) plan(mine, worker);
}

/**
 * Has the best planned in full, where they are not yet, by all workers together.
 * @param {Search} mine
 * @param {Worker} last
 */
function plan(mine, last) {
  const numbers = engine.toPlan();
  if (numbers.length === 0) return rideBest(last);
  tell(engine.SearchNote.PlanningBest);
  const { workers } = mine;
  mine.working = workers.length;
  workers.forEach((worker, index) => {
    worker.postMessage({ plan: numbers.filter((_, place) => place % workers.length === index) });
  });
}

/**
 * Takes rows that a worker planned in full. The last to be done rides the best once more.
 * @param {Search} mine
 * @param {Float64Array} rows
 * @param {Worker} worker
 */
function takePlanned(mine, rows, worker) {
  mine.waiting.push(...rows);
  mine.working -= 1;
  if (mine.working > 0) return;
  showFound(mine);
  rideBest(worker);
}

/** @param {Worker} worker */
function rideBest(worker) {
  tell(engine.SearchNote.RidingBest);
  const leading = engine.leading();
  worker.postMessage({ finals: leading, times: engine.foundTimes(leading) });
}

/** @param {Search} mine */
function showProgress({ tried, total, began }) {
  /** @type {HTMLProgressElement} */ (find('search-bar')).value = tried;
  const passed = (performance.now() - began) / 1000;
  const seconds = Math.ceil(passed * (total / Math.max(tried, 1) - 1));
  say(engine.searchLeft(tried, total, seconds));
}

/** @param {Search} mine */
function showFound(mine) {
  change(engine.takeFound(Float64Array.from(mine.waiting)));
  mine.waiting = [];
  mine.shownAt = performance.now();
}
