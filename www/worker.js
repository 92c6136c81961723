// @ts-check
// What workers do. A worker's part of the search: it opens the same bench, rides its share of the set-ups and says what it finds as it goes.

import { rideBikes } from './bikes-worker.js';
import { rideBox } from './box-worker.js';
import * as engine from './engine.js';
import { rideLap } from './lap-worker.js';
import { readForPage } from './track.js';
import { warm } from './warm.js';

/**
 * What a worker is told first: the engine, the bench, the course as rows, and which share is its own.
 * @typedef {{ engine: WebAssembly.Module, link: string, rows: string, index: number, count: number }} Order
 */
/**
 * What it says: rows of some set-ups and how many those are, rows planned in full, the answer to `finals`, or why it cannot go on.
 * @typedef {{ rows: Float64Array, tried: number, done: boolean }} Found
 * @typedef {Found | { finals: Float64Array } | { planned: Float64Array } | { problem: string }} Message
 */

const MESSAGE_EVERY = 60; // milliseconds
const FIRST_BATCH = 4;
const LARGEST_BATCH = 500;

export function work() {
  /** @type {Promise<unknown>} */
  let started = Promise.resolve();
  addEventListener('message', async ({ data }) => {
    if (data.packed) return warm(data.packed).catch(refuse);
    if (data.track) return readForPage(data).catch(refuse);
    if (data.finals) return say({ finals: engine.finals(data.finals, data.times) });
    if (data.plan) return say({ planned: engine.huntPlans(data.plan) });
    if (data.box) return started.then(() => rideBox(data, say));
    if (data.links) return started.then(() => rideBikes(data, say));
    if (data.job) return started.then(() => rideLap(data));
    if (data.lap) started = engine.startWith(data.engine).catch(refuse);
    else search(data);
  });
}

/** @param {Error} problem */
const refuse = (problem) => say({ problem: problem.message });

/** @param {Message | import('./bikes-worker.js').BikeFound | import('./box-worker.js').BoxFound} message */
const say = (message) => postMessage(message);

/** @param {Order} order */
async function search(order) {
  try {
    await prepare(order);
  } catch (problem) {
    return refuse(/** @type {Error} */ (problem));
  }
  let size = FIRST_BATCH;
  while (size > 0) size = ride(size);
}

/** @param {Order} order */
async function prepare({ engine: module, link, rows, index, count }) {
  await engine.startWith(module);
  engine.open(link);
  if (!engine.hunt(rows, index, count)) throw new Error(engine.searchNote(engine.SearchNote.NoLap));
}

/**
 * Rides the next few set-ups. Gives back how many to ride next, so that messages come evenly; none when all are done.
 * @param {number} size
 */
function ride(size) {
  const began = performance.now();
  const rows = engine.huntOn(size);
  const took = Math.max(1, performance.now() - began);
  const tried = rows.length / engine.rowLength();
  say({ rows, tried, done: tried < size });
  if (tried < size) return 0;
  return Math.min(LARGEST_BATCH, Math.max(1, Math.round((size * MESSAGE_EVERY) / took)));
}
