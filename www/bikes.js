// @ts-check
// All bikes side by side: compared once the section is in sight, their laps ridden by workers if there are any, a row at a time.

import { rideBikes } from './bikes-worker.js';
import { breath } from './breath.js';
import { crewOf } from './crew.js';
import { find } from './dom.js';
import { save } from './download.js';
import * as engine from './engine.js';
import { show } from './update.js';

const COMPARE_AFTER = 250; // milliseconds
const SHOW_EVERY = 300; // milliseconds
/** Longer than this the bikes are not worked out without a pause, milliseconds. */
const AT_ONCE = 12;

/** @typedef {import('./bikes-worker.js').BikeFound} BikeFound */

let isNear = false;
let soon = 0;
let showing = 0;
/** How often a comparison became due. */
let due = 0;
let job = 0;
const crew = crewOf(take, order);

/** The comparison once nothing has changed for a moment. */
export function bikesDue() {
  due += 1;
  if (!isNear) return;
  clearTimeout(soon);
  soon = setTimeout(compare, COMPARE_AFTER);
}

async function compare() {
  const mine = due;
  if (!(await workedOut(mine))) return;
  const update = engine.compareBikes();
  if (!update) return;
  show(update);
  // Workers are hired with the first order, which takes as long as the table.
  await breath();
  if (due === mine) order();
}

/**
 * Works all bikes out, a few at a time; whether nothing newer is due meanwhile.
 * @param {number} mine
 */
async function workedOut(mine) {
  engine.beginBikes();
  for (let until = performance.now() + AT_ONCE; engine.workOutBike(); ) {
    if (performance.now() < until) continue;
    await breath();
    if (due !== mine) return false;
    until = performance.now() + AT_ONCE;
  }
  return true;
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
  if (draws) engine.takeBikeDraws(link, Float64Array.from(draws));
  else engine.takeBikeLap(link, lap ?? Number.NaN);
  if (showing === 0) showing = setTimeout(showTaken, SHOW_EVERY);
}

function showTaken() {
  showing = 0;
  show(engine.showBikes());
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
