// @ts-check
// The engine is unpacked and compiled by a worker, which also opens the demo with it: browsers share what they compile, and
// many compile a function when it is called first. The page then starts with what is compiled already.

import * as engine from './engine.js';
import { employ } from './workers.js';

/** A worker that has not even begun by then does not work, milliseconds. */
const SILENT = 5000;

/**
 * The engine as a worker compiles it, nothing where none can.
 * @param {engine.Packed} packed
 * @param {Promise<void>} due
 * @returns {Promise<WebAssembly.Module | undefined>}
 */
export function compiledByWorker(packed, due) {
  return new Promise((done) => {
    const alone = () => done(undefined);
    try {
      let silent = 0;
      const hear = (/** @type {{ begun?: boolean, compiled?: WebAssembly.Module }} */ { begun, compiled }) => {
        clearTimeout(silent);
        if (!begun) done(compiled);
      };
      const [worker] = employ(1, hear, alone);
      due.then(() => {
        worker?.postMessage({ packed });
        silent = setTimeout(alone, SILENT);
      });
    } catch {
      alone();
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
  close();
}
