// @ts-check
// The laps of the comparison of all bikes: a share of them, first as they are, then with what is doubtful moved, with a pause after
// each. Workers ride them, or the page itself where the browser gives none.

import { breath } from './breath.js';
import * as engine from './engine.js';

/**
 * What is to be ridden: which job, the course as rows, the bikes as links, and which share is its own.
 * @typedef {{ job: number, rows: string, links: string[], index: number, count: number }} BikesOrder
 */
/**
 * What is said of a bike: the time of its lap, or its times in all draws.
 * @typedef {{ job: number, link: string, lap?: number, draws?: number[] }} BikeFound
 */
/** @typedef {(found: BikeFound) => void} Say */

let current = 0;

/**
 * @param {BikesOrder} order An empty one ends what is still ridden of the last.
 * @param {Say} say
 */
export async function rideBikes({ job, rows, links, index, count }, say) {
  current = job;
  const mine = links.filter((_, place) => place % count === index);
  for (const link of mine) {
    await breath();
    if (current !== job) return;
    const lap = engine.lapErrand(link, rows) ? engine.bikeLap() : undefined;
    if (lap !== undefined) say({ job, link, lap });
  }
  for (const link of mine) await draw(job, rows, link, say);
}

/**
 * @param {number} job
 * @param {string} rows
 * @param {string} link
 * @param {Say} say
 */
async function draw(job, rows, link, say) {
  if (current !== job || !engine.lapErrand(link, rows)) return;
  const draws = [];
  for (let number = 0; number < engine.bikeDraws(); number += 1) {
    await breath();
    if (current !== job) return;
    draws.push(engine.bikeDraw(number) ?? Number.NaN);
  }
  say({ job, link, draws });
}
