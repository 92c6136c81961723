// @ts-check
// What is out of sight is written a frame after what is in sight is painted.

import { breath } from './breath.js';
import { all } from './dom.js';
import * as engine from './engine.js';
import { showFragments } from './fragments.js';
import { labelAway, labelIn } from './pictures.js';
import { unpressed } from './press.js';
import { showHome } from './sheet.js';

const NEAR = '200px';

let following = 0;
/** Whether all sections have been written once. */
let isWritten = false;

/** What is out of sight follows with the next frame, unless there is something newer to show by then. */
export function awayDue() {
  if (!isWritten) return;
  cancelAnimationFrame(following);
  following = requestAnimationFrame(() => unpressed(follow));
}

function follow() {
  cancelAnimationFrame(following);
  following = 0;
  showFragments(engine.writeUnfolded());
  showHome();
  labelAway();
}

/** Shows the sections and writes them for the first time, one after the other: together they would keep a slow phone busy. */
export async function writeSections() {
  for (const section of all('main > section')) {
    section.removeAttribute('hidden');
    showFragments(engine.writeUnfolded(section.id));
    labelIn(section);
    await breath();
  }
  isWritten = true;
  follow();
}

/** Tells the engine what is in sight or nearly so; what comes into sight is written at once. */
export function watchSections() {
  const watch = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) engine.see(target.id, isIntersecting);
      if (following && entries.some(({ isIntersecting }) => isIntersecting)) follow();
    },
    { rootMargin: NEAR },
  );
  for (const section of all('main > section')) {
    engine.see(section.id, false);
    watch.observe(section);
  }
}

/** What is typed is shown in the next frame, too, and comes first: this hears of it after the fields. */
export function giveWay() {
  document.addEventListener('input', () => following && awayDue());
}
