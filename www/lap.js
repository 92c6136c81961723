// @ts-check
// The lap takes longer than the rest of the page together: it is worked out after everything else, where it is in sight, and by
// workers where it is ridden on a reserve. “Ride or run?” takes the price of a joule from such a lap, so that it is due there too.

import { crewOf } from './crew.js';
import { find } from './dom.js';
import * as engine from './engine.js';
import { show } from './update.js';

const SETTLE_AFTER = 300; // milliseconds
const SHOW_EVERY = 400; // milliseconds
const NEAR = '600px';
/** What takes nothing but its price from a lap. */
const PRICED = 'ride';

/** @typedef {import('./lap-worker.js').LapFound} LapFound */

/** What shows the lap and is in sight or nearly so. @type {Set<Element>} */
const near = new Set();
let soon = 0;
let later = 0;

const crew = crewOf(take, settleLap);
/** What the job ordered last has brought so far. @type {{ plans: Float64Array[], waiting: number[], done: number, shownAt: number }} */
let found = { plans: [], waiting: [], done: 0, shownAt: 0 };

/** The lap in the next task, and until it has settled once nothing has changed for a while. */
export function lapDue() {
  if (near.size === 0) return;
  if (soon === 0) soon = setTimeout(workOutSoon);
  clearTimeout(later);
  later = setTimeout(settleLater, SETTLE_AFTER);
}

function workOutSoon() {
  soon = 0;
  const rows = engine.lapOrder();
  if (rows !== undefined) order(rows);
  else if (isShown()) workOut(false);
}

/** Where workers ride the lap they settle it too. */
function settleLater() {
  if (crew.isGone() || (isShown() && engine.lapOrder() === undefined)) settleLap();
}

/** Whether the lap itself is in sight, and not only what takes its price. */
const isShown = () => [...near].some(({ id }) => id !== PRICED);

/** The lap now, until it has settled. */
export function settleLap() {
  workOut(true);
}

/** @param {boolean} settled */
function workOut(settled) {
  const update = engine.lap(settled);
  if (update) show(update);
}

/**
 * Sends the workers round the course of these rows.
 * @param {string} rows
 */
function order(rows) {
  found = { plans: [], waiting: [], done: 0, shownAt: 0 };
  crew.send({ link: engine.link(), rows });
}

/** @param {LapFound} message */
function take({ plan, ofB, draw }) {
  if (plan) found.plans[Number(ofB)] = plan;
  if (draw) found.waiting.push(...draw);
  if (draw) found.done += 1;
  const [a, b] = found.plans;
  if (!a || !b) return;
  if (plan) return shown(engine.takePlans(a, b));
  const isLast = found.done === engine.lapDraws();
  if (isLast || performance.now() - found.shownAt > SHOW_EVERY) {
    found.shownAt = performance.now();
    shown(engine.takeDraws(Float64Array.from(found.waiting.splice(0))));
  }
}

/** @param {engine.Update | null} update */
function shown(update) {
  if (update) show(update);
}

/** Works the lap out once something that shows it comes near. */
export function watchLap() {
  const watch = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) near[isIntersecting ? 'add' : 'delete'](target);
      lapDue();
    },
    { rootMargin: NEAR },
  );
  for (const id of ['lap', 'sheet', PRICED]) watch.observe(find(id));
}
