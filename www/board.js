// @ts-check
// The board of decisions: read out once typing rests, and followed by the navigation while it is out of sight.

import { all, find } from './dom.js';

const SPOKEN_AFTER = 1200; // milliseconds
const HALF = 0.5;

let speaking = 0;

/** Reads out what has changed, and what it comes to, once nothing has changed for a while. */
export function spokenSoon() {
  clearTimeout(speaking);
  speaking = setTimeout(() => {
    const change = find('board-change').textContent;
    if (change) find('board-spoken').textContent = `${change} ${find('board-says').textContent}`;
  }, SPOKEN_AFTER);
}

/** Marks the section in sight in the navigation, and says there what changes while most of the board is out of sight. */
export function watchBoard() {
  const board = new IntersectionObserver(
    ([entry]) => {
      document.documentElement.toggleAttribute('data-board-away', entry.intersectionRatio < HALF);
    },
    { threshold: HALF },
  );
  board.observe(/** @type {Element} */ (document.querySelector('.board')));
  const middle = new IntersectionObserver(
    (entries) => {
      for (const { target, isIntersecting } of entries) if (isIntersecting) markCurrent(target.id || 'bench');
    },
    { rootMargin: '-45% 0px -54% 0px' },
  );
  for (const section of all('main > section, .bench')) middle.observe(section);
}

/** Keeps the strip above a keyboard that lies over the page, where the browser does not make the page smaller for it. */
export function keepAboveKeyboard() {
  const seen = window.visualViewport;
  const follow = () => {
    const isWhole = seen?.scale === 1;
    const covered = isWhole ? Math.max(0, innerHeight - seen.height - seen.offsetTop) : 0;
    document.documentElement.style.setProperty('--keyboard', `${Math.round(covered)}px`);
  };
  for (const change of ['resize', 'scroll']) seen?.addEventListener(change, follow);
}

/** @param {string} id */
function markCurrent(id) {
  for (const link of all('.strip nav a')) {
    if (link.getAttribute('href') === `#${id}`) link.setAttribute('aria-current', 'true');
    else link.removeAttribute('aria-current');
  }
}
