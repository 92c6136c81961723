// @ts-check
// The lap takes longer than the rest of the page together: it is worked out after everything else, where it is in sight.

import { find } from './dom.js';
import * as engine from './engine.js';
import { show } from './update.js';

const SETTLE_AFTER = 300; // milliseconds
const NEAR = '600px';

/** What shows the lap and is in sight or nearly so. @type {Set<Element>} */
const near = new Set();
let soon = 0;
let later = 0;

/** The lap in coarse steps in the next task, and until it has settled once nothing has changed for a while. */
export function lapDue() {
  if (near.size === 0) return;
  if (soon === 0) soon = setTimeout(workOutSoon);
  clearTimeout(later);
  later = setTimeout(settleLap, SETTLE_AFTER);
}

function workOutSoon() {
  soon = 0;
  workOut(false);
}

/** The lap now, until it has settled. */
export const settleLap = () => workOut(true);

/** @param {boolean} settled */
function workOut(settled) {
  const update = engine.lap(settled);
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
  for (const id of ['lap', 'sheet']) watch.observe(find(id));
}
