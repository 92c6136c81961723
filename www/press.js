// @ts-check
// Nothing moves beneath a finger: what comes of itself while something is being pressed waits until the press is over.

const PRESSED = ':is(a, button, summary, label, select)';
const CLICK_WITHIN = 100; // milliseconds after the finger is lifted
const LONGEST = 2000; // milliseconds

let ends = 0;
/** @type {(() => void)[]} */
const waiting = [];

/**
 * Does something now, or once nothing is being pressed, in the order it was asked for.
 * @param {() => void} act
 */
export function unpressed(act) {
  if (ends) waiting.push(act);
  else act();
}

export function mindPresses() {
  addEventListener('pointerdown', ({ target }) => {
    if (target instanceof Element && target.closest(PRESSED)) endIn(LONGEST);
  });
  for (const lifted of ['pointerup', 'pointercancel']) addEventListener(lifted, () => ends && endIn(CLICK_WITHIN));
  addEventListener('click', () => ends && endIn(0));
}

/** @param {number} pause */
function endIn(pause) {
  clearTimeout(ends);
  ends = setTimeout(end, pause);
}

function end() {
  ends = 0;
  for (const act of waiting.splice(0)) act();
}
