// @ts-check
// The lap takes longer than the rest of the page together: it is worked out after everything else, and by workers where there are
// any; only a first look at a lap at an even power is the page's. The board tells it on the first screen, so that it is due
// whatever is in sight; where only the board tells it, workers begin a moment after the last change and wait before they draw.

import { breath } from './breath.js';
import { crewOf } from './crew.js';
import { find } from './dom.js';
import * as engine from './engine.js';
import { unhold } from './fragments.js';
import { unpressed } from './press.js';
import { show } from './update.js';

const SETTLE_AFTER = 300; // milliseconds
const SHOW_EVERY = 400; // milliseconds
const NEAR = '600px';
/** For the board alone: after a change, and before drawing. */
const [BOARD_AFTER, DRAW_AFTER] = [250, 1200]; // milliseconds

/** @typedef {import('./lap-worker.js').LapFound} LapFound */

/** What shows the lap and is in sight or nearly so. @type {Set<Element>} */
const near = new Set();
let soon = 0;
let later = 0;
/** How often the lap became another one. */
let due = 0;

const crew = crewOf(take, settleHere);
/**
 * The job ordered last, since when the lap is what it is, and what has come of it so far.
 * @type {{ due: number, wait: number, plans: Float64Array[], waiting: number[], done: number, shownAt: number }}
 */
let found = { due: -1, wait: 0, plans: [], waiting: [], done: 0, shownAt: 0 };

/** The lap in the next task, and until it has settled once nothing has changed for a while. */
export function lapDue() {
  due += 1;
  if (soon === 0) soon = setTimeout(unpressed, near.size > 0 ? 0 : BOARD_AFTER, workOutSoon);
  clearTimeout(later);
  later = setTimeout(unpressed, SETTLE_AFTER, settleLater);
}

function workOutSoon() {
  soon = 0;
  const rows = engine.lapOrder();
  if (rows !== undefined) order(rows);
  else workOut(false);
}

/** Where workers ride the lap on a reserve they settle it too; one at an even power they ride now. */
function settleLater() {
  if (crew.isGone()) return settleHere();
  const rows = engine.evenOrder();
  if (rows !== undefined) order(rows, 0);
  if (crew.isGone()) settleHere();
}

/** Where there are no workers an even lap is settled a ride at a time. */
async function settleHere() {
  const mine = due;
  while (engine.settleOn()) {
    await breath();
    if (due !== mine) return;
  }
  settleLap();
}

/** The lap now, until it has settled. */
export function settleLap() {
  workOut(true);
}

/** @param {boolean} settled */
function workOut(settled) {
  shown(engine.lap(settled));
  if (settled) unhold();
}

/**
 * Sends the workers round the course of these rows.
 * @param {string} rows
 * @param {number} [wait]
 */
function order(rows, wait = near.size > 0 ? 0 : DRAW_AFTER) {
  found = { due, wait, plans: [], waiting: [], done: 0, shownAt: 0 };
  crew.send({ link: engine.understood(), rows, wait });
}

/** Whether workers ride this very lap as fast as they can. */
const isRidden = () => found.due === due && found.wait === 0 && !crew.isGone();

/** @param {LapFound} message */
function take({ plan, ofB, draw, even }) {
  if (even) return shown(engine.takeEven(even));
  if (plan) found.plans[Number(ofB)] = plan;
  if (draw) found.waiting.push(...draw);
  if (draw) found.done += 1;
  const [a, b] = found.plans;
  if (!a || !b) return;
  if (plan) return shown(engine.takePlans(a, b));
  const isLast = found.done === engine.lapDraws();
  // The board alone waits for the last: it only tells how sure the lap is.
  if (isLast || (near.size > 0 && performance.now() - found.shownAt > SHOW_EVERY)) {
    found.shownAt = performance.now();
    shown(engine.takeDraws(Float64Array.from(found.waiting.splice(0))));
    if (isLast) unhold();
  }
}

/** @param {engine.Update | null} update */
function shown(update) {
  if (update) show(update);
}

/** Works the lap out at once where more than the board shows it. */
export function watchLap() {
  const watch = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) near[isIntersecting ? 'add' : 'delete'](target);
      if (near.size === 0) return;
      // The section says how far the lap is, and the first screen the same.
      unhold();
      if (!isRidden()) lapDue();
    },
    { rootMargin: NEAR },
  );
  for (const id of ['lap', 'sheet', 'ride']) watch.observe(find(id));
}
