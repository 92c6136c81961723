// @ts-check
// A share of the laps of a box of parts, then what they gain, how they are regretted and what is worth buying, with pauses in which
// it is heard whether something else is wanted. Workers ride them, or the page itself where the browser gives none.

import { breath } from './breath.js';
import * as engine from './engine.js';

const SAY_EVERY = 100; // milliseconds
/** Pieces of shopping between two pauses. */
const SHOP = 10;

/**
 * What is to be ridden: which job, the bench, the course as rows, the numbers of the laps and whether in full, and which share is
 * its own. With `times` it is asked what those gain over the first of them instead, and how `planned` ones are regretted, also round
 * other courses by their weights.
 * @typedef {{ job: number, box: string, rows: string, laps: number[], inFull: boolean, times?: number[], planned: number[], courses: [string, number][], index: number, count: number }} BoxOrder
 */
/**
 * What it says: rows of laps, what laps gain, the first on every tyre, by how much they are regretted, what is worth buying, or that nothing can be ridden.
 * @typedef {{ job: number, laps?: number[], gains?: Float64Array, onTyres?: Float64Array, regrets?: Float64Array, offers?: [string, Float64Array][], none?: true }} BoxFound
 */
/** @typedef {(found: BoxFound) => void} Say */

let current = 0;

/**
 * @param {BoxOrder} order
 * @param {Say} say
 */
export async function rideBox(order, say) {
  const { job, box, rows, index, count, times, courses } = order;
  current = job;
  await breath();
  if (!engine.boxErrand(box, rows)) return say({ job, none: true });
  if (!times) return ride(order, say);
  const laps = Uint32Array.from(order.laps);
  if (index === 0) say({ job, onTyres: engine.boxOnTyres(laps[0]) });
  for (const [rows, weight] of courses) engine.boxCourse(rows, weight);
  if (index === 0) say({ job, gains: engine.boxGains(laps, Float64Array.from(times)) });
  if (index === 0 && (await goOn(job, () => engine.boxDoubt(Uint32Array.from(order.planned)))))
    say({ job, regrets: engine.boxRegrets() });
  if (index === count - 1 && (await goOn(job, () => engine.boxShop(laps[0], times[0], SHOP))))
    say({ job, offers: engine.boxOffers() });
}

/**
 * @param {BoxOrder} order
 * @param {Say} say
 */
async function ride({ job, laps, inFull, index, count }, say) {
  /** @type {number[]} */
  let found = [];
  let saidAt = performance.now();
  for (let place = index; place < laps.length; place += count) {
    found.push(...engine.boxLap(laps[place], inFull));
    const isLast = place + count >= laps.length;
    if (!isLast && performance.now() - saidAt < SAY_EVERY) continue;
    say({ job, laps: found });
    found = [];
    await breath();
    if (current !== job) return;
    saidAt = performance.now();
  }
}

/**
 * Goes on until nothing is left to do; whether nothing else was wanted meanwhile.
 * @param {number} job
 * @param {() => boolean} does
 */
async function goOn(job, does) {
  while (does()) {
    await breath();
    if (current !== job) return false;
  }
  return true;
}
