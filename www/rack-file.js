// @ts-check
// A rack as a text: {"remount": "rack", "version": 1, "bikes": [{"name": …, "parts": {"rings": "44/32", …}, "not-mine": {…}}], "box": …}.

import * as engine from './engine.js';
import { parsed } from './json.js';

/** @typedef {import('./engine.js').FiledBike} FiledBike */
/** @typedef {Record<string, unknown>} Entries */

export const KIND = 'rack';
const VERSION = 1;

/**
 * What a text calls itself, of whatever version.
 * @param {string} text
 */
export const kindOf = (text) => entriesOf(parsed(text)).remount;

/**
 * The bikes that a text holds and the names in it that say nothing, or why it is no rack.
 * @param {string} text
 * @returns {{ fault: engine.RackFileFault } | { bikes: FiledBike[], box: string, strange: string[] }}
 */
export function readRack(text) {
  const { remount, version, bikes, box = '', ...rest } = entriesOf(parsed(text));
  if (remount !== KIND) return { fault: engine.RackFileFault.Foreign };
  if (version !== VERSION) return { fault: engine.RackFileFault.OtherVersion };
  if (!Array.isArray(bikes)) return { fault: engine.RackFileFault.Foreign };
  const strange = Object.keys(rest);
  return { bikes: bikes.map((bike) => bikeOf(bike, strange)), box: isText(box) ? String(box) : '', strange };
}

/**
 * Bikes written as a text, with what lies in the box of parts where anything does.
 * @param {FiledBike[]} bikes
 * @param {string} [box]
 */
export const written = (bikes, box) =>
  JSON.stringify({ remount: KIND, version: VERSION, bikes: bikes.map(plain), box: box || undefined }, null, 1);

/** @param {FiledBike} bike */
export const plain = ([name, order, parts, others]) => ({
  name,
  order,
  parts: Object.fromEntries(parts),
  'not-mine': Object.fromEntries(others),
});

/**
 * @param {unknown} bike
 * @param {string[]} strange Names that say nothing, added to.
 * @returns {FiledBike}
 */
export function bikeOf(bike, strange) {
  const { name, order, parts, 'not-mine': others, ...rest } = entriesOf(bike);
  for (const name of Object.keys(rest)) strange.push(name);
  return [isText(name) ? String(name) : '', Number(order), texts(parts, strange), texts(others, strange)];
}

/**
 * Names and texts of parts; a number is what would be typed for it, and anything else no text.
 * @param {unknown} parts
 * @param {string[]} strange Names that say nothing, added to.
 * @returns {[string, string][]}
 */
export function texts(parts, strange) {
  const all = Object.entries(entriesOf(parts));
  for (const [name, text] of all) if (!isText(text)) strange.push(name);
  return all.filter(([, text]) => isText(text)).map(([name, text]) => [name, String(text)]);
}

/** @param {unknown} text */
const isText = (text) => typeof text === 'string' || typeof text === 'number';

/**
 * What an object holds; nothing where it is none.
 * @param {unknown} value
 * @returns {Entries}
 */
export const entriesOf = (value) =>
  typeof value === 'object' && !Array.isArray(value) ? { .../** @type {object} */ (value) } : {};
