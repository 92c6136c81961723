// @ts-check
// The buttons: `data-act` names what one does, `data-write="field=value"` what one puts into a field.

import { around, field } from './dom.js';
import * as engine from './engine.js';
import { flush, write } from './fields.js';
import { share } from './link.js';
import { printSheet } from './print.js';
import { copySheet, copyShort } from './sheet.js';
import { change } from './update.js';

/** What the page does itself; every other act is the engine's. @type {Record<string, () => void>} */
const OWN = { share, print: printSheet, 'copy-sheet': copySheet, 'copy-short': copyShort };

export function answerButtons() {
  document.addEventListener('click', (event) => {
    const button = around(event, '[data-act], [data-write]');
    if (button?.dataset.write) writeFrom(button, button.dataset.write);
    if (button?.dataset.act) act(button.dataset.act);
  });
}

/** @param {string} name */
function act(name) {
  flush();
  const own = OWN[name];
  if (own) return own();
  change(engine.act(name));
  const about = /^mine:(.*)/.exec(name)?.[1];
  // Such a button is gone when it is done: on with the field that it was about.
  if (about) field(about)?.focus();
}

/**
 * Puts a value into a field as if it had been typed there. A button that is then gone leaves the focus to the field.
 * @param {HTMLElement} button
 * @param {string} order
 */
function writeFrom(button, order) {
  const [key] = order.split('=', 1);
  flush();
  write(key, order.slice(key.length + 1));
  flush();
  engine.pause();
  if (!button.isConnected) field(key).focus();
}
