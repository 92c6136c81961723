// @ts-check
// The workshop sheet as a text for a message.

import { home } from './address.js';
import { all, field, find } from './dom.js';
import * as engine from './engine.js';
import { settleLap } from './lap.js';
import { show } from './update.js';

const LINES = 'header p:not(.blanks), h3, h4, dl > div, tr, li, p.doubt, footer p';
const BLANK = '____';

/** Where the link of the sheet belongs; a file on this machine is no address for anybody else. */
export function showHome() {
  const isFile = location.protocol === 'file:';
  for (const place of all('[data-base]')) {
    place.textContent = isFile ? String(place.dataset.base) : home();
  }
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

/** Copies the sheet with the lap worked out, or marks its text where the clipboard is refused. */
export async function copySheet() {
  settleLap();
  show(engine.rest());
  const text = asText();
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
