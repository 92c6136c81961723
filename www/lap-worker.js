// @ts-check
// A worker's part of the lap: a plan of A or B, or of both where it works alone, and its share of the draws by which bands are found;
// or both laps at an even power. Between two rides it hears whether something else is wanted.

import { breath } from './breath.js';
import * as engine from './engine.js';

/**
 * What a worker is told for a lap: which job, the bench, the course as rows, and which share is its own.
 * It may be told to wait before it draws: what nobody looks at yet need not keep the machine busy.
 * @typedef {{ job: number, link: string, rows: string, index: number, count: number, wait: number }} LapOrder
 */
/**
 * What it says: a plan, or a draw; or both laps at an even power.
 * @typedef {{ job: number, plan?: Float64Array, ofB?: boolean, draw?: Float64Array, even?: Float64Array }} LapFound
 */

let current = 0;

/** @param {LapOrder} order */
export async function rideLap({ job, link, rows, index, count, wait }) {
  current = job;
  if (!engine.lapErrand(link, rows)) {
    if (index === 0 && engine.evenErrand(link, rows)) await rideEven(job);
    return;
  }
  for (const ofB of [false, true]) {
    if (count === 1 || Number(ofB) === index) say({ job, plan: engine.lapPlan(ofB), ofB });
  }
  await new Promise((done) => setTimeout(done, wait));
  for (let number = index; number < engine.lapDraws(); number += count) {
    await breath();
    if (current !== job) return;
    say({ job, draw: engine.lapDraw(number) });
  }
}

/** @param {number} job */
async function rideEven(job) {
  while (engine.evenOn()) {
    await breath();
    if (current !== job) return;
  }
  say({ job, even: engine.evenLaps() });
}

/** @param {LapFound} found */
const say = (found) => postMessage(found);
