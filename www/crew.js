// @ts-check
// Workers that ride laps, one order after another: what they still do for an earlier one they leave.

import * as engine from './engine.js';
import { helpful, hire } from './workers.js';

const MOST = 2;

/**
 * A crew that is hired with its first order.
 * @template {{ job: number }} Found
 * @param {(found: Found) => void} hear What is found for the order that was given last.
 * @param {() => void} [gone] Once the browser gives no workers, or takes them away.
 */
export function crewOf(hear, gone = () => {}) {
  /** None where the browser gives none. @type {Worker[] | null} */
  let workers = null;
  let job = 0;

  /** @param {Found | import('./worker.js').Message} message */
  function listen(message) {
    if ('problem' in message) {
      for (const worker of workers ?? []) worker.terminate();
      workers = [];
      gone();
    } else if ('job' in message && message.job === job) {
      hear(message);
    }
  }

  /** @returns {Worker[]} */
  function hired() {
    try {
      return hire(helpful(MOST), { engine: engine.compiled, lap: true }, listen);
    } catch {
      return [];
    }
  }

  return {
    /** Whether there are none to be had. */
    isGone: () => workers?.length === 0,
    /** What is still found for the last order is no longer wanted. */
    recall() {
      job += 1;
    },
    /** @param {object} order */
    send(order) {
      workers ??= hired();
      job += 1;
      const count = workers.length;
      workers.forEach((worker, index) => void worker.postMessage({ ...order, job, index, count }));
    },
  };
}
