// @ts-check
// The workshop sheet as a text for a message.

import { address, home } from './address.js';
import { all, field, find } from './dom.js';
import * as engine from './engine.js';
import { settleLap } from './lap.js';
import { show } from './update.js';

const LINES = 'header p:not(.blanks), h3, h4, dl > div, tr, li, p.doubt, footer p';
const BLANK = '____';

/** Where the link of the sheet belongs, and its code; a file on this machine is no address for anybody else. */
export function showHome() {
  for (const place of all('[data-base]')) place.textContent = home() || String(place.dataset.base);
  for (const place of all('[data-code]:empty')) if (home()) place.innerHTML = engine.codeOf(address(), true);
}

/** @param {Element} element */
const words = (element) => String(element.textContent).trim();

/**
 * One line of the sheet.
 * @param {Element} element
 */
function line(element) {
  if (element.matches('h4')) return `- ${words(element)} -`;
  if (element.matches('h3')) return `\n= ${words(element)} =`;
  if (element.matches('dl > div')) return [...element.children].map((part) => words(part) || BLANK).join(': ');
  if (element instanceof HTMLTableRowElement) return `  ${[...element.cells].map(words).join(' | ')}`;
  return (element.matches('.ticked li') ? '[ ] ' : '') + words(element);
}

const asText = () => [...find('sheet-page').querySelectorAll(LINES)].map(line).join('\n');

/** The sheet with the lap worked out. */
export function copySheet() {
  settleLap();
  show(engine.rest());
  return copy(asText());
}

/** A few lines of it for a message. */
export function copyShort() {
  settleLap();
  return copy(engine.shortSheet(home() && address()));
}

/**
 * Copies a text, or marks it where the clipboard is refused.
 * @param {string} text
 */
async function copy(text) {
  const said = find('sheet-copied');
  try {
    await navigator.clipboard.writeText(text);
    find('sheet-text').hidden = true;
    said.textContent = String(said.dataset.copied);
  } catch {
    offer(text);
    said.textContent = String(said.dataset.refused);
  }
}

/** @param {string} text */
function offer(text) {
  const box = field('sheet-text');
  box.value = text;
  box.hidden = false;
  box.focus();
  box.select();
}
