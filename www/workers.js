// @ts-check
// Workers, each with an engine of its own. They run the page's own script, which in a single file is written into the page.

import { find } from './dom.js';
import * as engine from './engine.js';
import { unpressed } from './press.js';

/** @typedef {import('./worker.js').Message} Message */
/** @typedef {(message: any, worker: Worker) => void} Hear */

const MOST = 4;

const refused = () => engine.searchNote(engine.SearchNote.NoWorkers);

/**
 * How many workers help.
 * @param {number} most As many as there is work for.
 */
export const helpful = (most) => Math.min(MOST, Math.max(1, navigator.hardwareConcurrency || 2), most);

/**
 * Puts workers to work and hears what they say. Throws an `Error` to be shown where the browser has none to give.
 * @param {number} count
 * @param {Omit<import('./worker.js').Order, 'index' | 'count'> | { engine: WebAssembly.Module, lap: true } | { engine: WebAssembly.Module, track: File }} order
 * @param {Hear} hear
 */
export function hire(count, order, hear) {
  try {
    const workers = employ(count, hear, (worker) => hear({ problem: refused() }, worker));
    workers.forEach((worker, index) => void worker.postMessage({ ...order, index, count }));
    return workers;
  } catch (cause) {
    throw new Error(refused(), { cause });
  }
}

/**
 * Workers that wait for an order. Throws where the browser has none to give.
 * @param {number} count
 * @param {Hear} hear
 * @param {(worker: Worker) => void} fail
 */
export const employ = (count, hear, fail) =>
  withScript((source) => Array.from({ length: count }, () => listening(new Worker(source), hear, fail)));

/**
 * What `use` gives with the address of the page's script.
 * @template T
 * @param {(source: string) => T} use
 */
function withScript(use) {
  const { src, textContent } = /** @type {HTMLScriptElement} */ (find('script'));
  if (src) return use(src);
  const source = URL.createObjectURL(new Blob([String(textContent)], { type: 'text/javascript' }));
  try {
    return use(source);
  } finally {
    URL.revokeObjectURL(source);
  }
}

/**
 * @param {Worker} worker
 * @param {Hear} hear
 * @param {(worker: Worker) => void} fail
 */
function listening(worker, hear, fail) {
  worker.onmessage = ({ data }) => unpressed(() => hear(data, worker));
  worker.onerror = () => fail(worker);
  worker.onmessageerror = () => fail(worker);
  return worker;
}
