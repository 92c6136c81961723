// @ts-check
// All bikes side by side: compared once the section is in sight, their laps ridden by workers if there are any, a row at a time.

import { rideBikes } from './bikes-worker.js';
import { crewOf } from './crew.js';
import { find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { show } from './update.js';

const COMPARE_AFTER = 250; // milliseconds

/** @typedef {import('./bikes-worker.js').BikeFound} BikeFound */

let isNear = false;
let soon = 0;
let job = 0;
const crew = crewOf(take, order);

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

/** Sends the workers round the course with every bike. Where there are none the page goes itself, a lap at a time. */
function order() {
  const [rows, links] = engine.bikesOrder() ?? ['', []];
  if (links.length > 0) crew.send({ rows, links });
  else crew.recall();
  job += 1;
  if (crew.isGone()) rideBikes({ job, rows, links, index: 0, count: 1 }, take);
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
