// @ts-check
// The engine is unpacked and compiled by a worker, which also opens the demo with it before it hands it over: browsers share what
// they compile, and many compile a function when it is called first. The page then starts with what is compiled already.

import * as engine from './engine.js';
import { employ } from './workers.js';

/** A worker that has not begun by then after it was told to, or not ended by then after it has begun, does not work, milliseconds. */
const [BEGINS_IN, ENDS_IN] = [5000, 60_000];

/**
 * The engine as a worker compiles it, nothing where none can.
 * @param {engine.Packed} packed
 * @param {Promise<void>} due
 * @returns {Promise<WebAssembly.Module | undefined>}
 */
export function compiledByWorker(packed, due) {
  return new Promise((done) => {
    let waiting = 0;
    let isOver = false;
    /**
     * @param {Worker} [worker]
     * @param {WebAssembly.Module} [compiled]
     */
    function end(worker, compiled) {
      isOver = true;
      clearTimeout(waiting);
      worker?.terminate();
      done(compiled);
    }
    try {
      const [worker] = employ(1, ({ begun, compiled }) => (begun ? wait(ENDS_IN) : end(worker, compiled)), end);
      const wait = (/** @type {number} */ longest) => {
        clearTimeout(waiting);
        waiting = setTimeout(end, longest, worker);
      };
      due.then(() => {
        if (isOver) return;
        worker.postMessage({ packed });
        wait(BEGINS_IN);
      });
    } catch {
      end();
    }
  });
}

/**
 * In a worker: compiles the engine, and has it say once what the page will ask first.
 * @param {engine.Packed} packed
 */
export async function warm(packed) {
  postMessage({ begun: true });
  const module = await engine.compile(packed);
  await engine.startWith(module);
  engine.open('');
  engine.writeUnfolded();
  postMessage({ compiled: module });
}
