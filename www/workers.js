// @ts-check
// Workers, each with an engine of its own. They are made from the page's own script: a page opened from disk may not load
// one from beside it.

import { find } from './dom.js';
import * as engine from './engine.js';

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
 * @param {Omit<import('./worker.js').Order, 'index' | 'count'> | { bytes: Uint8Array, lap: true }} order
 * @param {Hear} hear
 */
export function hire(count, order, hear) {
  const script = new Blob([String(find('script').textContent)], { type: 'text/javascript' });
  const source = URL.createObjectURL(script);
  try {
    const workers = Array.from({ length: count }, () => listening(new Worker(source), hear));
    workers.forEach((worker, index) => void worker.postMessage({ ...order, index, count }));
    return workers;
  } catch (cause) {
    throw new Error(refused(), { cause });
  } finally {
    URL.revokeObjectURL(source);
  }
}

/**
 * @param {Worker} worker
 * @param {Hear} hear
 */
function listening(worker, hear) {
  worker.onmessage = ({ data }) => hear(data, worker);
  worker.onerror = () => hear({ problem: refused() }, worker);
  return worker;
}
