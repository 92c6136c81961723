// @ts-check
// Recorded tracks: read by a worker, so that the page goes on meanwhile, or by the page itself where the browser gives none.

import { breath } from './breath.js';
import { decoded } from './decoded.js';
import * as engine from './engine.js';
import { hire } from './workers.js';

/**
 * What a file holds of a track, as numbers for the engine; rejected where the browser cannot read the file.
 * @param {File} file
 */
export async function readTrack(file) {
  return (await readElsewhere(file)) ?? readHere(file);
}

/** @param {File} file */
async function readHere(file) {
  const bytes = await file.arrayBuffer();
  await breath();
  return engine.readTrack(decoded(bytes));
}

/**
 * What a worker makes of it, nothing where there is none.
 * @param {File} file
 * @returns {Promise<Float64Array | undefined>}
 */
function readElsewhere(file) {
  return new Promise((done) => {
    try {
      hire(1, { engine: engine.compiled, track: file }, ({ track }, worker) => {
        worker.terminate();
        done(track);
      });
    } catch {
      done(undefined);
    }
  });
}

/**
 * In a worker: reads a file and says what it holds.
 * @param {{ engine: WebAssembly.Module, track: File }} order
 */
export async function readForPage({ engine: module, track: file }) {
  await engine.startWith(module);
  const track = await readHere(file);
  postMessage({ track }, { transfer: [track.buffer] });
}
