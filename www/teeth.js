// @ts-check
// Rings and sprockets a tooth up or down: by the arrow keys in their fields, and by buttons for fingers while one has the focus.

import { around, find } from './dom.js';
import * as engine from './engine.js';
import { enter, flush } from './fields.js';

const TOOTHED = '#rings-a, #rings-b, #cassette-a, #cassette-b';

export function stepTeeth() {
  const bar = find('teeth');
  document.addEventListener('keydown', (event) => {
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    const field = by && !event.altKey && around(event, TOOTHED);
    if (!by || !(field instanceof HTMLInputElement)) return;
    event.preventDefault();
    step(field, by);
  });
  document.addEventListener('focusin', (event) => {
    const field = around(event, TOOTHED);
    bar.hidden = !field;
    field?.closest('.cell')?.append(bar);
  });
  // The field keeps the focus, and with it the place in its text.
  bar.addEventListener('pointerdown', (event) => event.preventDefault());
  bar.addEventListener('click', (event) => {
    const { by, along } = around(event, 'button')?.dataset ?? {};
    const field = bar.parentElement?.querySelector('input');
    if (field && by) step(field, Number(by));
    if (field && along) select(field, engine.nextNumber(field.value, at(field), Number(along)));
  });
}

/** @param {HTMLInputElement} field */
const at = (field) =>
  field.selectionStart === 0 && field.selectionEnd === field.value.length ? 0 : Number(field.selectionStart);

/**
 * @param {HTMLInputElement} field
 * @param {number} by
 */
function step(field, by) {
  const stepped = engine.stepTooth(field.value, at(field), by);
  if (!stepped) return;
  const [text, from, to] = stepped;
  field.value = text;
  select(field, [from, to]);
  enter(field.id, text);
  flush();
}

/**
 * @param {HTMLInputElement} field
 * @param {[number, number] | undefined} place
 */
function select(field, place) {
  if (place) field.setSelectionRange(...place);
}
