// @ts-check
// A worker's part of the comparison of all bikes: every so many laps, first as they are, then with what is doubtful moved.

import { breath } from './breath.js';
import * as engine from './engine.js';

/**
 * What a worker is told: which job, the course as rows, the bikes as links, and which share is its own.
 * @typedef {{ job: number, rows: string, links: string[], index: number, count: number }} BikesOrder
 */
/**
 * What it says of a bike: the time of its lap, or its times in all draws.
 * @typedef {{ job: number, link: string, lap?: number, draws?: number[] }} BikeFound
 */

let current = 0;

/** @param {BikesOrder} order */
export async function rideBikes({ job, rows, links, index, count }) {
  current = job;
  const mine = links.filter((_, place) => place % count === index);
  for (const link of mine) {
    await breath();
    if (current !== job) return;
    const lap = engine.lapErrand(link, rows) ? engine.bikeLap() : undefined;
    if (lap !== undefined) say({ job, link, lap });
  }
  for (const link of mine) await draw(job, rows, link);
}

/**
 * @param {number} job
 * @param {string} rows
 * @param {string} link
 */
async function draw(job, rows, link) {
  if (current !== job || !engine.lapErrand(link, rows)) return;
  const draws = [];
  for (let number = 0; number < engine.bikeDraws(); number += 1) {
    await breath();
    if (current !== job) return;
    draws.push(engine.bikeDraw(number) ?? Number.NaN);
  }
  say({ job, link, draws });
}

/** @param {BikeFound} found */
const say = (found) => postMessage(found);
