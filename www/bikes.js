// @ts-check
// All bikes side by side: compared once the section is in sight, their laps ridden by workers, a row at a time.

import { find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { show } from './update.js';
import { helpful, hire } from './workers.js';

const COMPARE_AFTER = 250; // milliseconds

/** @typedef {import('./bikes-worker.js').BikeFound} BikeFound */

let isNear = false;
let soon = 0;
let job = 0;
/** Workers that ride the laps, once they are asked for; none where the browser gives none. @type {Worker[] | null} */
let crew = null;

/** The comparison once nothing has changed for a moment. */
export function bikesDue() {
  if (!isNear) return;
  clearTimeout(soon);
  soon = setTimeout(compare, COMPARE_AFTER);
}

function compare() {
  const update = engine.compareBikes();
  if (!update) return;
  show(update);
  order();
}

/** Sends the workers round the course with every bike; what they still do for an earlier order they leave. */
function order() {
  job += 1;
  const ordered = engine.bikesOrder();
  if (!ordered) return;
  crew ??= hired();
  const [rows, links] = ordered;
  const count = crew.length;
  crew.forEach((worker, index) => void worker.postMessage({ job, rows, links, index, count }));
}

/** @returns {Worker[]} */
function hired() {
  try {
    return hire(helpful(2), { bytes: engine.bytes(), lap: true }, hear);
  } catch {
    return [];
  }
}

/** @param {BikeFound | import('./worker.js').Message} message */
function hear(message) {
  if ('problem' in message) dismiss();
  else if ('link' in message && message.job === job) take(message);
}

function dismiss() {
  for (const worker of crew ?? []) worker.terminate();
  crew = [];
}

/** @param {BikeFound} found */
function take({ link, lap, draws }) {
  const update = draws ? engine.takeBikeDraws(link, Float64Array.from(draws)) : engine.takeBikeLap(link, lap ?? Number.NaN);
  if (update) show(update);
}

function saveTable() {
  const text = engine.bikesCsv();
  if (text) save('bikes.csv', text, 'text/csv');
}

/** Compares once the section comes near. */
export function watchBikes() {
  const watch = new IntersectionObserver(
    (entries) => {
      isNear = entries.at(-1)?.isIntersecting ?? false;
      bikesDue();
    },
    { rootMargin: '300px' },
  );
  watch.observe(find('bikes'));
  find('save-bikes').addEventListener('click', saveTable);
}
