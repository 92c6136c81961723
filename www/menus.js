// @ts-check
// Menus that open over the page, each beside its button.

import { find } from './dom.js';

/** Between a button and its menu, and the menu and the window, CSS pixels. */
const GAP = 4;

/**
 * Below its button, or above where there is more room.
 * @param {HTMLElement} menu
 * @param {HTMLElement} button
 */
export function place({ style, offsetWidth, offsetHeight }, button) {
  const { left, top, bottom } = button.getBoundingClientRect();
  const below = bottom + GAP + offsetHeight < innerHeight || top < offsetHeight;
  style.left = `${scrollX + Math.max(GAP, Math.min(left, document.documentElement.clientWidth - offsetWidth - GAP))}px`;
  style.top = `${scrollY + (below ? bottom + GAP : Math.max(GAP - scrollY, top - GAP - offsetHeight))}px`;
}

/** The choice of units opens beside its button. */
export function offerUnits() {
  const menu = find('units');
  menu.addEventListener('toggle', () => menu.offsetWidth && place(menu, find('units-chosen')));
}
